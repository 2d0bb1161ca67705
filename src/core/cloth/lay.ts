import { area, bounds, difference, length, lineThrough, sides, union } from '../geometry/index.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { barred, linesRound } from './held.ts';
import { findEdge } from './edge.ts';
import { identity, inverse, followedBy, translation } from '../geometry/transform.ts';
import { middleOfWork, onto, overturning, ownPlies } from './place.ts';
import { edgeOn, isSide, movedEdge } from './sides.ts';
import { distance, minus } from '../geometry/point.ts';
import { areaOf, covers, moved, offsets } from './ring.ts';
import { boxOf } from './size.ts';
import { movedWork } from './move.ts';
import { noted } from './work.ts';
import { stackUp, withPlies } from './combine.ts';
import type { Along } from './place.ts';
import type { ClothFault } from './fault.ts';
import type { EdgeReference } from './edge.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Ply, PlyOutline, Sewn, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { Side } from './sides.ts';

/** Distances of a laid work: between sides of one name, or from the middle of the work to the nearer side of what is laid. */
export type Distances = Partial<Record<Side | 'left of middle' | 'right of middle', number>>;

/** How one work is laid on another. */
export type Lay = {
  /**
   * The edge of the work that lies there and the edge of the work laid on it, as both lie before; left out, middle on
   * middle.
   */
  readonly edges?: readonly [EdgeReference, EdgeReference];
  /** What later steps call the work that is laid on, and which one of several alike it is. */
  readonly called?: { readonly work: string; readonly nth: number };
  /** How far inside the first edge the second comes to lie, in mm; below 0, beyond it. */
  readonly inside?: number;
  /** How far its own sides, as it comes to lie, lie inside those of the work or beside its middle, in mm. */
  readonly from?: Distances;
  readonly along?: Along;
  /** `down` turns the work over as it is laid, so that upper sides touch. */
  readonly face?: 'up' | 'down';
  /** Whether it is laid on the work or slid under it. */
  readonly lands?: 'over' | 'under';
};

/**
 * Lays one work on another or under it.
 *
 * Faults: those of finding the edges; `not-finite`; `no-plies`.
 *
 * @example
 * lay(cover, flap, { edges: ['top', 'top'] }) // => the flap on the cover, both top edges on one line
 */
export function lay(work: Work, other: Work, how: Lay = {}): Sewn {
  const { edges, inside = 0, along = 'middle', face = 'up', lands = 'over' } = how;
  if (!Number.isFinite(inside))
    return fail({ code: 'not-finite', message: 'The distance to lay it at is not a number.' });
  if (work.plies.length === 0 || other.plies.length === 0) {
    return fail({ code: 'no-plies', message: 'There is nothing to lay.' });
  }
  const over = face === 'down' ? overturning(other) : identity;
  let transform = followedBy(over, translation(minus(middleOfWork({ plies: ownPlies(work) }), middleOfWork(other))));
  if (edges) {
    const [fixed, moving] = [findEdge(work, edges[0]), findEdge(other, edges[1])];
    if (!fixed.ok) return fixed;
    if (!moving.ok) return moving;
    transform = followedBy(over, onto(fixed.value, movedEdge(moving.value, over), inside, along));
  }
  if (how.from) {
    const shift = shiftTo(work, movedWork(other, transform), how.from);
    if (!shift.ok) return shift;
    transform = followedBy(transform, translation(shift.value));
  }
  const laid = movedWork(other, transform);
  const { called } = how;
  const there = called
    ? withPlies(laid, (ply) => ({ ...ply, laid: [...(ply.laid ?? []), { ...called, transform }] }))
    : laid;
  // The first work keeps its numbers also when the other comes to lie under it.
  const { work: both, of } = stackUp([work, there]);
  const isFirst = (ply: Ply) => of[0]!.has(ply.id);
  const plies =
    lands === 'over' ? both.plies : [...both.plies.filter((ply) => !isFirst(ply)), ...both.plies.filter(isFirst)];
  return ok(noted({ ...both, plies }, { did: 'lay' }));
}

