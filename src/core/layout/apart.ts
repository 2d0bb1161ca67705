import { EndType, FillRule, inflatePaths, JoinType, minkowskiSum, union } from 'clipper2-ts';
import type { Point } from '../geometry/index.ts';

/**
 * Where one outline may not lie beside another: all moves that would make them overlap, as rings round these moves
 * (the no-fit polygon). Each edge is four numbers, from x, y to x, y.
 */
export type Forbidden = {
  readonly edges: Float64Array;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
};

/** The clipping library reckons in whole numbers: so many to a mm. */
const PER_MM = 10_000;

/**
 * The moves of `b` from where it is drawn that make it overlap `a`. Both are rings of points, counter-clockwise, in mm.
 *
 * Boundaries meet where the Minkowski sum of `a` and the negative of `b` says, by the clipping library. One outline lies
 * inside the other where a corner of it does.
 */
export function forbiddenMoves(a: readonly Point[], b: readonly Point[]): Forbidden {
  const negative = whole(b, -1);
  const path = whole(a, 1);
  const moved = (ring: Point[], by: Point): Point[] => ring.map(({ x, y }) => ({ x: x + by.x, y: y + by.y }));
  const inner = [...negative.map((corner) => moved(path, corner)), ...path.map((corner) => moved(negative, corner))];
  const rings = closed(union(minkowskiSum(negative, path, true), inner, FillRule.NonZero));
  const kept = rings.map((ring) => ring.map(({ x, y }) => ({ x: x / PER_MM, y: y / PER_MM })));
  const flat = kept.flatMap((ring) =>
    ring.flatMap((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      return [from.x, from.y, to.x, to.y];
    }),
  );
  const xs = kept.flatMap((ring) => ring.map(({ x }) => x));
  const ys = kept.flatMap((ring) => ring.map(({ y }) => y));
  return {
    edges: Float64Array.from(flat),
    left: Math.min(...xs),
    right: Math.max(...xs),
    low: Math.min(...ys),
    high: Math.max(...ys),
  };
}

/** Slits narrower than twice this, in mm, are no room: rounding leaves them where one ring borders on another. */
const SLIT = 0.01;

/** Rings with their slits closed: grown a little, and made smaller again. */
function closed(rings: Point[][]): Point[][] {
  const by = (distance: number, ofThese: Point[][]): Point[][] =>
    inflatePaths(ofThese, distance * PER_MM, JoinType.Miter, EndType.Polygon, 10);
  return by(-SLIT, by(SLIT, rings));
}

const whole = (ring: readonly Point[], sign: number): Point[] =>
  ring.map(({ x, y }) => ({ x: Math.round(sign * x * PER_MM), y: Math.round(sign * y * PER_MM) }));

/** How far, in mm, the shortest way out of the forbidden moves is; 0 where the move is allowed. */
export function depth({ edges, left, right, low, high }: Forbidden, x: number, y: number): number {
  if (x <= left || x >= right || y <= low || y >= high) return 0;
  let inside = false;
  let nearest = Infinity;
  for (let i = 0; i < edges.length; i += 4) {
    const ax = edges[i]!;
    const ay = edges[i + 1]!;
    const wx = edges[i + 2]! - ax;
    const wy = edges[i + 3]! - ay;
    const px = x - ax;
    const py = y - ay;
    // Heights themselves are compared, not differences: two edges must agree about the corner they share.
    if (ay > y !== edges[i + 3]! > y && px < (wx * py) / wy) inside = !inside;
    const t = (px * wx + py * wy) / (wx * wx + wy * wy);
    const c = t < 0 ? 0 : t > 1 ? 1 : t;
    const dx = px - c * wx;
    const dy = py - c * wy;
    const d = dx * dx + dy * dy;
    if (d < nearest) nearest = d;
  }
  return inside ? Math.sqrt(nearest) : 0;
}
