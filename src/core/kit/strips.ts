/** Long strips, such as bindings, from cloth that is not as wide: joined on the straight, or cut on the bias. */

/** What joining two strips takes of each where the project has no seam, in mm: 1/4 in (Uma dressmaking notes, on cutting bias strips). */
export const JOIN = 6.35;

/**
 * How many strips from selvage to selvage make one of a length. Each join takes its allowance twice.
 *
 * @param length wanted, mm
 * @param usable width of the cloth, mm
 * @param join seam allowance of a join, mm
 * @example
 * stripsFor(4673.6, 1016, 0) // => 5
 */
export function stripsFor(length: number, usable: number, join = JOIN): number {
  if (length <= usable) return length > 0 ? 1 : 0;
  const gain = usable - 2 * join;
  // A strip that is all allowance never gets any longer.
  return gain > 0 ? Math.ceil((length - 2 * join) / gain - 1e-9) : Infinity;
}

/**
 * How long a strip on the bias comes from a square: its area over the width of the strip. Seams and the last, slanting
 * strip take more from it, so buy for a longer one.
 */
export const biasFromSquare = (side: number, strip: number): number => (side * side) / strip;

/** The side of a square that gives a strip on the bias of some length. */
export const squareForBias = (length: number, strip: number): number => Math.sqrt(length * strip);

/** What a strip on the bias takes along the selvage: the diagonal of its width. */
export const alongSelvage = (strip: number): number => strip * Math.SQRT2;

/** The cut width of a binding that is folded twice: four times what shows. */
export const doubleFold = (finished: number): number => 4 * finished;

/** Squares that a strip on the bias is cut from, going round and round each (a continuous strip). */
export type BiasSquares = { squares: number; side: number };

/**
 * How long a continuous strip comes from one square, in mm. Cut along a diagonal, its halves are joined along the
 * grain and then to a tube, which is cut spirally. Both seams take their allowance twice; what is left over of the
 * height is no whole round; and both ends of the strip slant. With 1/4 in, 12 in give 63 in of 2 in and 15 in give
 * 100 1/2 in; a tutorial got about 60 and 100 in (quoted on ronbd.com).
 *
 * @param side of the square
 * @param strip width of the strip, cut
 * @param join seam allowance
 * @example
 * continuousBias(381, 50.8, 6.35) // => 2553.8
 */
export function continuousBias(side: number, strip: number, join: number): number {
  const sewn = side - 2 * join;
  const rounds = Math.floor(sewn / Math.SQRT2 / strip + 1e-9);
  return Math.max(0, rounds * sewn * Math.SQRT2 - strip);
}

/**
 * The squares for a continuous strip on the bias: as few as the cloth allows, as small as the length allows.
 *
 * @param length wanted, mm
 * @param strip width of the strip, cut
 * @param usable width of the cloth: no square is larger
 * @param join seam allowance of a join
 * @param step sides are whole steps of it, rounded up
 * @example
 * squaresForBias(1524, 38.1, 1067, 6.35, 6.35) // => { squares: 1, side: 285.75 }
 */
export function squaresForBias(
  length: number,
  strip: number,
  usable: number,
  join: number,
  step: number,
): BiasSquares | undefined {
  if (!(strip > 0) || !(length > 0) || continuousBias(usable, strip, join) <= 0) return undefined;
  // Slanting ends are joined along the grain: a join takes its allowance along the slant, twice.
  const taken = 2 * join * Math.SQRT2;
  for (let squares = 1; squares <= 1000; squares++) {
    const each = (length + (squares - 1) * taken) / squares;
    const side = smallestSide(each, strip, join, step);
    if (side <= usable + 1e-9) return { squares, side };
  }
  return undefined;
}

function smallestSide(length: number, strip: number, join: number, step: number): number {
  let best = Infinity;
  // More rounds want a higher square, fewer a wider one.
  for (let rounds = 1; rounds <= 1000; rounds++) {
    const high = rounds * strip * Math.SQRT2 + 2 * join;
    const wide = (length + strip) / (rounds * Math.SQRT2) + 2 * join;
    best = Math.min(best, Math.max(high, wide));
    if (high >= wide) break;
  }
  return Math.ceil(best / step - 1e-9) * step;
}
