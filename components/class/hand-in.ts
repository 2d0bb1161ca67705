/** What a learner hands in: how far they came and what went wrong, from what their own browser kept. */

import { mostSaved } from '../words/most-saved.ts';
import type { AskedInClass } from '../words/word.ts';

/**
 * One question: how often it was tried, how it stands, whether the first try was right, and the slips behind it. Then the
 * last answer that was judged: `slip` is what was behind it, `value` and `wanted` are in mm, in mm² or a plain number;
 * `picked` are the places of what was chosen, put in order or matched, in the list of what there is.
 */
export type AnswerRecord = {
  name: string;
  tries: number;
  right: boolean;
  atOnce: boolean;
  slips: string[];
  slip?: string;
  value?: number;
  wanted?: number;
  edition?: 'inch' | 'metric';
  picked?: number[];
};

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

/** `name` is what the learner chose to be called; `day` is a date as 2030-12-31, `time` a time of that day as 09:05. */
export type HandIn = { name: string; course: string; day: string; time?: string; lessons: HandedLesson[] };

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
  questions: { name: string; words: string; asked?: AskedInClass }[];
  /** `rounds`: how many in a row end the set. */
  practices: { name: string; words: string; rounds: number; asked?: AskedInClass }[];
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
          .flatMap(({ name, asked }) => answeredFrom(recordOf('answer', name), name, asked))
          .slice(0, mostSaved.answer),
        ...(practised.length > 0 && { practised }),
        ...(measured.length > 0 && { measured }),
      };
    });
}

function answeredFrom(
  { tries, checked: kept, firstRight, slips }: Record<string, unknown>,
  name: string,
  asked: AskedInClass | undefined,
): AnswerRecord[] {
  if (typeof tries !== 'number' || !(tries > 0)) return [];
  const checked = asRecord(kept);
  const right = checked.right === true;
  const [slip] = right ? [] : texts([checked.slip]);
  return [
    {
      name,
      tries: Math.min(999, Math.floor(tries)),
      right,
      atOnce: firstRight === true,
      slips: texts(slips).map((one) => slipKey(one, asked)),
      ...(slip !== undefined && { slip: slipKey(slip, asked) }),
      ...answerFrom(checked, asked),
    },
  ];
}

/** The last answer that was judged, by numbers alone. */
function answerFrom(
  { given, note: kept }: Record<string, unknown>,
  asked: AskedInClass | undefined,
): Pick<AnswerRecord, 'value' | 'wanted' | 'edition' | 'picked'> {
  const note = asRecord(kept);
  if (asked?.kind === 'sum') {
    const [value, wanted] = [note.value, note.wanted].map(rounded);
    const edition = note.edition === 'inch' || note.edition === 'metric' ? note.edition : undefined;
    return value === undefined || wanted === undefined || !edition ? {} : { value, wanted, edition };
  }
  const place = (key: unknown) => asked?.picks.findIndex((one) => one.key === key) ?? -1;
  if (asked?.kind === 'pairs') {
    const pairs = asRecord(given);
    return { picked: asked.picks.map(({ key }) => asked.meanings.indexOf(String(pairs[key]))).slice(0, MOST_PICKED) };
  }
  const picked = (Array.isArray(given) ? given : []).map(place).filter((at) => at >= 0);
  return picked.length > 0 ? { picked: picked.slice(0, MOST_PICKED) } : {};
}

/** More is no question that anybody reads. */
const MOST_PICKED = 40;

/** To a thousandth of a millimetre, so that a code stays short. */
const rounded = (value: unknown): number | undefined =>
  typeof value === 'number' && Math.abs(value) <= MOST_VALUE ? Math.round(value * 1000) / 1000 : undefined;
/** In mm², a hundred square metres of cloth. */
export const MOST_VALUE = 1e8;

/** Whether a slip is of a question that takes no sum, such as `without 2`: by its place in the list, no text goes along. */
export const isOfPlace = (key: string): boolean => OF_PLACE.test(key);
const OF_PLACE = /^(?:pick|without|place|pair) \d{1,2}$/;

/** A slip as it is handed in. */
function slipKey(kept: string, asked: AskedInClass | undefined): string {
  if (!asked || asked.kind === 'sum') return kept;
  const [, lead = '', key = ''] = /^(without: |out of place: |)(.*)$/su.exec(kept) ?? [];
  const at = asked.picks.findIndex((one) => one.key === key);
  if (at < 0 || at > 99) return 'other';
  const plain = asked.kind === 'pairs' ? 'pair' : 'pick';
  return `${lead === '' ? plain : lead === 'without: ' ? 'without' : 'place'} ${at}`;
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
