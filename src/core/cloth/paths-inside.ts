import { direction, distance, dot, minus, plus, times } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { chainInside, partOf } from './curve.ts';
import { isCornerName } from '../geometry/index.ts';
import { lineInside } from './edge.ts';
import { linesMeet } from '../geometry/arc.ts';
import { runsAlong } from './stitch.ts';
import { stretches } from './ring.ts';
import type { ClothFault } from './fault.ts';
import type { CurveInside } from './curve.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Ply, Work } from './work.ts';
import type { Result } from '../measure/index.ts';
import type { WorkEdge } from './edge.ts';

/** Cloth that goes on within this, in mm, goes on: a row of stitches does not stop for less. */
const STITCH = 2.5;
/** An outline that turns by less than this, in radians, runs on smoothly, as a side does into a rounded corner. */
const SMOOTH = Math.PI / 6;

/** What a row runs along: a straight edge, or a curve with its way inside it. */
export type RowSide = WorkEdge | CurveInside;

/**
 * The ways of rows that run so many mm inside the sides of a work. Rows along sides that follow one another turn at the
 * corner between them, sharp, rounded or cut off. A row that turns at no corner ends with what the side belongs to: where
 * its plies end beside it, at that depth, or where the outline runs on smoothly into another edge.
 *
 * Faults: `too-deep` where rows that turn at corners would pass one another, and nothing is left of the row between them.
 *
 * @example
 * pathsInside(work, edgesOn(work, ['left', 'bottom']).value, 3).value // => one way with a corner in it
 */
export function pathsInside(work: Work, sides: readonly RowSide[], by: number): Result<Point[][], ClothFault> {
  const ways = sides.map((side) => ('way' in side ? [...side.way] : stretchBeside(work, side, by)));
  const next = sides.map((side, i) => sides.findIndex((other, k) => k !== i && follows(work, side, other)));
  for (const [i, k] of next.entries()) {
    if (k >= 0) [ways[i], ways[k]] = turned(work, [sides[i]!, ways[i]!], [sides[k]!, ways[k]!], by);
  }
  const none = sides.find(
    (side, i): side is WorkEdge => (next[i]! >= 0 || next.includes(i)) && isUsedUp(side, ways[i]!),
  );
  if (none) {
    const message = `So far inside, …, the rows at the ends of the ${none.name} meet or pass one another: none is left along it.`;
    return fail({
      code: 'too-deep',
      message,
      lengths: [by],
      fix: 'Write a smaller “by”, so that the rows turn sooner.',
    });
  }
  const found: Point[][] = [];
  const left = new Set(sides.keys());
  // A way begins at a side that follows none; a ring begins anywhere.
  const starts = [...sides.keys()].sort((a, b) => Number(next.includes(a)) - Number(next.includes(b)));
  for (const first of starts) {
    const way: Point[] = [];
    const plies: Ply[] = [];
    for (let i = first; left.delete(i); i = next[i]!) {
      way.push(...ways[i]!.slice(way.length === 0 ? 0 : 1));
      plies.push(...pliesOf(work, sides[i]!));
    }
    if (way.length > 0) found.push(onCloth(plies, way));
  }
  return ok(found);
}

/** Whether nothing is left of the row along a straight side: those at its ends meet, or have passed one another. */
const isUsedUp = (side: RowSide, way: readonly Point[]): boolean =>
  !('way' in side) && dot(direction(side.line.angle), minus(way.at(-1)!, way[0]!)) < SAME;

/** The plies of what a side belongs to. Those of the side are told by number, and are often all there are. */
function pliesOf({ plies }: Work, side: RowSide): readonly Ply[] {
  if (!side.plies || side.plies.length === plies.length) return plies;
  const own = new Set(side.plies);
  return plies.filter(({ id }) => own.has(id));
}

/** A way from where it comes onto the cloth to where it leaves it. */
function onCloth(plies: readonly Ply[], way: Point[]): Point[] {
  let gone = 0;
  const on: number[] = [];
  for (const [i, to] of way.slice(1).entries()) {
    const from = way[i]!;
    for (const run of runsAlong(plies, from, to))
      on.push(gone + distance(from, run.from), gone + distance(from, run.to));
    gone += distance(from, to);
  }
  if (on.length === 0 || (on[0]! < SAME && gone - on.at(-1)! < SAME)) return way;
  return partOf(way, on[0]!, gone - on.at(-1)!) ?? way;
}

