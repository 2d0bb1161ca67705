/** Long strips, such as bindings, from cloth that is not as wide: joined on the straight, or cut on the bias. */

/** What joining two strips takes of each, in mm: 1/4 in (Uma dressmaking notes, on cutting bias strips). */
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
