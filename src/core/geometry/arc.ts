import { cross, distance, dot, minus, plus, times, toTheRight, unit } from './point.ts';
import type { Point } from './point.ts';
import type { Side } from './outline.ts';

/** A part of a circle. Angles in radians; `sweep` is positive counter-clockwise. */
export type Arc = { centre: Point; radius: number; start: number; sweep: number };

/** The circle behind a side with a bulge other than 0. */
export function arcOf(side: Side): Arc {
  const { from, to, bulge } = side;
  const chord = minus(to, from);
  // The centre lies on the chord's bisector; left of the way for a counter-clockwise arc of less than half a turn.
  const towardCentre = times(toTheRight(chord), -(1 - bulge * bulge) / (4 * bulge));
  const centre = plus(times(plus(from, to), 0.5), towardCentre);
  const spoke = minus(from, centre);
  return {
    centre,
    radius: Math.hypot(spoke.x, spoke.y),
    start: Math.atan2(spoke.y, spoke.x),
    sweep: 4 * Math.atan(bulge),
  };
}

/** The point a share `t` of the way along a side. */
export function pointAlong(side: Side, t: number): Point {
  if (t === 0) return side.from;
  if (t === 1) return side.to;
  if (side.bulge === 0) {
    return { x: side.from.x + (side.to.x - side.from.x) * t, y: side.from.y + (side.to.y - side.from.y) * t };
  }
  const { centre, radius, start, sweep } = arcOf(side);
  const angle = start + sweep * t;
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** The point of a side that lies nearest to another. */
export function nearestOn(side: Side, point: Point): Point {
  const way = minus(side.to, side.from);
  const share =
    side.bulge === 0 ? dot(minus(point, side.from), way) / (dot(way, way) || 1) : shareOfArc(arcOf(side), point);
  if (share >= 0 && share <= 1) return pointAlong(side, share);
  return distance(point, side.from) <= distance(point, side.to) ? side.from : side.to;
}

/** The part of a side between two shares of its way. */
export function part(side: Side, from: number, to: number): Side {
  return {
    name: side.name,
    from: pointAlong(side, from),
    to: pointAlong(side, to),
    bulge: side.bulge === 0 ? 0 : Math.tan(Math.atan(side.bulge) * (to - from)),
  };
}

/** The direction of travel, length 1, at the start or the end of a side. */
export function tangent(side: Side, at: 'start' | 'end'): Point {
  const along = unit(minus(side.to, side.from));
  if (side.bulge === 0) return along;
  const half = 2 * Math.atan(side.bulge) * (at === 'start' ? -1 : 1);
  return {
    x: along.x * Math.cos(half) - along.y * Math.sin(half),
    y: along.x * Math.sin(half) + along.y * Math.cos(half),
  };
}

/** The length of a side in mm, measured along its arc. */
export function sideLength(side: Side): number {
  const chord = distance(side.from, side.to);
  if (side.bulge === 0) return chord;
  const sweep = 4 * Math.atan(Math.abs(side.bulge));
  return (chord * sweep) / (2 * Math.sin(sweep / 2));
}

/** What share of the way along an arc a point on its circle lies; outside 0 to 1 when the arc does not reach it. */
export function shareOfArc(arc: Arc, point: Point): number {
  const turn = Math.atan2(point.y - arc.centre.y, point.x - arc.centre.x) - arc.start;
  const full = 2 * Math.PI;
  const ahead = ((((arc.sweep > 0 ? turn : -turn) % full) + full) % full) / Math.abs(arc.sweep);
  const behind = ahead - full / Math.abs(arc.sweep);
  // A hair before the start is "just before", not "nearly once round".
  return Math.abs(behind) < Math.abs(ahead - 1) && ahead > 1 ? behind : ahead;
}

/** Where the line through `at` along `way` meets a circle: no, one or two points. */
export function lineMeetsCircle(at: Point, way: Point, centre: Point, radius: number): Point[] {
  const along = unit(way);
  const foot = plus(at, times(along, dot(minus(centre, at), along)));
  const off = distance(foot, centre);
  if (off > radius + 1e-9) return [];
  const half = Math.sqrt(Math.max(0, radius * radius - off * off));
  if (half < 1e-9) return [foot];
  return [plus(foot, times(along, -half)), plus(foot, times(along, half))];
}

/** Where two circles meet: no, one or two points. */
export function circlesMeet(a: Point, radiusA: number, b: Point, radiusB: number): Point[] {
  const apart = distance(a, b);
  if (apart < 1e-12 || apart > radiusA + radiusB + 1e-9 || apart < Math.abs(radiusA - radiusB) - 1e-9) return [];
  const along = (apart * apart + radiusA * radiusA - radiusB * radiusB) / (2 * apart);
  const half = Math.sqrt(Math.max(0, radiusA * radiusA - along * along));
  const toward = unit(minus(b, a));
  const middle = plus(a, times(toward, along));
  if (half < 1e-9) return [middle];
  const sideways = times(toTheRight(toward), half);
  return [plus(middle, sideways), minus(middle, sideways)];
}

/** Where two lines meet; undefined when they are parallel. */
export function linesMeet(a: Point, wayA: Point, b: Point, wayB: Point): Point | undefined {
  const turn = cross(unit(wayA), unit(wayB));
  if (Math.abs(turn) < 1e-12) return undefined;
  return plus(a, times(unit(wayA), cross(minus(b, a), unit(wayB)) / turn));
}
