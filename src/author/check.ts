/**
 * npm run check: every mistake in content/, by file. `npm run check -- --json` prints them for other programs.
 * Ends with 1 where there is a mistake; warnings and notes alone end with 0.
 */
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { findContentProblems } from '../site/find-content-problems.ts';
import { isError } from '../site/problem.ts';
import { report } from '../site/report.ts';

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

if (import.meta.main) {
  const { values } = parseArgs({ options: { json: { type: 'boolean' } } });
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const { text, code } = check(root, { ...values, colour: process.stdout.hasColors?.() ?? false });
  console.log(text);
  process.exitCode = code;
}
