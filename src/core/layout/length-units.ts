/**
 * Whole units of length for the search, so that rectangles that fill a width exactly are seen to do so. One unit is
 * 0.00001 mm, or the largest multiple of it that all lengths are multiples of.
 */
export type LengthUnits = {
  /** So many units in mm. */
  mm: (units: number) => number;
  /** A piece's length in units. Rounded down by less than a unit, so that three thirds never exceed the whole. */
  piece: (mm: number) => number;
  /** The length of a cloth in units, rounded down. */
  cloth: (mm: number) => number;
};

const PER_MM = 100_000;

/** The share of a finest unit that floating-point sums may lie below the whole number they mean. */
const SLACK = 0.01;

const down = (mm: number): number => Math.floor(mm * PER_MM + SLACK);
const near = (mm: number): number => (Number.isFinite(mm) ? Math.round(mm * PER_MM) : Infinity);

/**
 * Units that suit the lengths of some pieces.
 *
 * @example
 * lengthUnits([127, 63.5]).piece(127) // => 2
 * lengthUnits([127, 63.5]).cloth(1000) // => 15
 */
export function lengthUnits(lengths: readonly number[]): LengthUnits {
  let shared = 0;
  for (const mm of lengths) for (let a = down(mm); a > 0;) [shared, a] = [a, shared % a];
  const unit = Math.max(1, shared);
  return {
    // One division, so that a length has the shortest decimals it can have.
    mm: (units) => (units * unit) / PER_MM,
    piece: (mm) => Math.round(down(mm) / unit),
    // What is left of a cloth below one unit is of no use to any piece.
    cloth: (mm) => (Number.isFinite(mm) ? Math.floor(near(mm) / unit) : Infinity),
  };
}
