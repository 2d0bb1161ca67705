/** Which results a part of a lesson keeps back, because a question further down asks for them. For the build alone. */
import { SAME, type Pattern, type Quantity } from '../../../src/core/index.ts';
import { wordCalled } from '../../words/index.ts';
import type { AttributeValues } from '../../words/word.ts';

/**
 * The names of the questions below a word that ask for something it prints, at the size that the page is built with.
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
  if (results.length === 0 || at < 0) return [];
  const asking = lesson.slice(at + 1).filter((one) => {
    const asked = wordCalled(one.word)?.asksFor?.(pattern, one.given) ?? [];
    return asked.some((wanted) => results.some((result) => isOne(wanted, result)));
  });
  return [...new Set(asking.flatMap(({ name }) => name ?? []))];
}

const isOne = (a: Quantity, b: Quantity) => a.dimension === b.dimension && Math.abs(a.value - b.value) < SAME;

/** The same attributes; of what stands between the tags nothing is compared. */
const isSame = (a: AttributeValues, b: AttributeValues) =>
  Object.entries(a).every(([name, value]) => JSON.stringify(b[name]) === JSON.stringify(value)) &&
  Object.keys(b).every((name) => name in a || b[name] === undefined);
