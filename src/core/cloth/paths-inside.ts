import { direction, distance, plus, times } from '../geometry/point.ts';
import { lineInside } from './edge.ts';
import { linesMeet } from '../geometry/arc.ts';
import { stretches } from './ring.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Work } from './work.ts';
import type { WorkEdge } from './edge.ts';

/** Edges that end nearer to one another than this, in mm, have a corner between them, however it is rounded. */
const CORNER = 60;
/** Cloth that goes on within this, in mm, goes on: a row of stitches does not stop for less. */
const STITCH = 2.5;

/**
 * The ways of rows that run so many mm inside edges of a work. Rows along edges that follow one another turn at the
 * corner between them. A row that turns at no corner ends with what the edge belongs to: where its plies end beside the
 * edge, at that depth.
 *
 * @example
 * waysInside(work, edgesOn(work, ['left', 'bottom']).value, 3) // => one way with a corner in it
 */
export function pathsInside(work: Work, edges: readonly WorkEdge[], by: number): Point[][] {
  const lines = edges.map((edge) => lineInside(edge, by));
  const ends = edges.map((edge, i) => stretchBeside(work, edge, lines[i]!));
  const next = edges.map((edge, i) => edges.findIndex((other, k) => k !== i && follows(edge, other)));
  const ways: Point[][] = [];
  const left = new Set(edges.keys());
  // A way begins at an edge that follows none; a ring begins anywhere.
  const starts = [...edges.keys()].sort((a, b) => Number(next.includes(a)) - Number(next.includes(b)));
  for (const first of starts) {
    if (!left.has(first)) continue;
    const before = next.indexOf(first);
    const way: Point[] = [before >= 0 ? meet(lines[before]!, lines[first]!) : ends[first]![0]];
    for (let i = first; left.delete(i); i = next[i]!) {
      const k = next[i]!;
      way.push(k >= 0 ? meet(lines[i]!, lines[k]!) : ends[i]![1]);
      if (k < 0) break;
    }
    ways.push(way);
  }
  return ways;
}

/** From where to where the plies of an edge lie on a line beside it, as far as they hang together there. */
function stretchBeside(work: Work, edge: WorkEdge, line: Line): [Point, Point] {
  const way = direction(line.angle);
  const along = (p: Point) => way.x * (p.x - line.at.x) + way.y * (p.y - line.at.y);
  const own = edge.plies && new Set(edge.plies);
  const on = work.plies
    .filter(({ id }) => own?.has(id) ?? true)
    .flatMap((ply) => stretches(ply.outline, line.at, plus(line.at, way)));
  let [from, to] = [along(edge.from), along(edge.to)];
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
  return [at(line, from), at(line, to)];
}

const at = (line: Line, t: number): Point => plus(line.at, times(direction(line.angle), t));

function follows(a: WorkEdge, b: WorkEdge): boolean {
  const [p, q] = [direction(a.line.angle), direction(b.line.angle)];
  return p.x * q.y - p.y * q.x > 0.1 && distance(a.to, b.from) < CORNER;
}

const meet = (a: Line, b: Line): Point => linesMeet(a.at, direction(a.angle), b.at, direction(b.angle)) ?? b.at;
