import { cross, minus } from './point.ts';
import type { Point } from './point.ts';

/**
 * The corners of the convex hull of points, counter-clockwise. What holds for all of these on one side of a line holds
 * for all of those.
 *
 * @example
 * convexHull([{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 1, y: 1 }, { x: 1, y: 4 }]).length // => 3
 */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const lower = chain(sorted);
  const upper = chain(sorted.toReversed());
  // Each chain ends where the other begins.
  return sorted.length < 2 ? sorted : [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

/** Half of the hull, from the first point to the last one, always turning left (the monotone chain). */
function chain(sorted: readonly Point[]): Point[] {
  const turning: Point[] = [];
  for (const point of sorted) {
    while (turning.length > 1) {
      const [a, b] = [turning.at(-2)!, turning.at(-1)!];
      if (cross(minus(b, a), minus(point, a)) > 0) break;
      turning.pop();
    }
    turning.push(point);
  }
  return turning;
}
