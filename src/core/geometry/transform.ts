import { direction, minus, plus } from './point.ts';
import { reversed } from './outline.ts';
import type { Line } from './line.ts';
import type { Outline } from './outline.ts';
import type { Point } from './point.ts';

/** Moves an outline by so many mm. */
export function translate(outline: Outline, by: Point): Outline {
  return outline.map((edge) => ({ ...edge, from: plus(edge.from, by) }));
}

/** Turns an outline counter-clockwise by degrees about a point, the origin if left out. */
export function rotate(outline: Outline, degrees: number, about: Point = { x: 0, y: 0 }): Outline {
  return outline.map((edge) => ({ ...edge, from: rotatePoint(edge.from, degrees, about) }));
}

/** Turns a point counter-clockwise by degrees about another. */
export function rotatePoint(point: Point, degrees: number, about: Point): Point {
  const { x: cos, y: sin } = direction(degrees);
  const { x, y } = minus(point, about);
  return { x: about.x + x * cos - y * sin, y: about.y + x * sin + y * cos };
}

/** Mirrors an outline in a line, as folding or flipping does. The ring stays counter-clockwise. */
export function reflect(outline: Outline, line: Line): Outline {
  // Mirroring makes a ring clockwise and turns every bulge inside out; walking it backwards mends both.
  return reversed(outline.map((edge) => ({ ...edge, from: reflectPoint(edge.from, line), bulge: -edge.bulge })));
}

/** Mirrors a point in a line. */
export function reflectPoint(point: Point, line: Line): Point {
  const { x: cos, y: sin } = direction(2 * line.angle);
  const { x, y } = minus(point, line.at);
  return { x: line.at.x + x * cos + y * sin, y: line.at.y + x * sin - y * cos };
}
