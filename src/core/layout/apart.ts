import { EndType, FillRule, inflatePaths, JoinType, minkowskiSum, union } from 'clipper2-ts';
import type { Point } from '../geometry/index.ts';

/**
 * Where one outline may not lie beside another: all moves that would make them overlap, as rings round these moves
 * (the no-fit polygon). Each edge is `EDGE` numbers: from x, y; to y; along x, y; 1 / length².
 */
export type Forbidden = {
  readonly edges: Float64Array;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
};

/** How many numbers an edge is. */
export const EDGE = 6;

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
  const inner = [moved(path, negative[0]!), moved(negative, path[0]!)];
  const rings = closed(union(minkowskiSum(negative, path, true), inner, FillRule.NonZero));
  const kept = rings.map((ring) => ring.map(({ x, y }) => ({ x: x / PER_MM, y: y / PER_MM })));
  const flat = kept.flatMap((ring) =>
    ring.flatMap((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      const [wx, wy] = [to.x - from.x, to.y - from.y];
      return wx === 0 && wy === 0 ? [] : [from.x, from.y, to.y, wx, wy, 1 / (wx * wx + wy * wy)];
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
const SLIT = 0.0005;

/** Rings with their slits closed: grown a little, and made smaller again. */
function closed(rings: Point[][]): Point[][] {
  const by = (distance: number, ofThese: Point[][]): Point[][] =>
    inflatePaths(ofThese, distance * PER_MM, JoinType.Miter, EndType.Polygon, 10);
  return by(-SLIT, by(SLIT, rings));
}

const whole = (ring: readonly Point[], sign: number): Point[] =>
  ring.map(({ x, y }) => ({ x: Math.round(sign * x * PER_MM), y: Math.round(sign * y * PER_MM) }));

/** The same seen from the other outline: the moves of `a` that make it overlap `b`. */
export function seenFromOther({ edges, left, right, low, high }: Forbidden): Forbidden {
  const negated = edges.map((value, i) => (i % EDGE === EDGE - 1 ? value : -value));
  return { edges: negated, left: -right, right: -left, low: -high, high: -low };
}

/**
 * How far, in mm, the shortest way out of the forbidden moves is; 0 where the move is allowed. Leaves in `out`, if it
 * is given, the way itself, across and up.
 */
export function wayOut({ edges, left, right, low, high }: Forbidden, x: number, y: number, out?: Float64Array): number {
  if (x <= left || x >= right || y <= low || y >= high) return 0;
  let inside = false;
  for (let i = 0; i < edges.length; i += EDGE) {
    // Heights themselves are compared, not differences: two edges must agree about the corner they share.
    const ay = edges[i + 1]!;
    if (ay > y !== edges[i + 2]! > y && x - edges[i]! < (edges[i + 3]! * (y - ay)) / edges[i + 4]!) inside = !inside;
  }
  if (!inside) return 0;
  let nearest = Infinity;
  let outX = 0;
  let outY = 0;
  for (let i = 0; i < edges.length; i += EDGE) {
    const wx = edges[i + 3]!;
    const wy = edges[i + 4]!;
    const px = x - edges[i]!;
    const py = y - edges[i + 1]!;
    const t = (px * wx + py * wy) * edges[i + 5]!;
    const c = t < 0 ? 0 : t > 1 ? 1 : t;
    const dx = c * wx - px;
    const dy = c * wy - py;
    const d = dx * dx + dy * dy;
    if (d < nearest) {
      nearest = d;
      outX = dx;
      outY = dy;
    }
  }
  if (out) {
    out[0] = outX;
    out[1] = outY;
  }
  return Math.sqrt(nearest);
}
