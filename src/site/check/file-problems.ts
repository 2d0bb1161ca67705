/** What is wrong with the files that a lesson lets its readers take along. */
import { existsSync, readdirSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import { didYouMean, quote } from '../../core/measure/index.ts';
import { READ, RUNS } from '../content/files-beside.ts';

type Said = { severity: 'error' | 'warning'; message: string; fix?: string | undefined };

/** In bytes: a reader on a telephone waits long for more. Common practice, no source. */
const HEAVIEST = 50e6;

/** @param folder of the lesson */
export function fileProblems(name: string, folder: string): Said[] {
  const wrong = (message: string, fix?: string): Said[] => [{ severity: 'error', message, fix }];
  if (/[\\/]/u.test(name)) {
    const own = name.split(/[\\/]/u).at(-1)!;
    return wrong(
      `${quote(name)} does not lie beside the lesson.`,
      `Put a copy there, and write its name alone: ${own}`,
    );
  }
  if (READ.test(name))
    return wrong(`${quote(name)} is what the site is made from.`, 'Save a copy as PDF or plain text (.txt).');
  if (RUNS.test(name))
    return wrong(
      `A browser would run ${quote(name)}, and no page of the site runs what it does not know.`,
      'Put it into a ZIP.',
    );
  const file = path.join(folder, name);
  const beside = existsSync(folder) ? readdirSync(folder) : [];
  if (!beside.includes(name)) {
    const same = beside.find((one) => one.toLowerCase() === name.toLowerCase());
    const fix = same === undefined ? didYouMean(name, beside) : `The file is called ${quote(same)}: capitals count.`;
    return wrong(`There is no file ${quote(name)} beside this lesson.`, fix);
  }
  if (!statSync(file).isFile()) return wrong(`${quote(name)} is a folder.`, 'Put it into a ZIP.');
  if (!realpathSync(file).startsWith(realpathSync(folder) + path.sep))
    return wrong(`The file ${quote(name)} lies outside the folder of this course.`, 'Put a copy beside the lesson.');
  const { size } = statSync(file);
  if (size === 0) return [{ severity: 'warning', message: `${quote(name)} is empty.`, fix: 'Save it again.' }];
  if (size <= HEAVIEST) return [];
  const message = `${quote(name)} is very large: ${Math.round(size / 1e6)} MB.`;
  return [{ severity: 'warning', message, fix: 'Make it smaller, or say beside it how large it is.' }];
}
