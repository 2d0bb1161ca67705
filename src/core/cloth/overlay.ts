import { ON } from './ring.ts';
import type { Ply } from './work.ts';
import type { Point } from '../geometry/index.ts';

/*
 * All plies drawn over each other: where edges cross they are cut, edges that lie on each other become one, and every
 * place that edges enclose knows the plies that cover it. Readings of layers, of what shows and of outlines are
 * taken from it. It works on numbers in flat arrays, because a page reads it while a slider moves.
 */

/** Corners nearer than this, in mm, are one corner. Far below what a ruler shows, above what many folds in a row lose. */
const NEAR = 1e-3;
/** A way bent by more than this, in mm, to meet a corner is looked at once more. */
const BENT = 1e-9;
/** Bends become shorter with each round; more rounds than this were never seen to be needed. */
const ROUNDS = 6;
const CELL = 1;

/** An edge of a ply, by the level of the ply in the stack and the place of the edge in its ring. */
export type PlyEnd = { readonly ply: number; readonly edge: number };

/** A straight stretch between two corners on which one or more plies end. */
export type OverlayEdge = {
  readonly u: number;
  readonly v: number;
  /** The plies that end here; each lies on one side of the stretch only. */
  readonly ends: readonly PlyEnd[];
};

export type Corners = { readonly xs: number[]; readonly ys: number[] };

/** The edges of all plies, cut where they cross, without doubles. No two of them cross. */
export function overlayEdges(plies: readonly Ply[]): { corners: Corners; edges: OverlayEdge[] } {
  const corners: Corners = { xs: [], ys: [] };
  const corner = cornerFinder(corners);
  const raw = new EdgeSet();
  for (const [ply, { outline }] of plies.entries()) {
    const at = outline.map(({ from }) => corner(from.x, from.y));
    for (let i = 0; i < at.length; i++) raw.add(at[i]!, at[(i + 1) % at.length]!, [{ ply, edge: i }]);
  }
  let edges = raw.list();
  for (let round = 0; round < ROUNDS; round++) {
    const cut = cutWhereTheyMeet(edges, corners, corner);
    edges = cut.edges;
    if (!cut.bent) break;
  }
  return { corners, edges };
}

/** Finds the corner at a place, or makes one. Corners are kept by squares of one mm. */
function cornerFinder({ xs, ys }: Corners): (x: number, y: number) => number {
  const squares = new Map<number, number[]>();
  const key = (i: number, k: number) => i * 0x4000000 + k;
  return (x, y) => {
    const [left, right] = [Math.floor((x - NEAR) / CELL), Math.floor((x + NEAR) / CELL)];
    const [low, high] = [Math.floor((y - NEAR) / CELL), Math.floor((y + NEAR) / CELL)];
    for (let i = left; i <= right; i++) {
      for (let k = low; k <= high; k++) {
        for (const one of squares.get(key(i, k)) ?? []) {
          if ((xs[one]! - x) ** 2 + (ys[one]! - y) ** 2 <= NEAR * NEAR) return one;
        }
      }
    }
    const here = key(Math.floor(x / CELL), Math.floor(y / CELL));
    const square = squares.get(here);
    if (square) square.push(xs.length);
    else squares.set(here, [xs.length]);
    xs.push(x);
    return ys.push(y) - 1;
  };
}

/** Collects stretches; those between the same corners become one. */
class EdgeSet {
  #between = new Map<number, { u: number; v: number; ends: PlyEnd[] }>();

  add(from: number, to: number, ends: readonly PlyEnd[]): void {
    if (from === to) return;
    const [u, v] = from < to ? [from, to] : [to, from];
    const key = u * 0x4000000 + v;
    const there = this.#between.get(key);
    if (!there) {
      this.#between.set(key, { u, v, ends: [...ends] });
      return;
    }
    for (const end of ends) {
      // A ply that ends here twice, once on either side, does not end here at all.
      const twin = there.ends.findIndex((other) => other.ply === end.ply);
      if (twin >= 0) there.ends.splice(twin, 1);
      else there.ends.push(end);
    }
  }

