/**
 * npm run check: every mistake in content/, by file. `npm run check -- --json` prints them for other programs, and
 * `npm run check -- --fix` first puts in the fixes that are certain: typed numbers with the words of a measure beside
 * them. `--fix --show` prints them, before and after, and writes nothing; `--fix --undo` takes the last ones back.
 * `npm run check -- --lessons` tells of every lesson how long it is, and from which age it reads easily.
 * Ends with 1 where there is a mistake; warnings and notes alone end with 0.
 */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { findContentProblems } from '../site/check/find-content-problems.ts';
import { isError } from '../site/content/diagnostic.ts';
import { readContent } from '../site/content/read-content.ts';
import { FEWEST } from '../site/check/reading-problems.ts';
import { readabilityOf } from '../site/check/readability.ts';
import { report } from '../site/check/report.ts';
import { writeAuthorFile, type Refusal } from './write-file.ts';

/**
 * Checks the content below a folder.
 *
 * @param root the folder that holds content/
 * @returns the problems, a text that tells them, and the exit code
 */
export function check(root: string, options: { json?: boolean | undefined; colour?: boolean | undefined } = {}) {
  const problems = findContentProblems(root, { ends: true });
  return {
    problems,
    text: options.json ? JSON.stringify(problems, null, 2) : report(problems, options.colour),
    code: problems.some(isError) ? 1 : 0,
  };
}

/** What a fix changes: the line before and after it, counted from 1. */
export type LineChange = { line: number; before: string; after: string };

/** A file with its fixes put in. */
export type Fixed = { file: string; before: string; after: string; changes: LineChange[]; count: number };

/** Where the last fixes are kept, so that they can be taken back. */
const LAST = '.cache/check-fix.json';

/**
 * The fixes that are certain, file by file. Nothing is written.
 *
 * @param root the folder that holds content/
 */
export function certainFixes(root: string): Fixed[] {
  const certain = findContentProblems(root).filter(({ edit }) => edit);
  return [...Map.groupBy(certain, (problem) => problem.file)].map(([file, own]) => {
    const before = readFileSync(path.join(root, file), 'utf8');
    // From the end backwards, so that offsets stay true.
    const edits = own.map(({ edit }) => edit!).toSorted((a, b) => b.start - a.start);
    const after = edits.reduce((text, { start, end, text: by }) => text.slice(0, start) + by + text.slice(end), before);
    const [was, is] = [before.split('\n'), after.split('\n')];
    const changes = was.flatMap((line, i): LineChange[] =>
      line === is[i] ? [] : [{ line: i + 1, before: line.trim(), after: (is[i] ?? '').trim() }],
    );
    return { file, before, after, changes, count: edits.length };
  });
}

/**
 * Puts in the fixes that are certain, and keeps what was there before.
 *
 * @param root the folder that holds content/
 * @returns how many were put in, by file; the files as they were and are; and of files that could not be written, why
 */
export function putRight(root: string): { done: Map<string, number>; fixed: Fixed[]; refused: Refusal[] } {
  const fixed: Fixed[] = [];
  const refused: Refusal[] = [];
  for (const one of certainFixes(root)) {
    const refusal = writeAuthorFile(path.join(root, one.file), one.after);
    if (refusal) refused.push(refusal);
    else fixed.push(one);
  }
  if (fixed.length > 0) {
    const kept = path.join(root, LAST);
    mkdirSync(path.dirname(kept), { recursive: true });
    writeFileSync(kept, JSON.stringify(fixed));
  }
  return { done: new Map(fixed.map(({ file, count }) => [file, count])), fixed, refused };
}

/**
 * Takes the last fixes back. A file that has changed since, or cannot be written, is left alone.
 *
 * @returns the files that are as they were before, and those that were left alone
 */
export function takeBack(root: string): { restored: string[]; changed: string[] } {
  const kept = path.join(root, LAST);
  if (!existsSync(kept)) return { restored: [], changed: [] };
  const [restored, changed]: string[][] = [[], []];
  for (const { file, before, after } of JSON.parse(readFileSync(kept, 'utf8')) as Fixed[]) {
    const full = path.join(root, file);
    if (existsSync(full) && readFileSync(full, 'utf8') === after) {
      if (writeAuthorFile(full, before)) changed!.push(file);
      else restored!.push(file);
    } else changed!.push(file);
  }
  rmSync(kept);
  return { restored: restored!, changed: changed! };
}

/** The fixes in words: each line before and after. */
export function formatFixes(fixed: readonly Fixed[]): string {
  return fixed
    .flatMap(({ file, changes }) => [
      file,
      ...changes.flatMap(({ line, before, after }) => [`  ${line}  - ${before}`, `  ${line}  + ${after}`]),
    ])
    .join('\n');
}

/**
 * How long each lesson is, and for whom: words, minutes to read it once, and the age from which it reads easily.
 *
 * @param root the folder that holds content/
 */
export function lessonLengths(root: string): string {
  const { lessons, site } = readContent(root);
  // The sum behind the age is made for English.
  const isEnglish = /^en\b/.test(site.value?.language ?? 'en');
  const rows = lessons.map(({ file, lesson }) => {
    const { words, minutes, age } = readabilityOf(lesson.prose);
    const reads = isEnglish && words >= FEWEST ? `${age} years` : '–';
    return [file, String(words), `${minutes} min`, reads];
  });
  const table = [['lesson', 'words', 'to read', 'reads from'], ...rows];
  const widths = table[0]!.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  return table
    .map((row) => row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  '))
    .join('\n');
}

if (import.meta.main) {
  const { values } = parseArgs({
    options: {
      json: { type: 'boolean' },
      fix: { type: 'boolean' },
      show: { type: 'boolean' },
      undo: { type: 'boolean' },
      lessons: { type: 'boolean' },
    },
  });
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const { said, refused } = values.fix ? fix(root, values) : { said: '', refused: false };
  if (said !== '' && !values.json) console.log(`${said}\n`);
  if (values.lessons && !values.json) console.log(`${lessonLengths(root)}\n`);
  const { text, code } = check(root, { ...values, colour: process.stdout.hasColors?.() ?? false });
  console.log(text);
  process.exitCode = refused ? 1 : code;
}

/** What `--fix` does, in words, and whether a file could not be written. */
function fix(
  root: string,
  { show, undo }: { show?: boolean | undefined; undo?: boolean | undefined },
): { said: string; refused: boolean } {
  if (undo) {
    const { restored, changed } = takeBack(root);
    const lines = [
      ...restored.map((file) => `${file} is as it was before.`),
      ...changed.map((file) => `${file} has changed since or cannot be written, and is left as it is.`),
    ];
    return { said: lines.join('\n') || 'There is nothing to take back.', refused: changed.length > 0 };
  }
  const nothing = 'There is nothing to put right without asking you.';
  if (show) {
    const fixed = certainFixes(root);
    return {
      said: fixed.length > 0 ? `${formatFixes(fixed)}\nNothing is written: that was --show.` : nothing,
      refused: false,
    };
  }
  const { done, fixed, refused } = putRight(root);
  const follow = [...done].map(
    ([file, n]) => `${file}: ${n === 1 ? '1 number follows' : `${n} numbers follow`} the project now.`,
  );
  const lines = [
    ...(fixed.length > 0 ? [formatFixes(fixed), ...follow, 'Take it back with npm run check -- --fix --undo.'] : []),
    ...refused.map(({ message, fix }) => `${message} ${fix}`),
  ];
  return { said: lines.join('\n') || nothing, refused: refused.length > 0 };
}
