/** Which results a part of a lesson keeps back, because a guess comes first or a question further down asks for them. For the build alone. */
import { SAME, type Pattern, type Quantity } from '../../../src/core/index.ts';
import { wordCalled } from '../../words/index.ts';
import type { AttributeValues } from '../../words/word.ts';

/**
 * The names of what a word waits for: the guess before a study, and the questions below it that ask for something it
 * prints, at the size that the page is built with.
 *
 * @param lesson every word of the lesson, in order
 */
export function heldBy(
  lesson: readonly App.WrittenWord[],
  word: string,
  given: AttributeValues,
  pattern: Pattern,
): string[] {
  const results = wordCalled(word)?.results?.(pattern, given) ?? [];
  const at = lesson.findIndex((one) => one.word === word && isSame(one.given, given));
  if (at < 0) return [];
  const guess = guessBefore(lesson, at);
  if (results.length === 0) return guess;
  const asking = lesson.slice(at + 1).filter((one) => {
    const asked = wordCalled(one.word)?.asksFor?.(pattern, one.given) ?? [];
    return asked.some((wanted) => results.some((result) => isOne(wanted, result)));
  });
  return [...new Set([...guess, ...asking.flatMap(({ name }) => name ?? [])])];
}

/** The guess that a study follows: the one before it with no other study between. */
function guessBefore(lesson: readonly App.WrittenWord[], at: number): string[] {
  const isStudy = ({ word }: App.WrittenWord) => wordCalled(word)?.group === 'study';
  if (!isStudy(lesson[at]!)) return [];
  const from = lesson.slice(0, at).findLastIndex(isStudy) + 1;
  const guess = lesson.slice(from, at).findLast(({ word }) => word === 'Predict')?.given.id;
  return typeof guess === 'string' ? [guess] : [];
}

const isOne = (a: Quantity, b: Quantity) => a.dimension === b.dimension && Math.abs(a.value - b.value) < SAME;

/** The same attributes; of what stands between the tags nothing is compared. */
const isSame = (a: AttributeValues, b: AttributeValues) =>
  Object.entries(a).every(([name, value]) => JSON.stringify(b[name]) === JSON.stringify(value)) &&
  Object.keys(b).every((name) => name in a || b[name] === undefined);
