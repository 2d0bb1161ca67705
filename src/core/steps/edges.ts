/** Edges of a work as a step names them. */
import { direction, distance, minus, plus, times } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { findEdge, freeEdgesNamed } from '../cloth/edge.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import { linesMeet } from '../geometry/arc.ts';
import type { ClothFault, Work } from '../cloth/index.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';

const sides = ['bottom', 'right', 'top', 'left'];

/** A straight edge, walked with the cloth on its left. */
export type Stretch = { name: string; line: Line; from: Point; to: Point };

/**
 * The edge that a step names. Of several layers that have such an edge it is the outermost: that of the cloth and not
 * that of the interfacing inside it, the fold of a turned edge and not the raw edge within.
 */
export function edgeOn(work: Work, asked: string): Result<Stretch, ClothFault> {
  const plain = findEdge(work, asked);
  if (plain.ok) return ok({ ...plain.value, name: asked });
  const free = freeEdgesNamed(work, asked).map(({ piece, edge, to }) => ({ piece, from: edge.from, to }));
  const outside = free.find(({ from, to }) => {
    const line = lineThrough(from, to);
    return free.every((one) => leftOf(line, one.from) > -SAME && leftOf(line, one.to) > -SAME);
  });
  if (!outside) return plain;
  const line = lineThrough(outside.from, outside.to);
  const ends = free
    .filter((one) => Math.abs(leftOf(line, one.from)) < SAME && Math.abs(leftOf(line, one.to)) < SAME)
    .flatMap((one) => [one.from, one.to])
    .sort((a, b) => along(line, a) - along(line, b));
  const bare = asked.startsWith(`${outside.piece} `) ? asked.slice(outside.piece.length + 1) : asked;
  return ok({ name: `${outside.piece} ${bare}`, line, from: ends[0]!, to: ends.at(-1)! });
}

const along = ({ at, angle }: Line, point: Point): number => {
  const way = direction(angle);
  return way.x * (point.x - at.x) + way.y * (point.y - at.y);
};

/** The edges a step names; `all` stands for the four sides. */
export function edgesOn(work: Work, asked: readonly string[]): Result<Stretch[], ClothFault> {
  const found: Stretch[] = [];
  for (const edge of asked.flatMap((one) => (one === 'all' ? sides : [one]))) {
    const one = edgeOn(work, edge);
    if (!one.ok) return one;
    found.push(one.value);
  }
  return found.length > 0 ? ok(found) : fail({ code: 'unknown-edge', message: 'No edge is named here.' });
}

/** Edges that end nearer to one another than this, in mm, have a corner between them, however it is rounded. */
const CORNER = 60;

/**
 * The ways of rows that run so many mm inside edges. Rows along edges that follow one another turn at the corner between
 * them; a row that ends runs on as far as `reach` takes it.
 */
export function waysInside(edges: readonly Stretch[], by: number, reach: number): Point[][] {
  const lines = edges.map(({ line }): Line => {
    const way = direction(line.angle);
    return { at: plus(line.at, { x: -way.y * by, y: way.x * by }), angle: line.angle };
  });
  const next = edges.map((edge, i) => edges.findIndex((other, k) => k !== i && follows(edge, other)));
  const ways: Point[][] = [];
  const left = new Set(edges.keys());
  // A way begins at an edge that follows none; a ring begins anywhere.
  const starts = [...edges.keys()].sort((a, b) => Number(next.includes(a)) - Number(next.includes(b)));
  for (const first of starts) {
    if (!left.has(first)) continue;
    const before = next.indexOf(first);
    const way: Point[] = [
      before >= 0 ? meet(lines[before]!, lines[first]!) : runOn(edges[first]!.from, lines[first]!, -reach),
    ];
    for (let i = first; left.delete(i); i = next[i]!) {
      const k = next[i]!;
      way.push(k >= 0 ? meet(lines[i]!, lines[k]!) : runOn(edges[i]!.to, lines[i]!, reach));
      if (k < 0) break;
    }
    ways.push(way);
  }
  return ways;
}

function follows(a: Stretch, b: Stretch): boolean {
  const [p, q] = [direction(a.line.angle), direction(b.line.angle)];
  return p.x * q.y - p.y * q.x > 0.1 && distance(a.to, b.from) < CORNER;
}

const meet = (a: Line, b: Line): Point => linesMeet(a.at, direction(a.angle), b.at, direction(b.angle)) ?? b.at;

/** The point of a line beside an end of its edge, and so far beyond it. */
function runOn(end: Point, line: Line, reach: number): Point {
  const way = direction(line.angle);
  const away = minus(end, line.at);
  return plus(line.at, times(way, way.x * away.x + way.y * away.y + reach));
}
