/** The questions of a set that take no sum: how each is handed to the set, and mixed anew each time it comes up. */
import { randomFrom, shuffled, type AskedFold, type Pointing } from '../../../src/core/index.ts';

/** What the part of each kind shows; by the lesson word that asks it. */
export type Shown = {
  AskChoice: { choices: { text: string; right: boolean; say?: string }[] };
  AskOrder: { steps: string[]; mixed: string[] };
  AskPairs: { pairs: Record<string, string>; meanings: string[] };
  AskEdge: { piece: string; edges?: string[] | undefined };
  AskFold: { piece: string; asked: AskedFold };
  AskSide: { step: string; side: 'front' | 'back'; shows: string; built?: Pointing | undefined };
};
export type Kind = keyof Shown;
type Named = { name: string; hint?: string | undefined };

/** A question of another kind; `words` holds the formula of each size among them. */
export type Other = {
  [Word in Kind]: { word: Word; words: App.WrittenQuestion['words']; shown: Shown[Word] & Named };
}[Kind];

/**
 * The same question with what can be chosen in another order; the same seed gives the same.
 *
 * @example mixAnew(question, 'folds again 0 1').shown
 */
export function mixAnew(question: Other, seed: string): Other {
  const random = randomFrom(seed);
  switch (question.word) {
    case 'AskChoice':
      return { ...question, shown: { ...question.shown, choices: shuffled(question.shown.choices, random) } };
    case 'AskOrder':
      return { ...question, shown: { ...question.shown, mixed: outOfOrder(question.shown.steps, random) } };
    case 'AskPairs':
      return { ...question, shown: { ...question.shown, meanings: shuffled(question.shown.meanings, random) } };
    default:
      return { ...question };
  }
}

/** Steps mixed, and never in order by chance. */
export function outOfOrder(steps: readonly string[], random: () => number): string[] {
  const drawn = shuffled(steps, random);
  return drawn.every((step, i) => step === steps[i]) ? steps.toReversed() : drawn;
}

/**
 * Which of the others comes up: each its turn, in an order of the series. Undefined where a sum has its turn, as it has
 * with none right in a row and after each of the others.
 *
 * @param series names the order
 * @param passed how many were got wrong or left before
 */
export function otherAt(others: readonly Other[], inARow: number, series: string, passed: number): Other | undefined {
  if (others.length === 0 || inARow % 2 === 0) return undefined;
  return shuffled(others, randomFrom(series))[((inARow - 1) / 2 + passed) % others.length];
}
