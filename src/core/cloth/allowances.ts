import { ON } from './ring.ts';
import { difference, sides } from '../geometry/index.ts';
import { cross, distance, minus, plus, times, unit } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { noted } from './work.ts';
import { roundCorners } from './round-corners.ts';
import { wallsOf } from './walls.ts';
import { without } from './without.ts';
import type { Point } from '../geometry/index.ts';
import type { ClothFault } from './fault.ts';
import type { Ply, PlyEdge, PlyOutline, SewnRound, Sewn, StepRecord, Stitch, Work } from './work.ts';

/**
 * Trims the raw edges of a seam: all its layers to one width, or each to its own (graded). What lies at a gap and
 * beside it keeps its whole width, so that it turns in cleanly.
 *
 * @param to widths left outside the stitches in mm, from the lowest layer up; the last goes on for further layers
 * @param seam the number of its stitching; the last seam if left out
 *
 * Faults: `not-finite`; `not-sewn-round` when there is no such seam; `held` when they are enclosed or lie inside; `misses` when nothing is wider.
 *
 * @example
 * grade(sewn, [3, 6]) // => 3 mm left of the lowest layer's allowance, 6 mm of those above
 */
export function grade(work: Work, to: number | readonly number[], seam?: number): Sewn {
  const widths = typeof to === 'number' ? [to] : to;
  if (widths.length === 0 || widths.some((width) => !Number.isFinite(width) || width < 0)) {
    return fail({ code: 'not-finite', message: 'The widths to trim to are not lengths.' });
  }
  const stitch = seamOf(work, seam);
  if (!stitch) return fail({ code: 'not-sewn-round', message: 'There is no seam to trim yet.' });
  const out = outOfReach(work, stitch);
  if (out) return fail(out);
  const layers = work.plies.filter(({ outline }) => outline.some((edge) => edge.held === stitch.id));
  return cutOff(work, 'grade', (ply) => {
    const layer = layers.indexOf(ply);
    return layer < 0 ? [] : stripsOf(ply, stitch, widths[Math.min(layer, widths.length - 1)]!);
  });
}

const seamOf = (work: Work, seam: number | undefined): Stitch | undefined =>
  work.stitches.findLast(({ id, kind }) => (seam === undefined ? kind === 'seam' : id === seam));

/** Steps that enclose the allowances of their own seam. */
const ENCLOSED = ['bind', 'French seam', 'flat-felled seam'];
/** Steps after which the allowances of a pair sewn round lie inside it. */
const INSIDE = ['turn', 'hem', 'bind'];

/** Why no scissors come to the allowances of a seam. */
function outOfReach(work: Work, { id, round }: Stitch): ClothFault | undefined {
  const { done } = work;
  const sewn = done.findIndex(({ stitches }) => stitches?.includes(id) ?? false);
  const later = done.slice(sewn + 1).find((one) => INSIDE.includes(one.did) && !(round && isAtOpening(work, id, one)));
  if (ENCLOSED.includes(done[sewn]?.did ?? ''))
    return {
      code: 'held',
      message: 'The allowances of the last seam are enclosed: there is nothing left to trim.',
      fix: 'Leave this step out.',
    };
  if (!round || !later) return undefined;
  const message = 'The allowances lie inside the work now.';
  return { code: 'held', message, fix: 'Trim them before it is turned or hemmed.' };
}

/** Whether a step sewed through one wall at a time, as is done round an opening: the allowances beside it stay outside. */
function isAtOpening(work: Work, row: number, { did, stitches = [] }: StepRecord): boolean {
  if (did === 'turn') return false;
  const { lower, upper } = wallsOf(work, row);
  const isOf = (wall: readonly Ply[], ids: readonly number[]) => wall.some(({ id }) => ids.includes(id));
  const rows = work.stitches.filter(({ id }) => stitches.includes(id));
  return rows.every(({ runs }) => runs.every(({ plies }) => isOf(lower, plies) !== isOf(upper, plies)));
}

/** What is cut off the raw edges of a ply that a seam holds, one strip for each edge. */
function stripsOf({ outline }: Ply, stitch: Stitch, width: number): PlyOutline[] {
  return sides(outline).flatMap((side, i) => {
    const edge = outline[i]!;
    if (edge.held !== stitch.id || edge.fold !== undefined) return [];
    const way = unit(minus(side.to, side.from));
    const inward = { x: -way.y, y: way.x };
    const row = nearestRow(side.from, side.to, stitch) ?? 0;
    const deep = row - width;
    if (deep <= ON) return [];
    // Beside a gap the allowance stays whole for as far again as it is wide: the cloth turns in there.
    const isGap = (k: number) => {
      const other = outline[(k + outline.length) % outline.length]!;
      return other.name === edge.name && other.held === undefined && other.fold === undefined;
    };
    const start = plus(side.from, times(way, isGap(i - 1) ? row : 0));
    const end = minus(side.to, times(way, isGap(i + 1) ? row : 0));
    if ((end.x - start.x) * way.x + (end.y - start.y) * way.y <= ON) return [];
    const shift = times(inward, deep);
    const fresh: PlyEdge = { name: 'cut', from: end, bulge: 0, held: stitch.id };
    return [
      [{ ...edge, from: start }, fresh, { ...edge, from: plus(end, shift) }, { ...fresh, from: plus(start, shift) }],
    ];
  });
}

