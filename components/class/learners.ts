/** The learners of a class: one for each name, with what they handed in last and what changed by it. */
import type { AnswerRecord, HandIn } from './hand-in.ts';

export type ClassLearner = {
  /** Their name as names are compared. */
  key: string;
  handIn: HandIn;
  /** How often they handed in something new. */
  times: number;
  /** What the last time changed; none at the first. */
  change?: Change;
  /** A note to them that is being written. */
  note?: string;
};

/** What a hand-in has more than the one before it. `fewer`: answers that are not in it any more. */
export type Change = Record<'answers' | 'nowRight' | 'sewn' | 'sections' | 'pieces' | 'fewer', number>;

export const changeNames = ['answers', 'nowRight', 'sewn', 'sections', 'pieces', 'fewer'] as const;

/**
 * A name as names are compared: without regard to case, and whichever way its signs were written (Unicode's forms of
 * compatibility, and the Turkish İ as i).
 *
 * @example nameKey('MİRA') === nameKey('Mira') // => true
 */
export const nameKey = (name: string): string =>
  name.normalize('NFKC').toUpperCase().toLowerCase().normalize('NFKC').replaceAll('i\u0307', 'i');

/** When something was handed in, to be compared as a text. Without a time, at the beginning of its day. */
export const when = ({ day, time = '' }: HandIn): string => `${day} ${time}`.trimEnd();

/** What came of one more hand-in: `same` is here already, `older` is from before the one that is here. */
export type Taken = { what: 'new' | 'again' | 'same' | 'older'; learner: ClassLearner };

/** Takes a hand-in for the learner of that name, if there is one. The later one counts. */
export function takeIn(known: ClassLearner | undefined, handIn: HandIn): Taken {
  const key = nameKey(handIn.name);
  if (!known) return { what: 'new', learner: { key, handIn, times: 1 } };
  if (JSON.stringify(known.handIn) === JSON.stringify(handIn)) return { what: 'same', learner: known };
  if (when(handIn) < when(known.handIn)) return { what: 'older', learner: known };
  const change = changeBetween(known.handIn, handIn);
  return { what: 'again', learner: { ...known, handIn, times: known.times + 1, change } };
}

/** What the second has and the first has not. */
export function changeBetween(before: HandIn, after: HandIn): Change {
  const [old, now] = [answersOf(before), answersOf(after)];
  const more = (count: (handIn: HandIn) => number) => Math.max(0, count(after) - count(before));
  return {
    answers: [...now.keys()].filter((at) => !old.has(at)).length,
    nowRight: [...now].filter(([at, { right }]) => right && old.get(at)?.right === false).length,
    fewer: [...old.keys()].filter((at) => !now.has(at)).length,
    sewn: more(({ lessons }) => sum(lessons.map(({ sewn }) => sewn))),
    sections: more(({ lessons }) => sum(lessons.map(({ sections }) => sections))),
    pieces: more(({ lessons }) => sum(lessons.map(({ measured = [] }) => measured.length))),
  };
}

function answersOf({ lessons }: HandIn): Map<string, AnswerRecord> {
  return new Map(
    lessons.flatMap(({ lesson, answers }) => answers.map((one) => [`${lesson}#${one.name}`, one] as const)),
  );
}

const sum = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0);

/**
 * @example changeInWords({ answers: 4, nowRight: 2, … }) // => '4 more answers, 2 now right'
 */
export function changeInWords({ answers, nowRight, sewn, sections, pieces, fewer }: Change): string {
  const count = (n: number, one: string, many: string, tail = '') =>
    n > 0 ? [`${n} ${n === 1 ? one : many}${tail}`] : [];
  const parts = [
    ...count(answers, 'more answer', 'more answers'),
    ...count(nowRight, 'now right', 'now right'),
    ...count(sewn, 'more step sewn', 'more steps sewn'),
    ...count(sections, 'more section read', 'more sections read'),
    ...count(pieces, 'more piece measured', 'more pieces measured'),
    ...count(fewer, 'answer fewer than before', 'answers fewer than before', ': is it somebody else of that name?'),
  ];
  return parts.length > 0 ? parts.join(', ') : 'nothing new';
}

/** The learners who answered in another edition than the class’s, and how often. */
export function inOtherEdition(
  learners: readonly ClassLearner[],
  edition: 'inch' | 'metric',
): { name: string; answers: number; of: number }[] {
  return learners.flatMap(({ handIn }) => {
    const said = handIn.lessons.flatMap(({ answers }) => answers.flatMap((one) => one.edition ?? []));
    const others = said.filter((one) => one !== edition).length;
    return others > 0 ? [{ name: handIn.name, answers: others, of: said.length }] : [];
  });
}
