/**
 * npm run check: every mistake in content/, by file. `npm run check -- --json` prints them for other programs, and
 * `npm run check -- --fix` first puts in the fixes that are certain: typed numbers with the words of a measure beside
 * them. `--fix --show` prints them, before and after, and writes nothing; `--fix --undo` takes the last ones back.
 * `npm run check -- --lessons` tells of every lesson how long it is, and from which age it reads easily.
 * Ends with 1 where there is a mistake, or where the kit lies in a folder that no page can be made in; warnings and notes alone end with 0.
 */
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { examine, findContentProblems } from '../site/check/find-content-problems.ts';
import { isError } from '../site/content/diagnostic.ts';
import { allEntries, readContent } from '../site/content/read-content.ts';
import { FEWEST } from '../site/check/reading-problems.ts';
import { readabilityOf } from '../site/check/readability.ts';
import { report } from '../site/check/report.ts';
import { readArguments, tell, type Command } from './arguments.ts';
import { kitFolderFault } from './kit-folder.ts';
import { refusalFor, writeAuthorFile, type Refusal } from './write-file.ts';

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
  const content = readContent(root);
  // As they were when they were checked: the offsets count in these.
  const texts = new Map(allEntries(content).map(({ file, text }) => [file, text]));
  const certain = examine(content, root).problems.filter(({ edit }) => edit);
  return [...Map.groupBy(certain, (problem) => problem.file)].map(([file, own]) => {
    const before = texts.get(file)!;
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
  const fixes = certainFixes(root);
  // First what was there: a fix that could not be taken back is not put in.
  const lost = fixes.length > 0 ? remember(root, fixes) : undefined;
  if (lost) return { done: new Map(), fixed, refused: [lost] };
  for (const one of fixes) {
    const refusal = writeAuthorFile(path.join(root, one.file), one.after, one);
    if (refusal) refused.push(refusal);
    else fixed.push(one);
  }
  if (refused.length > 0) remember(root, fixed);
  return { done: new Map(fixed.map(({ file, count }) => [file, count])), fixed, refused };
}

/** Keeps what the files hold before their fixes; nothing is kept of an empty list. */
function remember(root: string, fixes: readonly Fixed[]): Refusal | undefined {
  const kept = path.join(root, LAST);
  try {
    if (fixes.length === 0) rmSync(kept, { force: true });
    else mkdirSync(path.dirname(kept), { recursive: true });
    const before = existsSync(kept) ? readFileSync(kept, 'utf8') : undefined;
    return fixes.length === 0 ? undefined : writeAuthorFile(kept, JSON.stringify(fixes), { before });
  } catch (error) {
    return refusalFor(kept, error);
  }
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
  const left: Fixed[] = [];
  for (const one of JSON.parse(readFileSync(kept, 'utf8')) as Fixed[]) {
    const { file, before, after } = one;
    const full = path.join(root, file);
    const isOurs = existsSync(full) && readFileSync(full, 'utf8') === after;
    const refusal = isOurs ? writeAuthorFile(full, before, { before: after }) : undefined;
    if (isOurs && !refusal) restored!.push(file);
    else changed!.push(file);
    // It can be taken back once the disk lets it.
    if (refusal) left.push(one);
  }
  remember(root, left);
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

const COMMAND = {
  name: 'npm run check',
  about: 'Lists every mistake in content, with file, line and column, and what to write instead.',
  choices: {
    fix: { about: 'first puts in the fixes that are certain: typed numbers follow the project' },
    show: { about: 'with --fix: prints what it would do, and writes nothing' },
    undo: { about: 'with --fix: takes the last fixes back' },
    lessons: { about: 'also tells how long each lesson is, and from which age it reads easily' },
    json: { about: 'prints the mistakes for other programs' },
  },
} as const satisfies Command;

if (import.meta.main) {
  const asked = readArguments(COMMAND);
  if (asked.ok) main(asked.values);
  else tell(asked);
}

function main(values: { [N in keyof typeof COMMAND.choices]: boolean }): void {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const fault = kitFolderFault(root);
  if (fault) console.error(`${fault}\n`);
  const { said, refused } = values.fix ? fix(root, values) : { said: '', refused: false };
  if (said !== '' && !values.json) console.log(`${said}\n`);
  if (values.lessons && !values.json) console.log(`${lessonLengths(root)}\n`);
  const { text, code } = check(root, { ...values, colour: process.stdout.hasColors?.() ?? false });
  console.log(text);
  process.exitCode = refused || fault ? 1 : code;
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