/** For each distance: along which axis it is measured, from where, which way, and what lies at the end of that way. */
const WAYS = {
  left: { axis: 'x', way: 1, end: 'right' },
  right: { axis: 'x', way: -1, end: 'left' },
  bottom: { axis: 'y', way: 1, end: 'top' },
  top: { axis: 'y', way: -1, end: 'bottom' },
  'right of middle': { axis: 'x', way: 1, end: 'right' },
  'left of middle': { axis: 'x', way: -1, end: 'left' },
} as const;

/** How far a work moves that is laid at distances. */
export function shiftTo(work: Work, laid: Work, from: Distances): Result<Point, ClothFault> {
  const shift = { x: 0, y: 0 };
  const box = boxOf(laid.plies);
  const far = { x: box.x + box.width, y: box.y + box.height };
  for (const [name, by] of Object.entries(from) as [keyof Distances, number][]) {
    const field = isSide(name) ? `from ${name}` : name;
    if (!Number.isFinite(by)) return fail({ code: 'not-finite', message: 'A distance to lay it at is not a number.' });
    const { axis, way, end } = WAYS[name];
    const begins = isSide(name) ? outermost(work, name) : middleAcross(work);
    if (!begins.ok) return begins;
    const ends = outermost(work, end);
    if (!ends.ok) return ends;
    const at = begins.value + way * by;
    shift[axis] = at - (way > 0 ? box[axis] : far[axis]);
    const beyond = far[axis] - box[axis] - way * (ends.value - at);
    if (beyond > SAME) {
      const message = `So far from the ${isSide(name) ? name : 'middle'} it would reach beyond the ${end}.`;
      return fail({ code: 'off-the-work', message, field, amount: beyond });
    }
  }
  return ok(shift);
}

/**
 * Where a side lies, along the axis across it; a slanting one is measured where it reaches farthest out. What was laid on
 * the work and stands out beyond its side does not count.
 */
export function outermost(work: Work, side: Side): Result<number, ClothFault> {
  const edge = edgeOn({ ...work, plies: ownPlies(work) }, side);
  if (!edge.ok) return edge;
  const { axis, way } = WAYS[side];
  const { from, to } = edge.value;
  return ok(way > 0 ? Math.min(from[axis], to[axis]) : Math.max(from[axis], to[axis]));
}

/** Half way between the left and the right side. */
function middleAcross(work: Work): Result<number, ClothFault> {
  const [left, right] = [outermost(work, 'left'), outermost(work, 'right')];
  if (!left.ok) return left;
  return right.ok ? ok((left.value + right.value) / 2) : right;
}

/** How interfacing is fused. */
export type Fuse = {
  /** The piece it is fused to; the largest ply of the work if left out. */
  readonly to?: string;
  /** How far it lies inside the left and the bottom edge of the piece, in mm; left out, it lies in the middle. */
  readonly inset?: { readonly left: number; readonly bottom: number };
  /** Of a patch: where its lower left corner lies, in mm from the left and the bottom of the work. */
  readonly at?: Point;
};

/**
 * Fuses interfacing (a work of one ply) to the wrong side of a piece. From then on both fold together.
 *
 * Faults: `unknown-piece`, `no-plies`, `not-finite`; `off-the-work` and `shapes-differ` where it lies beside the work or
 * reaches beyond it; `blocked` where the cloth is folded so that it would lie through a fold.
 *
 * @example
 * fuse(panel, stay, { to: 'pocket panel' }).value.plies.length // => panel.plies.length + 1
 */
