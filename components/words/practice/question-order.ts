/** Whose turn it is in a set of practice. */
import { randomFrom, shuffled } from '../../../src/core/index.ts';

/**
 * Which of the questions without a sum comes up: each its turn, in an order of the series. Undefined where a sum has its
 * turn, as it has with none right in a row and after each of the others.
 *
 * @param series names the order
 * @param passed how many were got wrong or left before
 */
export function questionWithoutSumAt<Q>(
  others: readonly Q[],
  inARow: number,
  series: string,
  passed: number,
): Q | undefined {
  if (others.length === 0 || inARow % 2 === 0) return undefined;
  return shuffled(others, randomFrom(series))[((inARow - 1) / 2 + passed) % others.length];
}
