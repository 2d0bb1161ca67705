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

/**
 * An affine transform: where each point of a flat thing comes to by sliding, turning and turning over. The point (x, y)
 * comes to (a x + c y + e, b x + d y + f). A thing turned over has a d - b c = -1, else +1.
 */
export type Transform = {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
};

/** Leaves every point where it is. */
export const identity: Transform = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Slides by so many mm. */
export const translation = (by: Point): Transform => ({ ...identity, e: by.x, f: by.y });

/** Turns counter-clockwise by degrees about a point. */
export function rotation(degrees: number, about: Point): Transform {
  const { x: cos, y: sin } = direction(degrees);
  return {
    a: cos,
    b: sin,
    c: -sin,
    d: cos,
    e: about.x - cos * about.x + sin * about.y,
    f: about.y - sin * about.x - cos * about.y,
  };
}

/** Turns over about a line, as a fold does. */
export function reflection(line: Line): Transform {
  const { x: cos, y: sin } = direction(2 * line.angle);
  const { x, y } = line.at;
  return { a: cos, b: sin, c: sin, d: -cos, e: x - cos * x - sin * y, f: y - sin * x + cos * y };
}

/** First one transform, then the other. */
export const followedBy = (first: Transform, second: Transform): Transform => ({
  a: second.a * first.a + second.c * first.b,
  b: second.b * first.a + second.d * first.b,
  c: second.a * first.c + second.c * first.d,
  d: second.b * first.c + second.d * first.d,
  e: second.a * first.e + second.c * first.f + second.e,
  f: second.b * first.e + second.d * first.f + second.f,
});

/** Where a point comes to transform. */
export const transformPoint = (transform: Transform, { x, y }: Point): Point => ({
  x: transform.a * x + transform.c * y + transform.e,
  y: transform.b * x + transform.d * y + transform.f,
});

/** Whether a transform turns a thing over. */
export const isReflected = (transform: Transform): boolean => transform.a * transform.d - transform.b * transform.c < 0;

/** The transform that undoes another. */
export function inverse({ a, b, c, d, e, f }: Transform): Transform {
  const size = a * d - b * c;
  return {
    a: d / size,
    b: -b / size,
    c: -c / size,
    d: a / size,
    e: (c * f - d * e) / size,
    f: (b * e - a * f) / size,
  };
}
