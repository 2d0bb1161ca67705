import { boxOf } from './size.ts';
import { ON, stretches } from './ring.ts';
import { direction, distance, plus, times, unit, minus } from '../geometry/point.ts';
import { fail, ok } from '../measure/index.ts';
import { findEdge, lineInside } from './edge.ts';
import { nextNumber, noted } from './work.ts';
import type { EdgeReference } from './edge.ts';
import type { ClothFault } from './fault.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { Ply, Run, Sewn, Stitch, StitchKind, Work } from './work.ts';

/**
 * The usual stitch type for each kind of row, after ISO 4915. 301 is the lockstitch, 304 the zigzag lockstitch, class
 * 500 overedge, class 200 hand stitches (Coats stitch type guide; that 504 is the usual three-thread overedge and that
 * home gathering and basting are lockstitch rows is common practice, no source).
 */
export const stitchClass: Record<StitchKind, string> = {
  seam: '301',
  topstitch: '301',
  edgestitch: '301',
  hem: '301',
  baste: '301',
  gather: '301',
  zigzag: '304',
  overlock: '504',
  slipstitch: '200',
};

/** The plies that a straight row of stitches goes through, from place to place. Stretches without cloth are left out. */
export function runsAlong(plies: readonly Ply[], from: Point, to: Point): Run[] {
  const length = distance(from, to);
  if (length <= ON) return [];
  const way = unit(minus(to, from));
  const at = (t: number) => plus(from, times(way, t));
  const covered: { id: number; on: readonly [number, number] }[] = [];
  const stops = [0, length];
  for (const { id, outline } of plies) {
    for (const on of stretches(outline, from, to)) {
      const [start, end] = on;
      if (end <= 0 || start >= length) continue;
      covered.push({ id, on });
      // Most plies begin and end where others do.
      if (start >= 0 && !stops.includes(start)) stops.push(start);
      if (end <= length && !stops.includes(end)) stops.push(end);
    }
  }
  if (covered.length === 0) return [];
  stops.sort((a, b) => a - b);
  const runs: Run[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    const start = stops[i]!;
    const end = stops[i + 1]!;
    if (end - start <= ON) continue;
    const middle = (start + end) / 2;
    const through = covered.filter(({ on }) => on[0] < middle && middle < on[1]).map(({ id }) => id);
    if (through.length === 0) continue;
    const last = runs.at(-1);
    if (last && sameList(last.plies, through) && distance(last.to, at(start)) <= 2 * ON) {
      runs[runs.length - 1] = { ...last, to: at(end) };
    } else {
      runs.push({ from: at(start), to: at(end), plies: through });
    }
  }
  return runs;
}

/** Whether two lists of plies are the same. */
export const sameList = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

/** The part of an endless line that the box round the work can hold, as two points. */
export function acrossWork(work: Work, line: Line): [Point, Point] {
  const box = boxOf(work.plies);
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const reach = Math.hypot(box.width, box.height) + 1;
  const way = direction(line.angle);
  const along = way.x * (middle.x - line.at.x) + way.y * (middle.y - line.at.y);
  return [plus(line.at, times(way, along - reach)), plus(line.at, times(way, along + reach))];
}

/** Sews rows along a way of points. The new stitching has the next free number. */
export function sewn(work: Work, kind: StitchKind, way: readonly Point[], more: Partial<Stitch> = {}): Work {
  const runs = way.slice(1).flatMap((to, i) => runsAlong(work.plies, way[i]!, to));
  const stitch: Stitch = { id: nextNumber(work), kind, class: stitchClass[kind], runs, ...more };
  return { ...work, stitches: [...work.stitches, stitch] };
}

/** Where a row of stitches goes: beside an edge, all along a line, or along a way of points. */
export type RowPlace =
  | { readonly edge: EdgeReference; readonly inside: number }
  | { readonly line: Line }
  | { readonly way: readonly Point[] };

/** Sews one row of stitches through everything that lies there. */
function row(work: Work, kind: StitchKind, where: RowPlace, did: string): Sewn {
  const way = wayOf(work, where);
  if (!way.ok) return way;
  if (way.value.some(({ x, y }) => !Number.isFinite(x + y))) {
    return fail({ code: 'not-finite', message: 'The row of stitches has a number that is none.' });
  }
  const after = sewn(work, kind, way.value);
  const stitch = after.stitches.at(-1)!;
  if (stitch.runs.length === 0)
    return fail({ code: 'misses', message: `The row of ${kind} stitches misses the cloth.` });
  return ok(noted(after, { did, stitches: [stitch.id] }));
}

function wayOf(work: Work, where: RowPlace): Result<readonly Point[], ClothFault> {
  if ('way' in where) return ok(where.way);
  if ('line' in where) return ok(acrossWork(work, where.line));
  const edge = findEdge(work, where.edge);
  if (!edge.ok) return edge;
  // The row runs on to the end of the cloth at that depth, which slanting sides make longer or shorter than the edge.
  return ok(acrossWork(work, lineInside(edge.value, where.inside)));
}

/**
 * Sews a row that is seen: beside an edge, all along a line, or along a way of points.
 *
 * Faults: those of finding the edge; `misses`; `not-finite`.
 *
 * @example
 * topstitch(work, { edge: 'top', inside: 6 }) // => a row 6 mm below the top edge
 */
export const topstitch = (work: Work, where: RowPlace): Sewn => row(work, 'topstitch', where, 'topstitch');

/**
 * Sews close beside an edge: 1/8 in (3.2 mm) where topstitching is 1/4 in (Makers Row, Garment specifics).
 *
 * @example
 * edgestitch(work, 'top') // => a row 3.175 mm below the top edge
 */
export const edgestitch = (work: Work, edge: EdgeReference, inside = 25.4 / 8): Sewn =>
  row(work, 'edgestitch', { edge, inside }, 'edgestitch');

/** Sews a row that holds for now. */
export const baste = (work: Work, where: RowPlace): Sewn => row(work, 'baste', where, 'baste');
