import { areaOf, ON } from './ring.ts';
import { boxOf, size } from './size.ts';
import { distance, plus, times } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { sides } from '../geometry/index.ts';
import { layersAt } from './layers.ts';
import { sewn } from './stitch.ts';
import { asOneStep } from './group.ts';
import { without } from './without.ts';
import type { Mark, PlyEdge, PlyOutline, Sewn, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

const CORNERS = ['bottom left', 'bottom right', 'top left', 'top right'] as const;
export type Corner = (typeof CORNERS)[number];

/** Whether a name is that of a corner. */
export const isCorner = (name: string): name is Corner => (CORNERS as readonly string[]).includes(name);

export type BoxCorner = {
  readonly corner: Corner;
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
 * Faults: `not-finite`; `too-deep` when the square is larger than the work or smaller than its allowance; `misses` where no
 * two layers lie in a square corner; `sewn-down` where it is boxed already.
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
  const outer = place(side + SAME, end + SAME);
  if ([outer, inner].some((point) => layersAt(work, point).length < 2)) {
    const message = 'There are no two layers in a square corner here: only a bag that is sewn or folded can be boxed.';
    return fail({ code: 'misses', message, edge: corner });
  }
  const way = [place(side, inSeams + end), inner, place(inSeams + side, end)];
  const stitched = sewn(work, 'seam', way);
  const row = stitched.stitches.at(-1)!;
  const plies = layersAt(stitched, inner).map(({ id }) => id);
  const mark: Mark = { kind: 'box', name: corner, at: inner, plies, corner: at, square: inSeams };
  const marked: Work = { ...stitched, marks: [...stitched.marks, mark] };
  if (work.marks.some((other) => other.corner && distance(other.corner, at) < SAME)) {
    return fail({ code: 'sewn-down', message: `The corner ${corner} is boxed already.`, edge: corner });
  }
  const { width, height } = size(marked);
  if (!(Math.min(width, height) > SAME)) {
    const message = 'The squares of two boxed corners lie on one another.';
    return fail({ code: 'too-deep', message, edge: corner, amount: -Math.min(width, height) });
  }
  if (leaving === undefined) return ok(asOneStep(work.done, marked, { did: 'box corner', stitches: [row.id] }));

  const [w, h] = [inSeams + side - leaving, inSeams + end - leaving];
  if (w <= ON || h <= ON) return fail({ code: 'too-deep', message: 'Nothing is left to cut off the corner.' });
  const scrap = squareRing([place(-1, -1), place(w, -1), place(w, h), place(-1, h)], row.id);
  const cut = without(marked, () => [scrap]);
  if (!cut.ok) return cut;
  const { work: left, cutAway } = cut.value;
  return ok(asOneStep(work.done, left, { did: 'box corner', stitches: [row.id], cutAway }));
}

/**
 * What lies outside the seam lines at the two sides of a corner, in mm: as far as the nearest seam along each lies inside
 * it, and 0 where the cloth is folded there. `usual` where a side is neither, not sewn yet.
 */
export function allowancesAt(work: Work, corner: Corner, usual: number): { side: number; end: number } {
  const box = boxOf(work.plies);
  const [atLeft, low] = [corner.endsWith('left'), corner.startsWith('bottom')];
  // Seen from either side: how far inside it a point lies, and how far from the corner along it.
  const fromSide = ({ x, y }: Point) => ({
    off: atLeft ? x - box.x : box.x + box.width - x,
    along: low ? y - box.y : box.y + box.height - y,
  });
  const fromEnd = (p: Point) => {
    const { off, along } = fromSide(p);
    return { off: along, along: off };
  };
  type Places = typeof fromSide;
  const lies = (places: Places, a: Point, b: Point, most: number) => {
    const [p, q] = [places(a), places(b)];
    return distance(a, b) > SAME && Math.abs(p.off - q.off) < SAME && Math.min(p.along, q.along) < most;
  };
  // The stitch line of a pair is walked counter-clockwise: up the right side, down the left, to the right at the bottom.
  const facing = (places: Places) => {
    const isSide = places === fromSide;
    return (a: Point, b: Point) => (isSide ? (atLeft ? a.y > b.y : a.y < b.y) : low ? a.x < b.x : a.x > b.x);
  };
  const allowance = (places: Places, across: number, long: number): number => {
    const faces = facing(places);
    const lasting = work.stitches.flatMap(({ round }): { from: Point }[] => {
      const sewn = round
        ? sides(round.ring).filter(({ from, to }, i) => round.allowances[i]! > 0 && faces(from, to))
        : [];
      return sewn.filter(({ from, to }) => lies(places, from, to, Infinity));
    });
    // A row beside the seam of a pair, such as the first one of a French seam, lies in its allowance.
    const seams =
      lasting.length > 0
        ? lasting
        : work.stitches.flatMap(({ kind, runs }): { from: Point }[] => {
            const near = kind === 'seam' ? runs.filter(({ from }) => places(from).off < across / 2) : [];
            return near.filter(({ from, to }) => lies(places, from, to, long / 2));
          });
    if (seams.length > 0) return Math.max(0, Math.min(...seams.map(({ from }) => places(from).off)));
    const isFolded = work.plies.some(({ outline }) =>
      sides(outline).some(
        ({ from, to }, i) =>
          outline[i]!.fold !== undefined && Math.abs(places(from).off) < SAME && lies(places, from, to, long / 2),
      ),
    );
    return isFolded ? 0 : usual;
  };
  return { side: allowance(fromSide, box.width, box.height), end: allowance(fromEnd, box.height, box.width) };
}

/** A step that folds a work, unless it would fold a boxed corner, which stands up: `sewn-down`. */
export function boxesStand(before: Work, after: Sewn): Sewn {
  if (!after.ok) return after;
  const moved = before.marks.find(({ kind, at, corner = at }, i) => {
    if (kind !== 'box') return false;
    const inside = times(plus(at, corner), 0.5);
    const now = layersAt(after.value, inside).map(({ id }) => id);
    return after.value.marks[i]?.at !== at || layersAt(before, inside).some(({ id }) => !now.includes(id));
  });
  if (!moved) return after;
  const message = `The boxed corner ${moved.name} would be folded here, and it stands up. Fold or hem the work before it is boxed.`;
  return fail({ code: 'sewn-down', message });
}

function squareRing(corners: readonly Point[], held: number): PlyOutline {
  const ring = corners.map((from): PlyEdge => ({ name: 'box', from, bulge: 0, held }));
  return areaOf(ring) > 0 ? ring : ring.reverse();
}
