/**
 * npm run handouts: every document of every course, as PDF, and each piece as SVG for a cutting machine.
 *
 *     npm run handouts -- --paper A4 --edition metric --large-print --to ~/Desktop/handouts
 */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { papers, type PaperName } from '../core/index.ts';
import { printFonts } from '../site/print/fonts.ts';
import { everything, type HandoutChoice } from '../site/print/handouts.ts';
import { helpOf, readArguments, tell, type Command } from './arguments.ts';
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

const COMMAND = {
  name: 'npm run handouts',
  about:
    'Writes what a class prints: templates at true scale, step sheets, lists, worksheets with keys, the class plan.',
  choices: {
    paper: { takes: 'A4|Letter', about: 'one paper; both if left out' },
    edition: { takes: 'inch|metric', about: 'one edition; both if left out' },
    size: { takes: 'NAME', about: 'the size of projects that have one of that name; the lesson’s if left out' },
    course: { takes: 'NAME', about: 'one course, by the name of its folder' },
    'large-print': { about: 'no letter smaller than 14 pt' },
    makers: { takes: '12', about: 'how many makers the class plan is for; those of content/site.yaml if left out' },
    series: { takes: 'A', normally: everything.series, about: 'other letters give other numbers on the worksheets' },
    sheets: { takes: '6', normally: String(everything.sheets), about: 'how many different worksheets of each lesson' },
    to: { takes: 'FOLDER', normally: 'dist/handouts', about: 'where to write; dist/handouts if left out' },
  },
} as const satisfies Command;

type Read = { ok: true; choice: HandoutChoice; to: string; course?: string };
type Refused = Extract<ReturnType<typeof readArguments>, { ok: false }>;

/** Reads the choices, or says what is wrong with them. */
export function readChoices(given?: string[]): Read | Refused {
  const asked = readArguments(COMMAND, given);
  if (!asked.ok) return asked;
  const wrong = (message: string): Refused => ({ ok: false, answer: `${message}\n\n${helpOf(COMMAND)}`, code: 1 });
  const { values } = asked;
  const { paper, edition, course, size } = values;
  const paperName = Object.keys(papers).find((name) => name.toLowerCase() === String(paper).toLowerCase());
  const [makers, sheets] = [values.makers === undefined ? undefined : Number(values.makers), Number(values.sheets)];
  if (paper !== undefined && paperName === undefined) return wrong('--paper takes A4 or Letter.');
  if (edition !== undefined && edition !== 'inch' && edition !== 'metric')
    return wrong('--edition takes inch or metric.');
  if (![makers ?? 1, sheets].every((n) => Number.isInteger(n) && n >= 1 && n <= 200))
    return wrong('--makers and --sheets take a whole number from 1 to 200.');
  return {
    ok: true,
    choice: {
      papers: paperName === undefined ? everything.papers : [paperName as PaperName],
      editions: edition === undefined ? everything.editions : [edition],
      largePrint: values['large-print'],
      ...(makers !== undefined && { makers }),
      ...(size !== undefined && { size }),
      sheets,
      series: values.series,
    },
    to: values.to,
    ...(course !== undefined && { course }),
  };
}

async function main(): Promise<void> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const read = readChoices();
  if (!read.ok) return tell(read);
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
