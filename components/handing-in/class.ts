/** What a class understood: who is where, which questions went wrong, and which slips were behind it. */
import { slipKinds } from '../../src/core/index.ts';
import type { Answered, CourseLesson, HandIn } from './hand-in.ts';

/** One learner's standing in each lesson: questions right, and steps done. */
export type Person = {
  name: string;
  day: string;
  lessons: { right: number; of: number; steps: number; ofSteps: number }[];
};

/** One question over the whole class. `slips` are the commonest first. */
export type Tally = {
  lesson: string;
  words: string;
  /** Right at the first try, right later, and tried without being right yet. */
  atOnce: number;
  later: number;
  open: number;
  slips: { words: string; times: number }[];
};

/** Where everybody is. What a hand-in says of questions that the course does not have is passed over. */
export function whoIsWhere(handIns: readonly HandIn[], lessons: readonly CourseLesson[]): Person[] {
  return handIns
    .map((handIn) => ({
      name: handIn.name,
      day: handIn.day,
      lessons: lessons.map(({ id, questions, steps }) => ({
        right: questions.filter(({ name }) => answerOf(handIn, id, name)?.right).length,
        of: questions.length,
        steps: Math.min(steps, handIn.lessons.find(({ lesson }) => lesson === id)?.steps ?? 0),
        ofSteps: steps,
      })),
    }))
    .toSorted((a, b) => a.name.localeCompare(b.name));
}

/** Every question that somebody tried, in the order of the course. */
export function whatWentWrong(handIns: readonly HandIn[], lessons: readonly CourseLesson[]): Tally[] {
  return lessons.flatMap(({ id, title, questions }) =>
    questions.flatMap(({ name, words }): Tally[] => {
      const answers = handIns.flatMap((handIn) => answerOf(handIn, id, name) ?? []);
      if (answers.length === 0) return [];
      const atOnce = answers.filter((answer) => answer.right && answer.atOnce).length;
      const right = answers.filter((answer) => answer.right).length;
      const slips = Map.groupBy(
        answers.flatMap(({ slips }) => slips),
        (slip) => slip,
      );
      return [
        {
          lesson: title,
          words,
          atOnce,
          later: right - atOnce,
          open: answers.length - right,
          slips: [...slips]
            .map(([key, all]) => ({ words: slipInWords(key), times: all.length }))
            .toSorted((a, b) => b.times - a.times),
        },
      ];
    }),
  );
}

const answerOf = (handIn: HandIn, lesson: string, name: string): Answered | undefined =>
  handIn.lessons.find((one) => one.lesson === lesson)?.answers.find((answer) => answer.name === name);

/**
 * The key of a slip as a teacher reads it.
 *
 * @example slipInWords('one-side seam') // => 'one side: seam'
 */
export function slipInWords(key: string): string {
  if (key === 'near') return 'a mark off';
  if (key === 'other') return 'another wrong answer';
  const [kind = '', ...names] = key.split(' ');
  if (kind === 'own') return `the lesson’s own slip ${names.join(' ')}`;
  if (!slipKinds.some((one) => one === kind)) return key;
  return [kind.replaceAll('-', ' '), names.join(' ')].filter(Boolean).join(': ');
}

/**
 * A table for other programs: CSV as in RFC 4180, a line for each answer. A cell that a spreadsheet would take for a
 * formula gets an apostrophe before it (OWASP, "CSV Injection").
 */
export function toCsv(handIns: readonly HandIn[], lessons: readonly CourseLesson[]): string {
  const head = ['name', 'day', 'lesson', 'question', 'tries', 'right', 'right at once', 'slips'];
  const rows = handIns.flatMap((handIn) =>
    lessons.flatMap(({ id, title, questions }) =>
      questions.flatMap(({ name, words }) => {
        const answer = answerOf(handIn, id, name);
        if (!answer) return [];
        const { tries, right, atOnce, slips } = answer;
        const told = slips.map(slipInWords).join('; ');
        return [[handIn.name, handIn.day, title, words, String(tries), yes(right), yes(atOnce), told]];
      }),
    ),
  );
  return [head, ...rows].map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

const yes = (is: boolean) => (is ? 'yes' : 'no');
const cell = (text: string) => `"${(/^[=+\-@\t\r\n]/u.test(text) ? `'${text}` : text).replaceAll('"', '""')}"`;
