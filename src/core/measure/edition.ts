/** Which of its two sets of measures a lesson is read in. */
export type Edition = 'inch' | 'metric';

/** Exact since the International Yard and Pound Agreement of 1959. */
export const MM_PER_INCH = 25.4;

/** Two lengths that differ by no more than this, in mm, count as the same length on the table. */
export const SAME = 0.05;

/**
 * How far, in mm, a value may lie from a mark and still count as on it.
 *
 * Far tighter than `SAME`, so that a rounded value never passes for an exact one. Marks of 1/32 in and of 0.1 mm that
 * do not coincide lie at least 0.00625 mm apart, and the rounding of floating-point sums up to 100 m stays below
 * 0.000 000 1 mm; this lies between the two.
 */
export const ON_MARK = 1e-6;

/** The marks an edition measures to. `inch` is a denominator; `metric` is a step in mm. */
export type Grid = { inch: 8 | 16 | 32; metric: 1 | 0.5 | 0.1 };

/** Sixteenths of an inch, whole millimetres. */
export const defaultGrid: Grid = { inch: 16, metric: 1 };

/** The same base measure in one edition or in both, each in mm. */
export type Stated = { inch: number; metric?: number } | { inch?: number; metric: number };

/**
 * One mark of the edition's grid, in mm.
 *
 * @example markOf('inch') // => 1.5875
 */
export const markOf = (edition: Edition, grid: Grid = defaultGrid): number =>
  edition === 'inch' ? MM_PER_INCH / grid.inch : grid.metric;

/**
 * How many marks of the grid a length is, to the nearest mark; half a mark goes away from zero.
 *
 * @example marks(114.3, 'inch') // => 72
 */
export function marks(mm: number, edition: Edition, grid: Grid = defaultGrid): number {
  const perMm = edition === 'inch' ? (grid.inch * 5) / 127 : 1 / grid.metric;
  // The allowance makes half a mark that came out a hair short still count as half a mark.
  const count = Math.floor((Math.abs(mm) + ON_MARK) * perMm + 0.5);
  return mm < 0 && count > 0 ? -count : count;
}

/**
 * The nearest mark of the edition's grid, in mm.
 *
 * @example toGrid(83, 'inch') // => 82.55
 * @example toGrid(82.55, 'metric') // => 83
 */
export function toGrid(mm: number, edition: Edition, grid: Grid = defaultGrid): number {
  const count = marks(mm, edition, grid);
  // One division of whole numbers, so that a mark has the same floating-point value however it was reached.
  return edition === 'inch' ? (count * 127) / (5 * grid.inch) : count / (1 / grid.metric);
}

/**
 * Whether a length lies on a mark of the edition's grid, within `ON_MARK`.
 *
 * @example isOnGrid(82.55, 'inch') // => true
 * @example isOnGrid(83, 'inch') // => false
 */
export function isOnGrid(mm: number, edition: Edition, grid: Grid = defaultGrid): boolean {
  return Math.abs(mm - toGrid(mm, edition, grid)) <= ON_MARK;
}

/**
 * The value of a base measure in an edition, in mm: the one that was stated for it, or else the other edition's value
 * moved to the nearest mark. A length too small for the marks keeps its exact value, so that it never becomes nothing.
 *
 * @example inEdition({ inch: 6.35, metric: 6 }, 'metric') // => 6
 * @example inEdition({ inch: 6.35 }, 'metric') // => 6
 */
export function inEdition(stated: Stated, edition: Edition, grid: Grid = defaultGrid): number {
  const own = stated[edition];
  if (own !== undefined) return own;
  const other = stated[edition === 'inch' ? 'metric' : 'inch'] as number;
  return toGrid(other, edition, grid) || other;
}

/**
 * Whether two editions of one length lie too far apart to be meant as one: more than a tenth of the larger, and more
 * than 2 mm. Common practice, no source.
 *
 * @example farApart(25.4, 25) // => false
 * @example farApart(149.2, 198) // => true
 */
export const farApart = (inch: number, metric: number): boolean => {
  const apart = Math.abs(inch - metric);
  return apart > 2 + ON_MARK && apart > Math.max(inch, metric) / 10 + ON_MARK;
};
