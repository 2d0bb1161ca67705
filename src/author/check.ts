/**
 * npm run check: every mistake in content/, by file. `npm run check -- --json` prints them for other programs, and
 * `npm run check -- --fix` first puts in the mends that are certain: typed numbers that the project holds.
 * `npm run check -- --lessons` tells of every lesson how long it is, and from which age it reads easily.
 * Ends with 1 where there is a mistake; warnings and notes alone end with 0.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { findContentProblems } from '../site/check/find-content-problems.ts';
import { isError } from '../site/content/problem.ts';
import { readContent } from '../site/content/read-content.ts';
import { FEWEST } from '../site/check/reading-problems.ts';
import { readingOf } from '../site/check/reading.ts';
import { report } from '../site/check/report.ts';
import { writeAuthorFile, type Refusal } from './write-file.ts';

/**
 * Checks the content below a folder.
 *
 * @param root the folder that holds content/
 * @returns the problems, a text that tells them, and the exit code
 */
export function check(root: string, options: { json?: boolean | undefined; colour?: boolean | undefined } = {}) {
  const problems = findContentProblems(root);
  return {
    problems,
    text: options.json ? JSON.stringify(problems, null, 2) : report(problems, options.colour),
    code: problems.some(isError) ? 1 : 0,
  };
}

/**
 * Puts in the mends that are certain.
 *
 * @param root the folder that holds content/
 * @returns how many were put in, by file; and of files that could not be written, why
 */
export function putRight(root: string): { done: Map<string, number>; refused: Refusal[] } {
  const certain = findContentProblems(root).filter(({ fix }) => fix);
  const done = new Map<string, number>();
  const refused: Refusal[] = [];
  for (const [file, own] of Map.groupBy(certain, (problem) => problem.file)) {
    const full = path.join(root, file);
    // From the end backwards, so that offsets stay true.
    const fixes = own.map(({ fix }) => fix!).toSorted((a, b) => b.start - a.start);
    const mended = fixes.reduce(
      (text, { start, end, text: by }) => text.slice(0, start) + by + text.slice(end),
      readFileSync(full, 'utf8'),
    );
    const refusal = writeAuthorFile(full, mended);
    if (refusal) refused.push(refusal);
    else done.set(file, fixes.length);
  }
  return { done, refused };
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
    const { words, minutes, age } = readingOf(lesson.prose);
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
    options: { json: { type: 'boolean' }, fix: { type: 'boolean' }, lessons: { type: 'boolean' } },
  });
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const { done, refused } = values.fix ? putRight(root) : { done: new Map<string, number>(), refused: [] };
  if (!values.json) {
    for (const [file, n] of done)
      console.log(`${file}: ${n === 1 ? '1 number follows' : `${n} numbers follow`} the project now.`);
    for (const { message, mend } of refused) console.log(`${message} ${mend}`);
    if (values.fix && done.size + refused.length === 0)
      console.log('There is nothing to put right without asking you.');
    if (values.fix) console.log('');
  }
  if (values.lessons && !values.json) console.log(`${lessonLengths(root)}\n`);
  const { text, code } = check(root, { ...values, colour: process.stdout.hasColors?.() ?? false });
  console.log(text);
  process.exitCode = refused.length > 0 ? 1 : code;
}
