import { direction, dot, minus } from './point.ts';
import type { Point } from './point.ts';

/** An endless line through a point. The angle, in degrees counter-clockwise, says which way it is travelled. */
export type Line = { readonly at: Point; readonly angle: number };

/** How far left of a line a point lies, in mm; negative on the right. */
export function leftOf(line: Line, point: Point): number {
  const { x: cos, y: sin } = direction(line.angle);
  return cos * (point.y - line.at.y) - sin * (point.x - line.at.x);
}

/** How far along a line a point lies, in mm from the line's own point. */
export function alongLine(line: Line, point: Point): number {
  return dot(direction(line.angle), minus(point, line.at));
}

/**
 * The line from one point towards another.
 *
 * @example
 * lineThrough({ x: 0, y: 0 }, { x: 0, y: 5 }) // => { at: { x: 0, y: 0 }, angle: 90 }
 */
export function lineThrough(from: Point, to: Point): Line {
  return { at: from, angle: (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI };
}
