import { polyline } from './path.ts';
import type { Point } from '../geometry/point.ts';
import type { Command } from './path.ts';

/** The double arrow of the grain, from one point of the sheet to another. */
export function grainArrow(from: Point, to: Point): Command[] {
  const size = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / size, (to.y - from.y) / size];
  const head = (tip: Point, way: 1 | -1): Command[] =>
    polyline({ x: tip.x - way * 1.7 * dx + 0.9 * dy, y: tip.y - way * 1.7 * dy - 0.9 * dx }, tip, {
      x: tip.x - way * 1.7 * dx - 0.9 * dy,
      y: tip.y - way * 1.7 * dy + 0.9 * dx,
    });
  return [...polyline(from, to), ...head(to, 1), ...head(from, -1)];
}

/** A notch at a point of the cut line: a small wedge whose tip points into the cloth, along `inward` (length 1). */
export function notchWedge(at: Point, inward: Point): Command[] {
  const [deep, half] = [2.2, 1];
  return polyline(
    { x: at.x - half * inward.y, y: at.y + half * inward.x },
    { x: at.x + deep * inward.x, y: at.y + deep * inward.y },
    { x: at.x + half * inward.y, y: at.y - half * inward.x },
  );
}

/** The line across a strip that is drawn shorter than it is: flat, with one jag in the middle. */
export function breakLine(from: number, to: number, y: number): Command[] {
  const [middle, jag] = [(from + to) / 2, Math.max(0.7, Math.min(1.6, (to - from) / 6))];
  return polyline(
    { x: from - 1.2, y },
    { x: middle - jag, y },
    { x: middle - jag / 3, y: y - jag },
    { x: middle + jag / 3, y: y + jag },
    { x: middle + jag, y },
    { x: to + 1.2, y },
  );
}
