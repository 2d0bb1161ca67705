import { areaOf, covers, ON, split } from './ring.ts';
import { between, distance } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { findEdge, lineInside } from './edge.ts';
import { keptOn } from './kept.ts';
import { middleOfWork } from './place.ts';
import { nextNumber, noted, withoutRound } from './work.ts';
import { openedAt } from './openings.ts';
import {
  area,
  difference,
  leftOf,
  length,
  lineThrough,
  rectangle,
  sides,
  straightened,
  union,
} from '../geometry/index.ts';
import { CHORD } from './cut.ts';
import { within } from './carve.ts';
import type { EdgeReference, WorkEdge } from './edge.ts';
import type { ClothFault } from './fault.ts';
import type { Result } from '../measure/index.ts';
import type { Line, Outline, Point } from '../geometry/index.ts';
import type { Ply, PlyOutline, Run, Sewn, Stitch, Work } from './work.ts';

/** What to trim to: a size in the middle of the work or of its slanting seam, an outline, so much off an edge, what sticks up beyond an edge, or what lies left of a line. */
export type Trim =
  | { readonly size: { readonly width: number; readonly height: number } }
  | { readonly outline: Outline }
  | { readonly edge: EdgeReference; readonly by: number }
  | { readonly beyond: WorkEdge }
  | { readonly line: Line };

/**
 * Cuts through all layers and takes away what lies outside. Stitches end at the cut. New raw edges are called `cut`, or
 * keep the name of the edge that so much is cut off.
 *
 * Faults: those of finding the edge; `not-finite`; `misses` when nothing would be cut off; `no-plies` when nothing
 * would be left; `sewn-down` when it cuts away a row along the edge, or hardware.
 *
 * @example
 * size(trim(panel, { size: { width: 120, height: 80 } }).value) // => { width: 120, height: 80, depth: 0 }
 */
export function trim(work: Work, to: Trim): Sewn {
  if ('edge' in to) {
    const edge = findEdge(work, to.edge);
    if (!edge.ok) return edge;
    const line = lineInside(edge.value, to.by);
    const cut = cutLeft(work, line, edge.value.own, Number.isFinite(to.by) && to.by > 0);
    const row = cut.ok ? rowBeside(work, edge.value.line, line) : undefined;
    return row ? fail(row) : cut;
  }
  if ('beyond' in to) return cutLeft(work, to.beyond.line, to.beyond.own, true);
  if ('line' in to) return cutLeft(work, to.line, 'cut', Number.isFinite(to.line.at.x + to.line.at.y + to.line.angle));
  if ('outline' in to) return cutOutside(work, straightened(to.outline, CHORD));
  const { width, height } = to.size;
  const middle = middleToTrim(work, to.size);
  if (!middle.ok) return middle;
  const { x, y } = middle.value;
  const ruler = rectangle(width, height, { x: x - width / 2, y: y - height / 2 });
  const lacks = unfilled(work, ruler);
  return lacks ? fail(lacks) : cutOutside(work, ruler);
}

/** The scissors must not take away a row of stitches that runs along the edge; rows that run across end at the cut. */
function rowBeside({ stitches }: Work, edge: Line, cut: Line): ClothFault | undefined {
  const isAlong = ({ from, to }: Run) => Math.abs(leftOf(edge, from) - leftOf(edge, to)) < SAME;
  for (const { kind, runs } of stitches) {
    if (kind === 'baste' || kind === 'gather') continue;
    const lost = runs.find((run) => isAlong(run) && leftOf(cut, run.from) < ON && leftOf(edge, run.from) > -SAME);
    if (!lost) continue;
    const message = `That cuts away the row of ${kind} stitches along this edge.`;
    return { code: 'sewn-down', message, amount: -leftOf(cut, lost.from) };
  }
  return undefined;
}

/**
 * Where the ruler lies: in the middle of the work; on a unit with one slanting seam, such as two triangles, with its
 * diagonal on the seam and its middle on the middle of the seam, whatever sticks out beyond it.
 */
function middleToTrim(work: Work, { width, height }: { width: number; height: number }): Result<Point, ClothFault> {
  const slanting = work.stitches.flatMap(({ kind, runs }) =>
    kind === 'seam' ? wholeRows(runs).filter(isSlanting) : [],
  );
  const [first, ...others] = slanting;
  if (!first) return ok(middleOfWork(work));
  const middles = slanting.map(([from, to]) => between(from, to, 0.5));
  if (others.length === 0) {
    const [from, to] = first;
    const slope = Math.abs((to.y - from.y) / (to.x - from.x));
    const square = Math.abs(width - height) < SAME;
    if (!square || Math.abs(slope - 1) < 1e-3) return ok(middles[0]!);
    const message = 'The slanting seam is no diagonal of a square: the ruler cannot lie on it.';
    return fail({ code: 'shapes-differ', message });
  }
  const one = middles.every((middle) => distance(middle, middles[0]!) < 2.5);
  if (one) return ok(middles[0]!);
  const message = 'Several seams slant, so it is not clear where the ruler lies. Trim one side after another: at, by.';
  return fail({ code: 'ambiguous-edge', message });
}