/** From where to where the plies of an edge lie on the line beside it, as far as they hang together there. */
function stretchBeside(work: Work, edge: WorkEdge, by: number): Point[] {
  const line = lineInside(edge, by);
  const way = direction(line.angle);
  const along = (p: Point) => way.x * (p.x - line.at.x) + way.y * (p.y - line.at.y);
  const further = plus(line.at, way);
  const plies = pliesOf(work, edge);
  const on = plies.flatMap(({ outline }) => stretches(outline, line.at, further));
  const [first, last] = [along(edge.from), along(edge.to)];
  let [from, to] = [first, last];
  const beside = on.filter(([a, b]) => b > from && a < to);
  if (beside.length === 0) return [at(line, from), at(line, to)];
  [from, to] = [Math.min(...beside.map(([a]) => a)), Math.max(...beside.map(([, b]) => b))];
  for (let grown = true; grown;) {
    grown = false;
    for (const [a, b] of on) {
      if (a > to + STITCH || b < from - STITCH || (a >= from && b <= to)) continue;
      [from, to] = [Math.min(from, a), Math.max(to, b)];
      grown = true;
    }
  }
  if (runsOn(plies, edge.from, edge.line, -1)) from = Math.max(from, first);
  if (runsOn(plies, edge.to, edge.line, 1)) to = Math.min(to, last);
  return [at(line, from), at(line, to)];
}

const at = (line: Line, t: number): Point => plus(line.at, times(direction(line.angle), t));

/** Whether the outline runs on smoothly from an end of a straight edge: what lies there is another edge, or a corner. */
function runsOn(plies: readonly Ply[], end: Point, { angle }: Line, way: 1 | -1): boolean {
  const on = times(direction(angle), way);
  return plies.some(({ outline }) =>
    outline.some(({ from }, i) => {
      if (distance(from, end) > SAME) return false;
      const to = minus(outline[(i + way + outline.length) % outline.length]!.from, from);
      const turn = Math.abs(Math.atan2(on.x * to.y - on.y * to.x, on.x * to.x + on.y * to.y));
      return turn > 1e-3 && turn < SMOOTH;
    }),
  );
}

/** Whether one side follows another, the cloth on the left: they meet, or a shaped corner leads from one to the other. */
function follows(work: Work, a: RowSide, b: RowSide): boolean {
  if (distance(a.to, b.from) >= STITCH) return cornerBetween(work, a, b) !== undefined;
  if ('way' in a || 'way' in b) return true;
  const [p, q] = [direction(a.line.angle), direction(b.line.angle)];
  return p.x * q.y - p.y * q.x > 0.1;
}

/** The outline between two sides that a shaped corner parts; undefined where it does not go on from one to the other so. */
function cornerBetween(work: Work, a: RowSide, b: RowSide): Point[] | undefined {
  for (const { outline } of pliesOf(work, a)) {
    const n = outline.length;
    const start = outline.findIndex(({ from }) => distance(from, a.to) < 2 * SAME);
    const end = outline.findIndex(({ from }) => distance(from, b.from) < 2 * SAME);
    if (start < 0 || end < 0) continue;
    const corner = [outline[start]!.from];
    let i = start;
    for (; i !== end && isCornerName(outline[i]!.name); i = (i + 1) % n) corner.push(outline[(i + 1) % n]!.from);
    if (i === end) return corner;
  }
  return undefined;
}

type Placed = readonly [side: RowSide, way: Point[]];

/** The ways along two sides that follow one another: the first up to the second, and the second from there. */
function turned(work: Work, [a, first]: Placed, [b, second]: Placed, by: number): [Point[], Point[]] {
  const corner = distance(a.to, b.from) < STITCH ? undefined : cornerBetween(work, a, b);
  // Along the corner, where it is not so tight that both rows meet before it.
  const round = corner && chainInside([...pointsOf(a).slice(-2, -1), ...corner, pointsOf(b)[1]!], by);
  if (round) {
    const way = round.slice(1, -1);
    return [
      [...first.slice(0, -1), ...way],
      [way.at(-1)!, ...second.slice(1)],
    ];
  }
  // From the corner outward, where both ways cross; else where they meet, drawn out.
  for (let i = first.length - 1; i > 0; i--) {
    for (let k = 1; k < second.length; k++) {
      const cross = crossing(first[i - 1]!, first[i]!, second[k - 1]!, second[k]!);
      if (cross)
        return [
          [...first.slice(0, i), cross],
          [cross, ...second.slice(k)],
        ];
    }
  }
  const [p, q] = [first.at(-1)!, second[0]!];
  const meet = distance(p, q) < SAME ? undefined : linesMeet(p, minus(p, first.at(-2)!), q, minus(second[1]!, q));
  const tip = meet ?? q;
  return [
    [...first.slice(0, -1), tip],
    [tip, ...second.slice(1)],
  ];
}

const pointsOf = (side: RowSide): readonly Point[] => ('way' in side ? side.points : [side.from, side.to]);

/** Where two straight stretches cross; undefined where they do not. */
function crossing(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const [p, q, r] = [minus(b, a), minus(d, c), minus(c, a)];
  const cross = p.x * q.y - p.y * q.x;
  const [t, u] = [(r.x * q.y - r.y * q.x) / cross, (r.x * p.y - r.y * p.x) / cross];
  const isWithin = t >= 0 && t <= 1 && u >= 0 && u <= 1;
  return isWithin ? plus(a, times(p, t)) : undefined;
}
