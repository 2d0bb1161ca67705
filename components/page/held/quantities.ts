/** Sizes that parts of a lesson print, and what its questions ask for. */
import {
  sumFor,
  type FoldQuestion,
  type Pattern,
  type Piece,
  type Quantity,
  type Step,
} from '../../../src/core/index.ts';
import { valueOf } from '../quantity.ts';

/** Lengths in mm as quantities. */
export const lengths = (...all: readonly number[]): Quantity[] => all.map((value) => ({ value, dimension: 1 }));

/** What a formula comes to; nothing where it has no value. */
export function quantityIn(of: unknown, pattern: Pattern): Quantity[] {
  const value = valueOf(String(of), pattern);
  return value ? [value] : [];
}

/** The same of what takes a sum. What is read off the page, such as a size that the author states, is nobody's secret. */
export function workedOut(of: unknown, pattern: Pattern): Quantity[] {
  const sum = sumFor(String(of), pattern);
  return sum.ok && sum.value.formula.tree.kind !== 'name' ? [sum.value.wanted] : [];
}

/** What a drawing and a table of a piece tell: its size, and of a pleated one how many folds it has, and where. */
export function sizesOf(piece: Piece | undefined): Quantity[] {
  if (!piece) return [];
  const { size, pleats: plan } = piece;
  const told = lengths(size.width, size.height);
  if (!plan) return told;
  const folds = plan.folds.map(({ at }) => at);
  return [...told, { value: folds.length, dimension: 0 }, ...lengths(...folds, plan.stripLength, plan.panelHeight)];
}

/** What a work measures after a step. */
export const sizesAfter = ({ size, depth }: Step): Quantity[] => lengths(size.width, size.height, depth);

/** The fold that is asked for, or all of a kind. */
export function foldsAskedFor(piece: Piece | undefined, asked: FoldQuestion): Quantity[] {
  const folds = piece?.pleats?.folds ?? [];
  return lengths(
    ...folds.flatMap(({ at, kind }, i) => (('fold' in asked ? i + 1 === asked.fold : kind === asked.kind) ? [at] : [])),
  );
}