  list(): OverlayEdge[] {
    return [...this.#between.values()].filter(({ ends }) => ends.length > 0);
  }
}

function cutWhereTheyMeet(
  edges: readonly OverlayEdge[],
  { xs, ys }: Corners,
  corner: (x: number, y: number) => number,
): { edges: OverlayEdge[]; bent: boolean } {
  const n = edges.length;
  const order = edges.map((edge) => ({
    edge,
    left: Math.min(xs[edge.u]!, xs[edge.v]!) - NEAR,
    right: Math.max(xs[edge.u]!, xs[edge.v]!) + NEAR,
    low: Math.min(ys[edge.u]!, ys[edge.v]!) - NEAR,
    high: Math.max(ys[edge.u]!, ys[edge.v]!) + NEAR,
    size: Math.hypot(xs[edge.v]! - xs[edge.u]!, ys[edge.v]! - ys[edge.u]!),
    cuts: [] as number[],
  }));
  type Stretch = (typeof order)[number];
  order.sort((a, b) => a.left - b.left);
  let bent = false;

  /** How far left of a stretch a corner lies. */
  const off = ({ edge, size }: Stretch, at: number): number => {
    const [x, y] = [xs[edge.u]!, ys[edge.u]!];
    return ((xs[edge.v]! - x) * (ys[at]! - y) - (ys[edge.v]! - y) * (xs[at]! - x)) / size;
  };
  /** Cuts a stretch at a corner near it, if that lies between its ends. */
  const cutAt = (stretch: Stretch, at: number, away: number): void => {
    const { u, v } = stretch.edge;
    if (Math.abs(away) > NEAR || at === u || at === v || stretch.cuts.includes(at)) return;
    const along = (xs[v]! - xs[u]!) * (xs[at]! - xs[u]!) + (ys[v]! - ys[u]!) * (ys[at]! - ys[u]!);
    if (along <= 0 || along >= stretch.size ** 2) return;
    stretch.cuts.push(at);
    if (Math.abs(away) > BENT) bent = true;
  };
  const meet = (a: Stretch, b: Stretch): void => {
    const [bu, bv] = [off(a, b.edge.u), off(a, b.edge.v)];
    if ((bu > NEAR && bv > NEAR) || (bu < -NEAR && bv < -NEAR)) return;
    const [au, av] = [off(b, a.edge.u), off(b, a.edge.v)];
    if ((au > NEAR && av > NEAR) || (au < -NEAR && av < -NEAR)) return;
    cutAt(a, b.edge.u, bu);
    cutAt(a, b.edge.v, bv);
    cutAt(b, a.edge.u, au);
    cutAt(b, a.edge.v, av);
    if (Math.min(Math.abs(au), Math.abs(av), Math.abs(bu), Math.abs(bv)) <= NEAR || bu > 0 === bv > 0) return;
    const t = au / (au - av);
    const { u, v } = a.edge;
    const at = corner(xs[u]! + (xs[v]! - xs[u]!) * t, ys[u]! + (ys[v]! - ys[u]!) * t);
    cutAt(a, at, off(a, at));
    cutAt(b, at, off(b, at));
  };
  for (let i = 0; i < n; i++) {
    const a = order[i]!;
    for (let k = i + 1; k < n && order[k]!.left <= a.right; k++) {
      const b = order[k]!;
      if (b.low <= a.high && b.high >= a.low) meet(a, b);
    }
  }

  const cut = new EdgeSet();
  for (const { edge, cuts } of order) {
    const { u, v, ends } = edge;
    const along = (at: number) => (xs[at]! - xs[u]!) * (xs[v]! - xs[u]!) + (ys[at]! - ys[u]!) * (ys[v]! - ys[u]!);
    if (cuts.length > 1) cuts.sort((a, b) => along(a) - along(b));
    let from = u;
    for (const to of cuts) {
      cut.add(from, to, ends);
      from = to;
    }
    cut.add(from, v, ends);
  }
  return { edges: cut.list(), bent };
}

/** A closed way of points without those that lie on the straight between their neighbours. */
export function withoutIdleCorners(ring: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (let i = 0; i < ring.length; i++) {
    const [a, b, c] = [kept.at(-1) ?? ring.at(-1)!, ring[i]!, ring[(i + 1) % ring.length]!];
    const size = Math.hypot(c.x - a.x, c.y - a.y);
    const off = (c.x - a.x) * (b.y - a.y) - (c.y - a.y) * (b.x - a.x);
    if (size === 0 || Math.abs(off) > ON * size) kept.push(b);
  }
  return kept;
}
