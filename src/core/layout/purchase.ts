import { ON_MARK } from '../measure/edition.ts';
import type { Edition } from '../measure/index.ts';
import type { Selling } from './demand.ts';

/** What to ask for in the shop: each amount by itself, so that nothing is hidden in the sum. All in mm. */
export type Purchase = {
  /** The layout takes this. */
  laid: number;
  /** More, because it shrinks. */
  shrinkage: number;
  /** More, because the end is straightened. */
  straightening: number;
  /** More, because the shop cuts in steps. */
  rounding: number;
  total: number;
};

/** Steps in which cloth is commonly cut from the bolt: an eighth of a yard, 10 cm. Common practice, no source. */
export const saleSteps: Readonly<Record<Edition, number>> = { inch: (36 * 25.4) / 8, metric: 100 };

/** More than this never shrinks away; it would ask for cloth without end. */
export const MOST_SHRINKAGE = 50;

/**
 * The length to buy for a layout. Cloth that shrinks by s % must be length / (1 - s / 100) long before it is washed
 * (foralltex, "Shrinkage math for pattern makers").
 *
 * @param length mm, as laid out
 * @example
 * toBuy(950, { shrinkage: 5, step: 100 }).total // => 1000
 * toBuy(950, { straightening: 20, step: 100 }).rounding // => 30
 */
export function toBuy(length: number, selling: Selling = {}): Purchase {
  const { step = 0, shrinkage: per = 0, straightening: straight = 0 } = selling;
  const laid = Math.max(0, length);
  if (laid === 0) return { laid, shrinkage: 0, straightening: 0, rounding: 0, total: 0 };
  const shrinkage = laid / (1 - per / 100) - laid;
  const exact = laid + shrinkage + straight;
  // A step finer than a mark is no step.
  const total = step > ON_MARK ? Math.ceil((exact - ON_MARK) / step) * step : exact;
  return { laid, shrinkage, straightening: straight, rounding: Math.max(0, total - exact), total };
}