/**
 * How far inside an edge the nearest row of a stitching runs along it, in mm; undefined where none does. Beside the end of
 * a curve the next row along it is that of the other side of the work, and none of its own.
 */
function nearestRow(from: Point, to: Point, { runs, round }: Stitch): number | undefined {
  const most = round ? Math.max(...round.allowances) + SAME : Infinity;
  const way = unit(minus(to, from));
  const length = distance(from, to);
  let least: number | undefined;
  for (const run of runs) {
    const off = [run.from, run.to].map((p) => cross(way, minus(p, from)));
    if (Math.abs(off[0]! - off[1]!) > 0.01 || off[0]! < 0 || off[0]! > most) continue;
    const along = [run.from, run.to].map((p) => way.x * (p.x - from.x) + way.y * (p.y - from.y));
    if (Math.max(...along) < ON || Math.min(...along) > length - ON) continue;
    least = Math.min(least ?? Infinity, off[0]!);
  }
  return least;
}

/**
 * Cuts the allowances of a pair sewn round across at its outer corners, and notches them on curves that go outward, so
 * that they lie flat when it is turned. Turning itself clips them where the stitches go inward.
 *
 * @param leaving how far outside the stitches the cuts end, in mm: about 1/8 in (sewingsupport.com, How to trim and clip
 * seam allowances)
 *
 * Faults: `not-finite`; `not-sewn-round`; `held` when they lie inside; `misses` when no corner is wide enough.
 *
 * @example
 * clipCorners(sewRound(front, lining, { allowance: 6 }).value)
 */
export function clipCorners(work: Work, leaving = 3): Sewn {
  if (!Number.isFinite(leaving) || leaving < 0) {
    return fail({ code: 'not-finite', message: 'What is left at the corners is not a length.' });
  }
  const stitch = work.stitches.findLast(({ round }) => round !== undefined);
  if (!stitch?.round) return fail({ code: 'not-sewn-round', message: 'Nothing is sewn round yet.' });
  const out = outOfReach(work, stitch);
  if (out) return fail(out);
  const corners = cornersOf(stitch.round, leaving, stitch.id);
  return cutOff(work, 'clip corners', (ply) => (stitch.round!.caught.includes(ply.id) ? [] : corners));
}

/** What is cut off at each outer corner between two sewn edges, and notched out of curves. */
function cornersOf(round: SewnRound, leaving: number, held: number): PlyOutline[] {
  const corners = roundCorners(round);
  // Beyond a corner of a shape with inner corners its body may go on.
  const isHollow = corners.some(({ turn }) => turn < 0);
  return corners.flatMap((corner) => {
    const { at, a, b, widths, turn, isCurve } = corner;
    if (widths.includes(0) || cross(a, b) < 1e-6) return [];
    // Square to the bisector of the corner, out to the right of both edges.
    const along = unit(plus(a, b));
    const out = { x: along.y, y: -along.x };
    // As far as the raw corner reaches, and the allowances of another place not at all.
    const reach = Math.cos((turn * Math.PI) / 360);
    const far = Math.max(...widths) * Math.min(4, 1.5 / Math.max(reach, 0.1)) + ON;
    const point = (u: number, v: number): Point => plus(at, plus(times(along, u), times(out, v)));
    const edge = (from: Point): PlyEdge => ({ name: 'clip', from, bulge: 0, held });
    // A notch as wide as the curve turns here: turned in, the allowances beside it meet along the bisector.
    const spread = isCurve ? Math.tan((turn * Math.PI) / 180) : undefined;
    const near = spread === undefined ? far : spread * leaving;
    const wide = spread === undefined ? far : spread * (leaving + far);
    const scrap = [
      point(-near, leaving),
      point(-wide, leaving + far),
      point(wide, leaving + far),
      point(near, leaving),
    ];
    return isHollow
      ? difference([scrap.map(edge)], [round.ring]).map((ring) => ring.map(({ from }) => edge(from)))
      : [scrap.map(edge)];
  });
}

function cutOff(work: Work, did: string, scraps: (ply: Ply) => readonly PlyOutline[]): Sewn {
  const cut = without(work, scraps);
  if (!cut.ok) return cut;
  const { work: left, cutAway } = cut.value;
  if (cutAway === 0) return fail({ code: 'misses', message: 'Nothing would be cut off: no allowance is wider.' });
  return ok(noted(left, { did, cutAway }));
}
