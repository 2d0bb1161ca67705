import { EndType, FillRule, inflatePaths, JoinType, minkowskiSum, union } from 'clipper2-ts';
import type { Point } from '../geometry/index.ts';

/**
 * Where one outline may not lie beside another: all moves that would make them overlap, as rings round these moves
 * (the no-fit polygon). Each edge is `EDGE` numbers: from x, y; to y; along x, y; 1 / length².
 */
export type NoFitPolygon = {
  readonly edges: Float64Array;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
  /** Where there are many edges. */
  readonly grid: Grid | undefined;
  /** The place of every edge, for where there is no grid. */
  readonly all: Uint16Array;
};

/** What each cell of a grid over the moves knows of the edges. It finds out when it is first asked. */
type Grid = {
  /** How many cells make a mm. */
  readonly across: number;
  readonly up: number;
  /** Half the diagonal of a cell, in mm. */
  readonly reach: number;
  /** For each cell the edges, one of which is the nearest to any move in it; none where all its moves are allowed. */
  readonly near: (Uint16Array | undefined)[];
  /** For each cell whether all its moves are forbidden, so that no edge needs to be crossed to tell. */
  readonly full: Uint8Array;
  /** For each row of cells the edges that reach into it. */
  readonly rows: (Uint16Array | undefined)[];
};

/** How many numbers an edge is. */
export const EDGE = 6;

/** The clipping library works in whole numbers: so many to a mm. */
const PER_MM = 10_000;

/**
 * The moves of `b` from where it is drawn that make it overlap `a`. Both are rings of points, counter-clockwise, in mm.
 *
 * Boundaries meet where the Minkowski sum of `a` and the negative of `b` says, by the clipping library. One outline lies
 * inside the other where a corner of it does.
 */
export function noFitPolygon(a: readonly Point[], b: readonly Point[]): NoFitPolygon {
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
  return ringed(Float64Array.from(flat));
}

/** So many cells a grid is wide and high. */
const CELLS = 32;
/** With fewer edges than this it is quicker to ask each of them. */
const MANY = 30;
const NONE = new Uint16Array(0);

function ringed(edges: Float64Array): NoFitPolygon {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < edges.length; i += EDGE) {
    left = Math.min(left, edges[i]!);
    right = Math.max(right, edges[i]!);
    low = Math.min(low, edges[i + 1]!);
    high = Math.max(high, edges[i + 1]!);
  }
  const all = Uint16Array.from({ length: edges.length / EDGE }, (_, k) => k * EDGE);
  const [width, height] = [right - left, high - low];
  const grid = all.length < MANY ? undefined : gridOver(width, height);
  return { edges, left, right, low, high, grid, all };
}

const gridOver = (width: number, height: number): Grid => ({
  across: CELLS / width,
  up: CELLS / height,
  // A little more, for what rounding does at the edge of a cell.
  reach: (1 + 1e-9) * (Math.hypot(width, height) / CELLS / 2),
  near: new Array<Uint16Array | undefined>(CELLS * CELLS).fill(undefined),
  full: new Uint8Array(CELLS * CELLS),
  rows: new Array<Uint16Array | undefined>(CELLS).fill(undefined),
});

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
export const seenFromOther = ({ edges }: NoFitPolygon): NoFitPolygon =>
  ringed(edges.map((value, i) => (i % EDGE === EDGE - 1 ? value : -value)));

/**
 * How far, in mm, the shortest way out of the forbidden moves is; 0 where the move is allowed. Leaves in `out`, if it
 * is given, the way itself, across and up.
 */
export function wayOut(forbidden: NoFitPolygon, x: number, y: number, out?: Float64Array): number {
  const { edges, left, right, low, high, grid } = forbidden;
  if (x <= left || x >= right || y <= low || y >= high) return 0;
  let near = forbidden.all;
  if (grid) {
    const row = Math.min(CELLS - 1, Math.floor((y - low) * grid.up));
    const cell = row * CELLS + Math.min(CELLS - 1, Math.floor((x - left) * grid.across));
    near = grid.near[cell] ?? lookRound(forbidden, grid, cell);
    if (near.length === 0) return 0;
    if (grid.full[cell] === 0 && !isInside(edges, grid.rows[row] ?? edgesOfRow(forbidden, grid, row), x, y)) return 0;
  } else if (!isInside(edges, near, x, y)) return 0;
  let nearest = Infinity;
  let outX = 0;
  let outY = 0;
  for (let k = 0; k < near.length; k++) {
    const i = near[k]!;
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

/** Whether a move lies inside the rings, of which `crossing` holds every edge that its height can meet. */
function isInside(edges: Float64Array, crossing: Uint16Array, x: number, y: number): boolean {
  let inside = false;
  for (let k = 0; k < crossing.length; k++) {
    const i = crossing[k]!;
    // Heights themselves are compared, not differences: two edges must agree about the corner they share.
    const ay = edges[i + 1]!;
    if (ay > y !== edges[i + 2]! > y && x - edges[i]! < (edges[i + 3]! * (y - ay)) / edges[i + 4]!) inside = !inside;
  }
  return inside;
}

function edgesOfRow({ edges, low }: NoFitPolygon, grid: Grid, row: number): Uint16Array {
  const ease = 1e-6 / grid.up;
  const [from, to] = [low + row / grid.up - ease, low + (row + 1) / grid.up + ease];
  const found: number[] = [];
  for (let i = 0; i < edges.length; i += EDGE) {
    const [a, b] = [edges[i + 1]!, edges[i + 2]!];
    if (Math.max(a, b) >= from && Math.min(a, b) <= to) found.push(i);
  }
  return (grid.rows[row] = Uint16Array.from(found));
}

/** What a cell needs to know: the edge nearest to a move in it is at most two reaches farther from its middle than any. */
function lookRound(forbidden: NoFitPolygon, grid: Grid, cell: number): Uint16Array {
  const { edges, left, low } = forbidden;
  const row = Math.floor(cell / CELLS);
  const x = left + ((cell % CELLS) + 0.5) / grid.across;
  const y = low + (row + 0.5) / grid.up;
  const far = new Float64Array(edges.length / EDGE);
  let nearest = Infinity;
  for (let k = 0; k < far.length; k++) {
    const i = k * EDGE;
    const [wx, wy, px, py] = [edges[i + 3]!, edges[i + 4]!, x - edges[i]!, y - edges[i + 1]!];
    const c = Math.min(1, Math.max(0, (px * wx + py * wy) * edges[i + 5]!));
    far[k] = Math.hypot(c * wx - px, c * wy - py);
    nearest = Math.min(nearest, far[k]!);
  }
  // No edge comes into the cell: it lies inside or outside as a whole.
  if (nearest > grid.reach) {
    if (!isInside(edges, grid.rows[row] ?? edgesOfRow(forbidden, grid, row), x, y)) return (grid.near[cell] = NONE);
    grid.full[cell] = 1;
  }
  const found: number[] = [];
  for (const [k, distance] of far.entries()) if (distance <= nearest + 2 * grid.reach) found.push(k * EDGE);
  return (grid.near[cell] = Uint16Array.from(found));
}
