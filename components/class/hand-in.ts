/** What a learner hands in: how far they came and what went wrong, from what their own browser kept. */

import { mostSaved } from '../words/most-saved.ts';

/** One question: how often it was tried, how it stands, whether the first try was right, and the slips behind it. */
export type AnswerRecord = { name: string; tries: number; right: boolean; atOnce: boolean; slips: string[] };

/** A question practised with new numbers: how many exercises, how many right at once, and whether the set was ended. */
export type PracticeRecord = { name: string; exercises: number; atOnce: number; done: boolean; slips: string[] };

/** What somebody's work measured: how that was explained, and the kinds of mistakes that explain it. */
export type MeasuredPiece = { name: string; verdict: Verdict; mistakes: string[] };
export const verdicts = ['well', 'explained', 'ambiguous', 'unexplained'] as const;
export type Verdict = (typeof verdicts)[number];

/**
 * Three things that are not the same: how many `sections` were read, which questions were answered, and how many steps
 * were `sewn`, as the learner ticked them. What was neither practised nor measured is left out.
 */
export type HandedLesson = {
  lesson: string;
  sections: number;
  sewn: number;
  answers: AnswerRecord[];
  practised?: PracticeRecord[];
  measured?: MeasuredPiece[];
};

/** A hand-in has room for so many lessons. */
export const MOST_LESSONS = 300;

/** `name` is what the learner chose to be called; `day` is a date as 2030-12-31. */
export type HandIn = { name: string; course: string; day: string; lessons: HandedLesson[] };

/** A lesson as these pages know it. `path` is its address on this site, `questions` are in the lesson's order. */
export type CourseLesson = {
  id: string;
  title: string;
  /** From the site's root, without the first stroke. */
  url: string;
  /** As the browser has it. */
  path: string;
  /** Its project: under this name the steps that are ticked are kept. */
  project?: string;
  /** How many it has. */
  sections: number;
  /** The ids of the steps that it tells. */
  steps: string[];
  questions: { name: string; words: string }[];
  /** `rounds`: how many in a row end the set. */
  practices: { name: string; words: string; rounds: number }[];
  pieces: { name: string; words: string }[];
};

/** A course as these pages know it. */
export type Course = { id: string; title: string; lessons: CourseLesson[] };

/** Everything that was kept, by key, as JSON text. */
export type SavedEntries = ReadonlyMap<string, string>;

/**
 * What was kept for the lessons of a course. Storage may hold anything: what is not of the right shape is passed over.
 *
 * @example gather(new Map([['answer:/fold/#depth', '{"tries":1,"checked":{"right":true},"firstRight":true}']]), lessons)
 */
export function collectRecords(kept: SavedEntries, lessons: readonly CourseLesson[]): HandedLesson[] {
  return lessons
    .slice(0, MOST_LESSONS)
    .map(({ id, url, path, project, sections, steps, questions, practices, pieces }) => {
      const recordOf = (kind: string, name: string) => asRecord(parsed(kept.get(`${kind}:${path}#${name}`)));
      // Before sections read and questions answered were told apart, what was both was kept as done.
      const read = new Set(['read', 'done'].flatMap((kind) => slugs(parsed(kept.get(`${kind}:/${url}`)))));
      const ticked = asRecord(parsed(kept.get(`steps:${project}`)));
      const practised = practices
        .flatMap(({ name, rounds }) => practisedFrom(recordOf('practice', name), name, rounds))
        .slice(0, mostSaved.practice);
      const measured = pieces
        .flatMap(({ name }) => measuredFrom(recordOf('measured', name), name))
        .slice(0, mostSaved.measured);
      return {
        lesson: id,
        sections: Math.min(read.size, sections),
        sewn: steps.filter((step) => ticked[step] === true).length,
        answers: questions
          .flatMap(({ name }) => answeredFrom(recordOf('answer', name), name))
          .slice(0, mostSaved.answer),
        ...(practised.length > 0 && { practised }),
        ...(measured.length > 0 && { measured }),
      };
    });
}

function answeredFrom({ tries, checked, firstRight, slips }: Record<string, unknown>, name: string): AnswerRecord[] {
  if (typeof tries !== 'number' || !(tries > 0)) return [];
  return [
    {
      name,
      tries: Math.min(999, Math.floor(tries)),
      right: asRecord(checked).right === true,
      atOnce: firstRight === true,
      slips: texts(slips),
    },
  ];
}

function practisedFrom(
  { firstTries, series, slips }: Record<string, unknown>,
  name: string,
  rounds: number,
): PracticeRecord[] {
  const all = Array.isArray(firstTries) ? firstTries.slice(-999) : [];
  const before = typeof series === 'number' && series > 0;
  if (all.length === 0 && !before) return [];
  const isDone = before || (all.length >= rounds && all.slice(-rounds).every((right) => right === true));
  const atOnce = all.filter((right) => right === true).length;
  return [{ name, exercises: all.length, atOnce, done: isDone, slips: texts(slips) }];
}

function measuredFrom({ verdict, mistakes }: Record<string, unknown>, name: string): MeasuredPiece[] {
  const known = verdicts.find((one) => one === verdict);
  return known ? [{ name, verdict: known, mistakes: texts(mistakes) }] : [];
}

const slugs = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];

/** As many texts, and as long, as a hand-in may have. */
const texts = (value: unknown): string[] =>
  (Array.isArray(value) ? value : [])
    .filter((one) => typeof one === 'string' && one !== '')
    .slice(0, 12)
    .map((one: string) => one.slice(0, 120));

function parsed(text: string | undefined): unknown {
  try {
    return text === undefined ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

const asRecord = (value: unknown): Record<string, unknown> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
