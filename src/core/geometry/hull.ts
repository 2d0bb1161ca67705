import type { Point } from './point.ts';

/**
 * The corners of the convex hull of points, counter-clockwise. What holds for all of these on one side of a line holds
 * for all of those.
 *
 * @example
 * convexHull([{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 1, y: 1 }, { x: 1, y: 4 }]).length // => 3
 */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = outermost(points).toSorted((a, b) => a.x - b.x || a.y - b.y);
  const lower = chain(sorted);
  const upper = chain(sorted.toReversed());
  // Each chain ends where the other begins.
  return sorted.length < 2 ? sorted : [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

/** Less than this inside, in mm², a point may be a corner yet. */
const CLOSE = 1e-6;

/** Without most of those that cannot be corners: they lie inside the four that go farthest, askew. */
function outermost(points: readonly Point[]): readonly Point[] {
  if (points.length < 16) return points;
  let [a, b, c, d] = [points[0]!, points[0]!, points[0]!, points[0]!];
  for (const p of points) {
    if (p.x + p.y < a.x + a.y) a = p;
    if (p.x - p.y > b.x - b.y) b = p;
    if (p.x + p.y > c.x + c.y) c = p;
    if (p.x - p.y < d.x - d.y) d = p;
  }
  const isLeft = (from: Point, to: Point, { x, y }: Point): boolean =>
    (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) > CLOSE;
  return points.filter((p) => !(isLeft(a, b, p) && isLeft(b, c, p) && isLeft(c, d, p) && isLeft(d, a, p)));
}

/** Half of the hull, from the first point to the last one, always turning left (the monotone chain). */
function chain(sorted: readonly Point[]): Point[] {
  const turning: Point[] = [];
  for (const point of sorted) {
    while (turning.length > 1) {
      const [a, b] = [turning.at(-2)!, turning.at(-1)!];
      if ((b.x - a.x) * (point.y - a.y) > (b.y - a.y) * (point.x - a.x)) break;
      turning.pop();
    }
    turning.push(point);
  }
  return turning;
}
