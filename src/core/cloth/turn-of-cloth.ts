/*
 * Cloth that goes round a bend is stretched outside and squeezed inside; in between lies a line that keeps its length.
 * Sheet metal has the same rule: bend allowance BA = A (pi / 180) (R + K T), with A the angle in degrees, R the radius
 * of the inside of the bend, T the thickness, and K how deep the line lies in it (Machinery's Handbook, 26th edition,
 * as cited at vedge.org/kfac.html). Metal has K from 0.43 to 0.47; cloth has its line in the middle, K = 0.5, which is
 * common practice with no source, and the most that K can be.
 */

/** Cloth is taken to keep its length in the middle of its thickness. */
export const MIDDLE = 0.5;

/**
 * The length, in mm, that cloth of a thickness takes to go round a bend.
 *
 * @param degrees how far it turns: 180 for a flat fold, 90 round the edge of a board
 * @param radius of the inside of the bend, in mm
 * @param thickness in mm
 * @param k where the line that keeps its length lies: 0 inside, 0.5 in the middle
 * @example
 * bendAllowance(180, 0, 1) // => 1.5707963267948966
 */
export const bendAllowance = (degrees: number, radius: number, thickness: number, k: number = MIDDLE): number =>
  (degrees * Math.PI * (radius + k * thickness)) / 180;

/** One layer of a fold. */
export type TurnedLayer = {
  /** What its bend takes, in mm. */
  readonly bend: number;
  /** How much longer than the innermost layer it must be, in mm, so that the raw edges still meet. */
  readonly longer: number;
};

/**
 * Turn of cloth: what each layer of a stack needs to go round a fold together.
 *
 * @param layers thickness of each layer in mm, from the innermost outward
 * @param round thickness in mm of what lies in the fold, such as the edge that a binding goes round
 * @param degrees how far the stack turns; 180 for a flat fold
 * @example
 * turnOfCloth([1, 1]).map((layer) => layer.longer) // => [0, 3.141592653589793]
 */
export function turnOfCloth(layers: readonly number[], round = 0, degrees = 180): TurnedLayer[] {
  let radius = round / 2;
  const bends = layers.map((thickness) => {
    const bend = bendAllowance(degrees, radius, thickness);
    radius += thickness;
    return bend;
  });
  return bends.map((bend) => ({ bend, longer: bend - bends[0]! }));
}
