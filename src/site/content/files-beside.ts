/** The files that lessons let their readers take along: `<Download of="plan.pdf" />`. */
import { wordCalled } from '../../../components/words/index.ts';
import type { LessonText, WrittenWord } from './lesson-text.ts';

/** Where they lie in a built site, from its root: `files/pocket-folio/plan.pdf`. */
export const FOLDER = 'files';

/** The files that a lesson word names, and where in the lesson. */
export function filesOf({ name, attributes }: WrittenWord): { file: string; at: number }[] {
  const names = wordCalled(name)?.names ?? {};
  return attributes.flatMap(({ name: attribute, value, textAt }) =>
    names[attribute] === 'file' && typeof value === 'string' && value !== '' ? [{ file: value, at: textAt }] : [],
  );
}

/** Whether a file may be handed out: one of the course's own folder that no browser runs, and that the site does not read. */
export const canBeTaken = (name: string): boolean => !/[\\/]|^\./u.test(name) && !RUNS.test(name) && !READ.test(name);

/** A browser that opens such a file by its address would run what is in it. */
export const RUNS = /\.(?:x?html?|svgz?|xml|xsl|m?js|swf|wasm|pht?ml?)$/iu;
/** What the site is made from. */
export const READ = /\.(?:mdx?|ya?ml)$/iu;

/** The files that some lessons of a course hand out, each once. */
export const filesTaken = (lessons: readonly { lesson: LessonText }[]): string[] => [
  ...new Set(lessons.flatMap(({ lesson }) => lesson.words.flatMap(filesOf).map(({ file }) => file)).filter(canBeTaken)),
];
