import { direction } from '../geometry/point.ts';
import type { Line, Point } from '../geometry/index.ts';

/**
 * A way to lie: where each point of a flat thing has come to by sliding, turning and turning over. The point (x, y)
 * lies at (a x + c y + e, b x + d y + f). A thing turned over has a d - b c = -1, else +1.
 */
export type Lie = {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
};

/** As it was cut. */
export const asCut: Lie = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const slid = (by: Point): Lie => ({ ...asCut, e: by.x, f: by.y });

/** Turned counter-clockwise by degrees about a point. */
export function turned(degrees: number, about: Point): Lie {
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

/** Turned over about a line, as a fold does. */
export function turnedOver(line: Line): Lie {
  const { x: cos, y: sin } = direction(2 * line.angle);
  const { x, y } = line.at;
  return { a: cos, b: sin, c: sin, d: -cos, e: x - cos * x - sin * y, f: y - sin * x + cos * y };
}

/** First one, then the other. */
export const followedBy = (first: Lie, second: Lie): Lie => ({
  a: second.a * first.a + second.c * first.b,
  b: second.b * first.a + second.d * first.b,
  c: second.a * first.c + second.c * first.d,
  d: second.b * first.c + second.d * first.d,
  e: second.a * first.e + second.c * first.f + second.e,
  f: second.b * first.e + second.d * first.f + second.f,
});

/** Where a point comes to lie. */
export const lies = (lie: Lie, { x, y }: Point): Point => ({
  x: lie.a * x + lie.c * y + lie.e,
  y: lie.b * x + lie.d * y + lie.f,
});

/** Whether lying so turns a thing over. */
export const turnsOver = (lie: Lie): boolean => lie.a * lie.d - lie.b * lie.c < 0;

/** The way back. */
export function back({ a, b, c, d, e, f }: Lie): Lie {
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
