import { areaOf, ON } from './ring.ts';
import { boxOf } from './size.ts';
import { fail, ok } from '../measure/index.ts';
import { layersAt } from './layers.ts';
import { sewn } from './stitch.ts';
import { asOneStep } from './group.ts';
import { without } from './without.ts';
import type { Mark, PlyEdge, PlyOutline, Sewn, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

export type BoxCorner = {
  readonly corner: 'bottom left' | 'bottom right' | 'top left' | 'top right';
  /** The side of the square that is boxed off, in mm. */
  readonly square: number;
  /**
   * Two conventions are in use, and they differ by the seam allowance. `seam`: the square is measured from the seam
   * lines, the depth is twice its side (Lazy Girl Designs: 2 gives 4). `raw edge`: it is measured from the raw edges,
   * the depth is twice what is left of its side inside the allowance (Best Fabric Store: 1 1/2 with 1/2 gives 2).
   */
  readonly from?: 'seam' | 'raw edge';
  /** Seam allowances that lie outside the seam lines now, in mm; 0 where the edge is a fold or was turned. */
  readonly allowance?: number | { readonly side: number; readonly end: number };
  /** How much of the corner is left outside the stitches; left out, nothing is cut off. */
  readonly leaving?: number;
};

/**
 * Boxes a corner of a bag: the corner is opened so that side seam lies on bottom seam, and sewn across. Sewn, the bag no
 * longer lies flat; the picture shows the seam where it runs on the flat bag, along two sides of the square, and the
 * size of the work takes the box into account.
 *
 * Faults: `not-finite`; `too-deep` when the square is larger than the work or smaller than its allowance.
 *
 * @example
 * size(boxCorner(bag, { corner: 'bottom left', square: 50 }).value) // => 50 mm narrower and shorter, 100 mm deep
 */
export function boxCorner(work: Work, how: BoxCorner): Sewn {
  const { corner, square, from = 'seam', allowance = 0, leaving } = how;
  const { side, end } = typeof allowance === 'number' ? { side: allowance, end: allowance } : allowance;
  if (!Number.isFinite(square + side + end + (leaving ?? 0)) || side < 0 || end < 0) {
    return fail({ code: 'not-finite', message: 'The square of the boxed corner is not a length.' });
  }
  const box = boxOf(work.plies);
  const inSeams = from === 'seam' ? square : square - Math.max(side, end);
  if (!(inSeams > 0) || inSeams + side > box.width / 2 || inSeams + end > box.height) {
    const message = 'The square of the boxed corner does not fit inside the seams.';
    return fail({ code: 'too-deep', message, amount: inSeams > 0 ? inSeams + side - box.width / 2 : -inSeams });
  }
  // Directions from the corner into the bag.
  const [right, up] = [corner.endsWith('left'), corner.startsWith('bottom')];
  const at: Point = { x: right ? box.x : box.x + box.width, y: up ? box.y : box.y + box.height };
  const place = (x: number, y: number): Point => ({ x: at.x + (right ? x : -x), y: at.y + (up ? y : -y) });

  const inner = place(inSeams + side, inSeams + end);
  const way = [place(side, inSeams + end), inner, place(inSeams + side, end)];
  const stitched = sewn(work, 'seam', way);
  const row = stitched.stitches.at(-1)!;
  const plies = layersAt(stitched, inner).map(({ id }) => id);
  const mark: Mark = { kind: 'box', name: corner, at: inner, plies, square: inSeams };
  const marked: Work = { ...stitched, marks: [...stitched.marks, mark] };
  if (leaving === undefined) return ok(asOneStep(work.done, marked, { did: 'box corner', stitches: [row.id] }));

  const [w, h] = [inSeams + side - leaving, inSeams + end - leaving];
  if (w <= ON || h <= ON) return fail({ code: 'too-deep', message: 'Nothing is left to cut off the corner.' });
  const scrap = squareRing([place(-1, -1), place(w, -1), place(w, h), place(-1, h)], row.id);
  const cut = without(marked, () => [scrap]);
  return ok(asOneStep(work.done, cut.work, { did: 'box corner', stitches: [row.id], cutAway: cut.cutAway }));
}

function squareRing(corners: readonly Point[], held: number): PlyOutline {
  const ring = corners.map((from): PlyEdge => ({ name: 'box', from, bulge: 0, held }));
  return areaOf(ring) > 0 ? ring : ring.reverse();
}
