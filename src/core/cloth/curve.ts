/** Edges that are no straight line, and rows beside them. */
import { distance, minus, plus, times, unit } from '../geometry/point.ts';
import { fail, ok, plainName, quote, SAME } from '../measure/index.ts';
import { freeEdgesNamed } from './edge.ts';
import { hasEdge, laidNamed } from './sides.ts';
import { removeAllowance, sides } from '../geometry/index.ts';
import { linesMeet } from '../geometry/arc.ts';
import { ownPlies } from './place.ts';
import { outlineOf } from './silhouette.ts';
import type { ClothFault } from './fault.ts';
import type { Ply, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';

/** A curved edge of a work, walked with the cloth on its left, and the way of a row so many mm inside it. */
export type CurveInside = {
  readonly points: readonly Point[];
  readonly from: Point;
  readonly to: Point;
  readonly way: readonly Point[];
  /** The plies of what the edge belongs to: a row along it ends where they end. */
  readonly plies: readonly number[];
};

/**
 * The way of a row that follows a curved edge so many mm inside it: the longest chain of free edges of that name, of the
 * whole or of a work that was laid on it.
 *
 * Faults: `unknown-edge`; `ambiguous-edge` where several alike were laid on it; `too-deep` where the curve is too tight to
 * be followed so far in.
 *
 * @example
 * curveInside(pocket, 'pocket curve', 3) // => chords 3 mm inside the arc
 */
export function curveInside(work: Work, asked: string, by: number): Result<CurveInside, ClothFault> {
  const laid = laidNamed(work, asked, (rest, { plies }) => hasEdge(plies, rest));
  if (laid && !laid.ok) return laid;
  const found = laid
    ? freeEdgesNamed({ ...work, plies: laid.value.group.plies }, laid.value.rest)
    : freeEdgesNamed(work, asked);
  const chains = [...new Set(found.map(({ ply }) => ply))].flatMap((ply) =>
    chainsIn(
      ply,
      found.flatMap((one) => (one.ply === ply ? [ply.outline.indexOf(one.edge)] : [])),
    ).map((points) => ({ ply, points })),
  );
  const [first] = chains;
  if (!first) {
    return fail({ code: 'unknown-edge', message: `There is no free edge ${quote(asked)}.`, edge: asked });
  }
  const { ply, points } = chains.reduce(
    (best, one) => (lengthOf(one.points) > lengthOf(best.points) ? one : best),
    first,
  );
  const way = chainInside(points, by);
  if (!way) {
    const message = `The ${asked} bends so tightly that no row follows it so far inside.`;
    return fail({ code: 'too-deep', message, edge: asked, field: 'by' });
  }
  const own = laid ? laid.value.group.plies : work.plies.filter(({ piece }) => piece === ply.piece);
  return ok({ points, from: points[0]!, to: points.at(-1)!, way, plies: own.map(({ id }) => id) });
}

/** Edges of a ply that follow one another, as ways of points. */
export function chainsIn({ outline }: Ply, edges: readonly number[]): Point[][] {
  const n = outline.length;
  const wanted = new Set(edges);
  const starts = edges.filter((i) => !wanted.has((i + n - 1) % n));
  return (starts.length > 0 ? starts : edges.slice(0, 1)).map((start) => {
    const points = [outline[start]!.from];
    for (let i = start, k = 0; wanted.has(i) && k < n; i = (i + 1) % n, k++) points.push(outline[(i + 1) % n]!.from);
    return points;
  });
}

export const lengthOf = (way: readonly Point[]): number =>
  way.slice(1).reduce((sum, p, i) => sum + distance(way[i]!, p), 0);

/** A way so many mm to the left of another; undefined where that would turn back on itself. */
export function chainInside(way: readonly Point[], by: number): Point[] | undefined {
  const points = way.filter((p, i) => i === 0 || distance(p, way[i - 1]!) > 1e-6);
  const lines = points.slice(1).map((to, i) => {
    const from = points[i]!;
    const on = unit(minus(to, from));
    return { from: plus(from, { x: -on.y * by, y: on.x * by }), on, to: plus(to, { x: -on.y * by, y: on.x * by }) };
  });
  const [first, last] = [lines[0], lines.at(-1)];
  if (!first || !last) return undefined;
  const inside = [first.from];
  for (const [i, line] of lines.slice(1).entries()) {
    const before = lines[i]!;
    const straight = Math.abs(before.on.x * line.on.y - before.on.y * line.on.x) < 1e-9;
    inside.push(straight ? line.from : (linesMeet(before.from, before.on, line.from, line.on) ?? line.from));
  }
  inside.push(last.to);
  const turnsBack = inside.slice(1).some((p, i) => {
    const along = minus(p, inside[i]!);
    const { on } = lines[i]!;
    return along.x * on.x + along.y * on.y < -SAME;
  });
  return turnsBack ? undefined : inside;
}

/**
 * The way of a row all round what a work, or one that was laid on it, ends with, so many mm inside: `outline`, `pocket
 * outline`. Undefined for another name.
 *
 * Faults: those of the outline; `ambiguous-edge` where several alike were laid on it; `too-deep`.
 */
export function pathRound(work: Work, asked: string, by: number): Result<Point[], ClothFault> | undefined {
  const name = plainName(asked);
  if (name !== 'outline' && !name.endsWith(' outline')) return undefined;
  const whose = name.slice(0, -' outline'.length);
  const laid = laidNamed(work, asked, (rest) => rest === 'outline');
  if (laid && !laid.ok) return laid;
  const own = work.plies.filter(({ piece }) => plainName(piece) === whose);
  // What was laid on the work and stands out beyond its sides is no part of its outline.
  const bare = ownPlies(work).filter(({ fusedTo }) => fusedTo === undefined);
  const plies = name === 'outline' ? bare : (laid?.value.group.plies ?? own);
  if (plies.length === 0) {
    const message = `Nothing called ${quote(whose)} lies here.`;
    const fix = 'Name what was laid on it, as in “pocket outline”, or write “outline” for the whole.';
    return fail({ code: 'unknown-edge', message, edge: asked, fix });
  }
  const outline = outlineOf(plies);
  if (!outline.ok) return outline;
  const ring = removeAllowance(outline.value, by);
  if (!ring.ok) {
    const message = 'So far inside its outline nothing is left to sew round.';
    return fail({ code: 'too-deep', message, edge: asked, field: 'by' });
  }
  const points = sides(ring.value).map(({ from }) => from);
  return ok([...points, points[0]!]);
}

/** Part of a way, from so far behind its start to so far before its end; undefined where nothing is left. */
export function partOf(way: readonly Point[], begins: number, ends: number): Point[] | undefined {
  const stop = lengthOf(way) - ends;
  if (!(stop - begins > SAME)) return undefined;
  const part: Point[] = [];
  let gone = 0;
  for (const [i, to] of way.slice(1).entries()) {
    const from = way[i]!;
    const long = distance(from, to);
    const at = (t: number) => plus(from, times(minus(to, from), long === 0 ? 0 : t / long));
    if (gone + long > begins && gone < stop) {
      if (part.length === 0) part.push(at(Math.max(0, begins - gone)));
      part.push(at(Math.min(long, stop - gone)));
    }
    gone += long;
  }
  return part;
}

/** Whether a way runs from its right or upper end: level where it goes further across than up. */
export function runsBack(way: readonly Point[]): boolean {
  const [a, b] = [way[0]!, way.at(-1)!];
  return Math.abs(b.x - a.x) >= Math.abs(b.y - a.y) - SAME ? b.x < a.x : b.y < a.y;
}