export function fuse(work: Work, interfacing: Work, { to, inset, at: place }: Fuse = {}): Sewn {
  const plies = work.plies.filter((ply) => to === undefined || ply.piece === to);
  const stay = interfacing.plies[0];
  if (!stay || interfacing.plies.length > 1) {
    return fail({ code: 'no-plies', message: 'Interfacing is fused as one flat piece.' });
  }
  if (plies.length === 0)
    return fail({ code: 'unknown-piece', message: `There is no piece ${to} to fuse to.`, piece: to });
  if (place && !Number.isFinite(place.x + place.y)) {
    return fail({ code: 'not-finite', message: 'The place of the patch is not a number.', piece: stay.piece });
  }
  const onPiece = place && patchTransform(work, stay, place);
  const under = onPiece && middleOf(moved(stay.outline, onPiece));
  const there = plies.filter((ply) => ply.fusedTo === undefined && (!under || covers(ply.outline, under)));
  if (there.length === 0) {
    return fail({
      code: 'off-the-work',
      message: `There is no cloth where ${stay.piece} is fused.`,
      piece: stay.piece,
    });
  }
  const cloth = there.reduce((best, ply) => (areaOf(ply.outline) > areaOf(best.outline) ? ply : best));
  if (inset && !Number.isFinite(inset.left + inset.bottom)) {
    return fail({ code: 'not-finite', message: 'The inset is not a number.', piece: stay.piece });
  }
  const transform = onPiece
    ? followedBy(cloth.face === 'right' ? identity : overturning({ ...interfacing, plies: [stay] }), onPiece)
    : followedBy(translation(shiftInto(cloth, stay, inset)), cloth.transform);
  const { work: both } = stackUp([work, movedWork(interfacing, transform)]);
  if (reachesBeyond(work, cloth, moved(stay.outline, transform))) {
    const message = `${stay.piece} reaches beyond ${cloth.piece}: it would be fused to the board.`;
    return fail({ code: 'shapes-differ', message, piece: stay.piece });
  }
  const fused: Ply = { ...both.plies.at(-1)!, fusedTo: cloth.id };
  const at = work.plies.indexOf(cloth) + (cloth.face === 'right' ? 0 : 1);
  const all = work.plies.toSpliced(at, 0, fused);
  // Between the two sides of a fold that it reaches beyond, it would lie through the cloth.
  for (const line of linesRound(all, at, at + 1)) {
    if (barred(all, line)) {
      const message = `${cloth.piece} is folded where ${stay.piece} is to go, so that it cannot lie flat there.`;
      return fail({ code: 'blocked', message, piece: stay.piece });
    }
  }
  return ok(noted({ ...both, plies: all }, { did: 'fuse' }));
}

/** Whether a ring reaches beyond the work that it is fused to. */
function reachesBeyond({ plies }: Work, cloth: Ply, ring: PlyOutline): boolean {
  // Most often it lies inside all edges of its own ply.
  const isInside = sides(cloth.outline).every(
    ({ from, to }) => distance(from, to) < SAME || offsets(ring, lineThrough(from, to)).every((off) => off > -SAME),
  );
  if (isInside) return false;
  const beyond = difference([ring], union(plies.map(({ outline }) => outline)));
  return beyond.reduce((sum, one) => sum + area(one), 0) > SAME * length(ring);
}

/** How a patch comes to lie with its lower left corner at a place of the work. */
function patchTransform(work: Work, patch: Ply, at: Point): Transform {
  const [on, box] = [boxOf(ownPlies(work)), boxOf([patch])];
  return translation({ x: on.x + at.x - box.x, y: on.y + at.y - box.y });
}

const middleOf = (outline: PlyOutline): Point => {
  const { x, y, width, height } = bounds(outline);
  return { x: x + width / 2, y: y + height / 2 };
};

/** Where interfacing lies on its piece, both seen as they were cut. */
function shiftInto(cloth: Ply, stay: Ply, inset: Fuse['inset']): { x: number; y: number } {
  const [on, box] = [bounds(moved(cloth.outline, inverse(cloth.transform))), bounds(stay.outline)];
  if (inset) return { x: on.x + inset.left - box.x, y: on.y + inset.bottom - box.y };
  return { x: on.x - box.x + (on.width - box.width) / 2, y: on.y - box.y + (on.height - box.height) / 2 };
}
