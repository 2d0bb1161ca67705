/**
 * npm run handouts: every document of every course, as PDF, and each piece as SVG for a cutting machine.
 *
 *     npm run handouts -- --paper A4 --edition metric --large-print --to ~/Desktop/handouts
 */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { papers, type PaperName } from '../core/index.ts';
import { printFonts } from '../site/print/fonts.ts';
import { everything, type HandoutChoice } from '../site/print/handouts.ts';
import { writeHandouts, type HandoutRequest, type WrittenHandouts } from '../site/print/write-handouts.ts';

/**
 * Writes the documents of a content folder, the teacher's among them.
 *
 * @param root the folder that holds content/
 * @param to where to write
 */
export async function handouts(root: string, to: string, wish: HandoutRequest = {}): Promise<WrittenHandouts> {
  return writeHandouts(root, to, await printFonts(path.join(root, '.cache/fonts')), wish);
}

/** A bar of so many characters. */
export function bar(done: number, all: number, width = 30): string {
  const full = all === 0 ? width : Math.round((width * done) / all);
  return `${'█'.repeat(full)}${'░'.repeat(width - full)}`;
}

const USAGE = `npm run handouts -- [choices]

  --paper A4|Letter        one paper; both if left out
  --edition inch|metric    one edition; both if left out
  --size NAME              the size of projects that have one of that name; the lesson’s if left out
  --course NAME            one course, by the name of its folder
  --large-print            no letter smaller than 14 pt
  --makers 12              how many makers the class plan is for; those of content/site.yaml if left out
  --series A               other letters give other numbers on the worksheets
  --sheets 6               how many different worksheets of each lesson
  --to FOLDER              where to write; dist/handouts if left out`;

type Read = { choice: HandoutChoice; to: string; course?: string };

/** Reads the choices; a text says what is wrong with them. */
export function readChoices(given: string[]): Read | string {
  let values: Record<string, string | boolean | undefined>;
  try {
    ({ values } = parseArgs({
      args: given,
      options: {
        paper: { type: 'string' },
        edition: { type: 'string' },
        size: { type: 'string' },
        course: { type: 'string' },
        'large-print': { type: 'boolean', default: false },
        makers: { type: 'string' },
        series: { type: 'string', default: everything.series },
        sheets: { type: 'string', default: String(everything.sheets) },
        to: { type: 'string', default: 'dist/handouts' },
        help: { type: 'boolean', default: false },
      },
    }));
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`;
  }
  const { paper, edition, course, size } = values;
  const paperName = Object.keys(papers).find((name) => name.toLowerCase() === String(paper).toLowerCase());
  const [makers, sheets] = [values.makers === undefined ? undefined : Number(values.makers), Number(values.sheets)];
  if (values.help === true) return USAGE;
  if (paper !== undefined && paperName === undefined) return `--paper takes A4 or Letter.\n\n${USAGE}`;
  if (edition !== undefined && edition !== 'inch' && edition !== 'metric')
    return `--edition takes inch or metric.\n\n${USAGE}`;
  if (![makers ?? 1, sheets].every((n) => Number.isInteger(n) && n >= 1 && n <= 200))
    return `--makers and --sheets take a whole number from 1 to 200.\n\n${USAGE}`;
  return {
    choice: {
      papers: paperName === undefined ? everything.papers : [paperName as PaperName],
      editions: edition === undefined ? everything.editions : [edition],
      largePrint: values['large-print'] === true,
      ...(makers !== undefined && { makers }),
      ...(typeof size === 'string' && { size }),
      sheets,
      series: String(values.series),
    },
    to: String(values.to),
    ...(typeof course === 'string' && { course }),
  };
}

async function main(): Promise<void> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const read = readChoices(process.argv.slice(2));
  if (typeof read === 'string') {
    if (read === USAGE) console.log(read);
    else {
      console.error(read);
      process.exitCode = 1;
    }
    return;
  }
  const to = path.resolve(root, read.to);
  const progress: HandoutRequest['progress'] = ({ done, all, files, file }) => {
    if (process.stdout.isTTY) {
      const courses = `${done} of ${all} ${all === 1 ? 'course' : 'courses'}`;
      process.stdout.write(`\r\u001b[2K${bar(done, all)} ${courses}, ${files} files  ${file.slice(0, 60)}`);
    }
  };
  const { files, findings } = await handouts(root, to, { choice: read.choice, course: read.course, progress });
  if (process.stdout.isTTY) process.stdout.write('\n');
  for (const finding of findings) console.log(`! ${finding}`);
  if (files.length === 0) {
    console.error(
      read.course === undefined
        ? 'There is no course to print. Write one in content/courses first.'
        : `There is no course called “${read.course}” in content/courses.`,
    );
    process.exitCode = 1;
    return;
  }
  console.log(`${files.length} files are in ${to}`);
  if (files.some((file) => file.includes('/teacher/')))
    console.log('Folders called “teacher” hold answer keys and the class plan: keep them off a public site.');
}

if (import.meta.main) await main();
