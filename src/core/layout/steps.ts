/**
 * Whole steps of length for the search, so that rectangles that fill a width exactly are seen to do so. One step is
 * 0.00001 mm, or the largest multiple of it that all lengths are multiples of.
 */
export type Steps = {
  /** So many steps in mm. */
  mm: (steps: number) => number;
  /** A piece's length in steps. Rounded down by less than a step, so that three thirds never exceed the whole. */
  piece: (mm: number) => number;
  /** The length of a cloth in steps, to the nearest step. */
  cloth: (mm: number) => number;
};

const PER_MM = 100_000;

/** The share of a finest step that floating-point sums may lie below the whole number they mean. */
const SLACK = 0.01;

const down = (mm: number): number => Math.floor(mm * PER_MM + SLACK);
const near = (mm: number): number => (Number.isFinite(mm) ? Math.round(mm * PER_MM) : Infinity);

/**
 * Steps that suit the lengths of some pieces.
 *
 * @example
 * stepsFor([127, 63.5]).piece(127) // => 2
 * stepsFor([127, 63.5]).cloth(1000) // => 15
 */
export function stepsFor(lengths: readonly number[]): Steps {
  let shared = 0;
  for (const mm of lengths) for (let a = down(mm); a > 0;) [shared, a] = [a, shared % a];
  const unit = Math.max(1, shared);
  return {
    // One division, so that a length has the shortest decimals it can have.
    mm: (steps) => (steps * unit) / PER_MM,
    piece: (mm) => Math.round(down(mm) / unit),
    // What is left of a cloth below one step is of no use to any piece.
    cloth: (mm) => (Number.isFinite(mm) ? Math.floor(near(mm) / unit) : Infinity),
  };
}
