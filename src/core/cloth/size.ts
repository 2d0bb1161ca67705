import { between, direction, distance } from '../geometry/point.ts';
import { layersAt } from './layers.ts';
import { leftOf } from '../geometry/index.ts';
import { ON, stretches } from './ring.ts';
import { openEdges, openingsOf } from './openings.ts';
import { putsIn, wasLaidAs } from './work.ts';
import { SAME } from '../measure/index.ts';
import { withoutPiping } from './piping.ts';
import type { Box, Line, Point } from '../geometry/index.ts';
import type { LaidWork, Ply, Work } from './work.ts';

/** The size of a work lying flat, in mm; `depth` is what boxed corners give it. */
export type Size = { width: number; height: number; depth: number };

/** The upright box round plies. */
export function boxOf(plies: readonly Ply[]): Box {
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { outline } of plies) {
    for (const { from } of outline) {
      left = Math.min(left, from.x);
      right = Math.max(right, from.x);
      low = Math.min(low, from.y);
      high = Math.max(high, from.y);
    }
  }
  return left > right
    ? { x: 0, y: 0, width: 0, height: 0 }
    : { x: left, y: low, width: right - left, height: high - low };
}

/**
 * How large the work is now. A boxed corner gives twice its square as depth, and the work then stands on the corner of
 * its seams: it is measured from there, not from allowances that stand out beside it until it is turned. Handles,
 * loops and tabs that stand out beyond an opening do not count: a bag is as high as its edge. Nor does
 * piping: what is piped is measured from seam to seam.
 *
 * @example
 * size(cut({ piece: 'flap', material: 'linen', outline: rectangle(80, 60) }).value) // => { width: 80, height: 60, depth: 0 }
 */
export function size(work: Work): Size {
  const box = boxOf(withoutHandles(work));
  let [left, right, low, high, depth] = [box.x, box.x + box.width, box.y, box.y + box.height, 0];
  for (const { kind, square = 0, at, corner, plies } of work.marks) {
    if (kind !== 'box' || !corner || !isOutermost(work, plies, between(at, corner, 0.5))) continue;
    if (corner.x < at.x) left = Math.max(left, at.x);
    else right = Math.min(right, at.x);
    if (corner.y < at.y) low = Math.max(low, at.y);
    else high = Math.min(high, at.y);
    depth = Math.max(depth, 2 * square);
  }
  return { width: right - left, height: high - low, depth };
}

/** Whether plies are the lowest and the highest of what lies at a place: of one work in another, those of the outer one. */
function isOutermost(work: Work, plies: readonly number[], at: Point): boolean {
  const there = layersAt(work, at);
  return there.length === 0 || [there[0]!, there.at(-1)!].some(({ id }) => plies.includes(id));
}

/** A handle, loop or tab stands out over no more than this share of an opening; what is wider is cloth. Common practice, no source. */
const NARROW = 0.5;

/** The plies of a work; a handle that was laid on it is taken only as far as the opening that it stands out of. */
function withoutHandles(work: Work): readonly Ply[] {
  const openings = openEdges(openingsOf(work));
  const { plies: all } = withoutPiping(work);
  if (openings.length === 0) return all;
  const put = putsIn(work);
  const beyond = new Map<Ply, Line[]>();
  const isPut = (one: Named) => put.some((other) => isSame(one, other));
  const named = work.plies.flatMap(({ laid = [] }) => laid.filter((one) => !isPut(one)));
  for (const one of named.filter((one, i) => named.findIndex((other) => isSame(one, other)) === i)) {
    const plies = work.plies.filter((ply) => wasLaidAs(ply, one));
    for (const { line, from, to } of openings) {
      const over = coveredBy(plies, from, to);
      if (over <= ON || over > NARROW * distance(from, to) + SAME) continue;
      for (const ply of plies) beyond.set(ply, [...(beyond.get(ply) ?? []), line]);
    }
  }
  return all.map((ply) => {
    const lines = beyond.get(ply);
    if (!lines) return ply;
    return { ...ply, outline: ply.outline.map((edge) => ({ ...edge, from: lines.reduce(noFarther, edge.from) })) };
  });
}

type Named = Pick<LaidWork, 'work' | 'nth'>;
const isSame = (a: Named, b: Named): boolean => a.work === b.work && a.nth === b.nth;

/** How much of a stretch plies lie over, in mm. */
function coveredBy(plies: readonly Ply[], from: Point, to: Point): number {
  const parts = plies.flatMap(({ outline }) => stretches(outline, from, to)).toSorted(([a], [b]) => a - b);
  let [covered, reached] = [0, 0];
  for (const [begins, ends] of parts) {
    const end = Math.min(ends, distance(from, to));
    covered += Math.max(0, end - Math.max(begins, reached));
    reached = Math.max(reached, end);
  }
  return covered;
}

/** A point, or the place on a line that it lies beyond; the cloth lies on the left of the line. */
function noFarther(p: Point, line: Line): Point {
  const off = leftOf(line, p);
  if (off >= 0) return p;
  const way = direction(line.angle);
  return { x: p.x + way.y * off, y: p.y - way.x * off };
}
