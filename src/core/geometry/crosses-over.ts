import { straightened } from './readings.ts';
import type { Outline } from './outline.ts';
import type { Point } from './point.ts';

/** How far chords leave a curve that is asked whether it crosses others, in mm. */
const CHORD = 0.05;

/**
 * Whether the way round an outline crosses itself, as in a figure of eight. Where it only touches itself it does not.
 *
 * @example
 * crossesOver(polygon([{ x: 0, y: 0 }, { x: 4, y: 4 }, { x: 4, y: 0 }, { x: 0, y: 3 }])) // => true
 */
export function crossesOver(outline: Outline): boolean {
  if (outline.length < 4 && outline.every(({ bulge }) => bulge === 0)) return false;
  const points = straightened(outline, CHORD).map(({ from }) => from);
  const n = points.length;
  const turn = (a: Point, b: Point, c: Point) => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  for (let i = 0; i < n; i++) {
    const [a, b] = [points[i]!, points[(i + 1) % n]!];
    const [left, right, low, high] = [Math.min(a.x, b.x), Math.max(a.x, b.x), Math.min(a.y, b.y), Math.max(a.y, b.y)];
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const [c, d] = [points[j]!, points[(j + 1) % n]!];
      if (Math.max(c.x, d.x) < left || Math.min(c.x, d.x) > right) continue;
      if (Math.max(c.y, d.y) < low || Math.min(c.y, d.y) > high) continue;
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return true;
    }
  }
  return false;
}