/** Rows from end to end, runs that go straight on put together. */
function wholeRows(runs: readonly Run[]): [Point, Point][] {
  const rows: [Point, Point][] = [];
  for (const { from, to } of runs) {
    const last = rows.at(-1);
    if (last && distance(last[1], from) < SAME && Math.abs(leftOf(lineThrough(last[0], last[1]), to)) < SAME)
      last[1] = to;
    else rows.push([from, to]);
  }
  return rows;
}

/** Neither level nor upright, by more than a degree. */
const isSlanting = ([from, to]: [Point, Point]): boolean => {
  const angle = Math.abs((Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI) % 90;
  return distance(from, to) > SAME && angle > 1 && angle < 89;
};

/** What is trimmed to a size must fill it. */
function unfilled(work: Work, ruler: Outline): ClothFault | undefined {
  if (!(areaOf(ruler) > 0) || !ruler.every(({ from }) => Number.isFinite(from.x + from.y))) return undefined;
  const cloth = union(work.plies.map(({ outline }) => outline));
  const lacks = difference([ruler], cloth).reduce((sum, ring) => sum + area(ring), 0);
  if (lacks <= SAME * length(ruler)) return undefined;
  return { code: 'too-deep', message: 'The work does not fill the size that it is trimmed to.' };
}

function cutLeft(work: Work, line: Line, name: string, sound: boolean): Sewn {
  if (!sound) return fail({ code: 'not-finite', message: 'How much is trimmed is not a length.' });
  const cut = trimmed(work, (ply) => split(ply.outline, line, { name, bulge: 0 }).left);
  return cut.ok ? ok(openedAt(cut.value, [line], name)) : cut;
}

function cutOutside(work: Work, outline: Outline): Sewn {
  if (!(areaOf(outline) > 0) || !outline.every(({ from }) => Number.isFinite(from.x + from.y))) {
    return fail({ code: 'not-finite', message: 'The outline to trim to has no size.' });
  }
  const isConvex = convex(outline);
  const cut = trimmed(work, (ply) =>
    ply.outline.every(({ from }) => covers(outline, from)) && isConvex
      ? [ply.outline]
      : within(ply.outline, outline, 'cut'),
  );
  if (!cut.ok) return cut;
  if (isConvex) {
    const lines = sides(outline).map(({ from, to }) => lineThrough(from, to));
    return ok(openedAt(cut.value, lines, 'cut'));
  }
  // Where an outline with inner corners cuts into what was sewn round, what is open there is not known.
  const isWhole = ({ round }: Stitch) => round?.ring.every(({ from }) => covers(outline, from)) ?? true;
  const stitches = cut.value.stitches.map((one) => (isWhole(one) ? one : withoutRound(one)));
  return ok({ ...cut.value, stitches });
}

function convex(ring: Outline): boolean {
  return ring.every(({ from }, i) =>
    ring.every((other) => leftOf(lineThrough(from, ring[(i + 1) % ring.length]!.from), other.from) > -ON),
  );
}

/** The work as the scissors leave it. */
function trimmed(work: Work, keeps: (ply: Ply) => readonly PlyOutline[]): Sewn {
  let number = nextNumber(work);
  let cutAway = 0;
  const parts = new Map<number, Ply[]>();
  for (const ply of work.plies) {
    const rings = keeps(ply);
    if (rings.length === 1 && rings[0] === ply.outline) continue;
    cutAway += (areaOf(ply.outline) - rings.reduce((sum, ring) => sum + areaOf(ring), 0)) * ply.fullness;
    parts.set(
      ply.id,
      rings.map((outline, i) => ({ ...ply, outline, id: i === 0 ? ply.id : number++ })),
    );
  }
  const left = keptOn(work, parts);
  if (left.plies.length === 0) return fail({ code: 'no-plies', message: 'Nothing would be left of the work.' });
  const lost = work.marks.find(
    ({ kind, at }) => kind === 'hardware' && !left.marks.some((mark) => distance(mark.at, at) < ON),
  );
  if (lost) {
    return fail({
      code: 'sewn-down',
      message: `That cuts away the ${lost.name}.`,
      fix: 'Trim less, or set it after trimming.',
    });
  }
  if (!(cutAway > ON))
    return fail({ code: 'misses', message: 'The scissors miss the cloth: nothing would be cut off.' });
  return ok(noted(left, { did: 'trim', cutAway }));
}
