/** What a learner chooses, in words: a length on the marks of the edition, how many, or a plain number. */
import { formatLength, formatNumber } from '../measure/index.ts';
import { parseFormula } from '../formula/index.ts';
import type { Edition, Grid, Style } from '../measure/index.ts';
import type { Adjustable } from './pattern.ts';

/**
 * A value of a slider as people read it.
 *
 * @param value mm for a length, else a plain number
 * @example formatChosen(38.1, 'length', 'inch') // => '1 1/2 in'
 * @example formatChosen(1.5, 'number', 'inch') // => '1.5'
 */
export function formatChosen(
  value: number,
  kind: Adjustable['kind'],
  edition: Edition,
  options: { grid?: Grid; style?: Style; unit?: boolean } = {},
): string {
  const { style = 'plain' } = options;
  return kind === 'length' ? formatLength(value, edition, options) : formatNumber(value, { style });
}

/** Whether a slider that begins at `min` comes to a value in whole steps, to within a share `close` of one. */
export const isOnStep = (value: number, { min, step }: { min: number; step: number }, close = 1e-6): boolean => {
  const steps = (value - min) / step;
  return Math.abs(steps - Math.round(steps)) <= close;
};

/** What a slider of a measure goes through. */
export const choiceKind = ({ kind }: { kind: Adjustable['kind'] | 'formula' }): Adjustable['kind'] =>
  kind === 'formula' ? 'length' : kind;

/**
 * A plain number that stands by itself, in digits or as a fraction; undefined for anything else.
 *
 * @example readPlainNumber('1 1/2') // => 1.5
 * @example readPlainNumber('1,5') // => 1.5
 */
export function readPlainNumber(text: string): number | undefined {
  const read = parseFormula(text, { names: [] });
  return read.ok && read.value.tree.kind === 'number' ? read.value.tree.value : undefined;
}
