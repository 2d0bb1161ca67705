/** A place or a displacement in mm: x to the right, y up. */
export type Point = { readonly x: number; readonly y: number };

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const times = (a: Point, factor: number): Point => ({ x: a.x * factor, y: a.y * factor });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** Positive when `b` points to the left of `a`. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
export const distance = (a: Point, b: Point): number => {
  // Math.hypot also minds numbers that no cloth is as long as, and takes many times as long.
  const [x, y] = [b.x - a.x, b.y - a.y];
  return Math.sqrt(x * x + y * y);
};
/** The same direction at length 1; the zero vector stays as it is. */
export const unit = (a: Point): Point => {
  const size = Math.hypot(a.x, a.y);
  return size === 0 ? a : { x: a.x / size, y: a.y / size };
};
/** A quarter turn clockwise: on a counter-clockwise ring this points out of the cloth. */
export const toTheRight = (a: Point): Point => ({ x: a.y, y: -a.x });
/** The point a share `t` of the way from `a` to `b`. */
export const between = (a: Point, b: Point, t: number): Point => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
});
const [EAST, NORTH, WEST, SOUTH]: readonly [Point, Point, Point, Point] = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
  { x: 0, y: -1 },
];

function quarterTurn(degrees: number): Point | undefined {
  if (degrees === 0) return EAST;
  if (degrees === 90) return NORTH;
  if (degrees === 180) return WEST;
  if (degrees === 270) return SOUTH;
  return undefined;
}

/** The direction at an angle in degrees, counter-clockwise from the x axis. Quarter turns come out exact. */
export function direction(degrees: number): Point {
  // Most lines are level or upright, and remainders take long.
  const level = quarterTurn(degrees);
  if (level) return level;
  const turn = ((degrees % 360) + 360) % 360;
  const quarter = quarterTurn(turn);
  if (quarter) return quarter;
  const radians = (turn * Math.PI) / 180;
  return { x: Math.cos(radians), y: Math.sin(radians) };
}
