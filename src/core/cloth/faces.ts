import { overlayEdges, withoutIdleCorners } from './overlay.ts';
import { SCRAP } from './ring.ts';
import type { Corners, OverlayEdge } from './overlay.ts';
import type { Ply } from './work.ts';
import type { Point } from '../geometry/index.ts';

/**
 * The plies of a work drawn over each other. Every edge has two half-edges: 2e from `u` to `v`, 2e + 1
 * back; on the left of each lies a face, one connected part covered by the same plies. Face 0 is the table around.
 */
export type Overlay = {
  readonly corners: Corners;
  readonly edges: readonly OverlayEdge[];
  /** For each half-edge: the face on its left. */
  readonly left: readonly number[];
  /** For each half-edge: the next one clockwise that sets out from the same corner. */
  readonly clockwise: readonly number[];
  /** For each face: the plies that cover it by their level in the stack, bottom to top. */
  readonly covers: readonly (readonly number[])[];
};

/** It saves time alone: plies do not change, and how they lie over each other follows from them. */
const made = new WeakMap<readonly Ply[], Overlay>();

/** The overlay of a stack of plies. It is made once for each stack. */
export function overlayOf(plies: readonly Ply[]): Overlay {
  let overlay = made.get(plies);
  if (!overlay) made.set(plies, (overlay = makeOverlay(plies)));
  return overlay;
}

function makeOverlay(plies: readonly Ply[]): Overlay {
  const { corners, edges } = overlayEdges(plies);
  const clockwise = clockwiseOf(corners, edges);
  const { loopOf, loops } = loopsOf(corners, edges, clockwise, () => true);
  const { left, covers } = facesOf(corners, edges, loopOf, loops);
  return { corners, edges, left, clockwise, covers };
}

const origin = (edges: readonly OverlayEdge[], halfEdge: number): number =>
  halfEdge & 1 ? edges[halfEdge >> 1]!.v : edges[halfEdge >> 1]!.u;

function clockwiseOf({ xs, ys }: Corners, edges: readonly OverlayEdge[]): number[] {
  const from: number[][] = xs.map(() => []);
  const angles: number[] = [];
  for (const [e, { u, v }] of edges.entries()) {
    from[u]!.push(2 * e);
    from[v]!.push(2 * e + 1);
    const angle = Math.atan2(ys[v]! - ys[u]!, xs[v]! - xs[u]!);
    angles.push(angle, angle > 0 ? angle - Math.PI : angle + Math.PI);
  }
  const clockwise: number[] = [];
  for (const halfEdges of from) {
    halfEdges.sort((a, b) => angles[a]! - angles[b]!);
    for (const [i, halfEdge] of halfEdges.entries())
      clockwise[halfEdge] = halfEdges[(i + halfEdges.length - 1) % halfEdges.length]!;
  }
  return clockwise;
}

/** A walk along the edges with the same face on the left, until it comes back to where it began. */
type Loop = {
  readonly halfEdges: readonly number[];
  /** In mm²; negative when it goes clockwise, round something that lies in the face. */
  readonly area: number;
};

/** All walks along the half-edges that are kept, and for each half-edge the number of its walk. */
function loopsOf(
  { xs, ys }: Corners,
  edges: readonly OverlayEdge[],
  clockwise: readonly number[],
  keeps: (halfEdge: number) => boolean,
): { loopOf: number[]; loops: Loop[] } {
  const loopOf: number[] = new Array<number>(2 * edges.length).fill(-1);
  const loops: Loop[] = [];
  for (let first = 0; first < loopOf.length; first++) {
    if (loopOf[first]! >= 0 || !keeps(first)) continue;
    const halfEdges: number[] = [];
    let twice = 0;
    let u = origin(edges, first);
    const [x, y] = [xs[u]!, ys[u]!];
    for (let halfEdge = first; loopOf[halfEdge]! < 0;) {
      loopOf[halfEdge] = loops.length;
      halfEdges.push(halfEdge);
      const v = origin(edges, halfEdge ^ 1);
      twice += (xs[u]! - x) * (ys[v]! - y) - (ys[u]! - y) * (xs[v]! - x);
      u = v;
      halfEdge = clockwise[halfEdge ^ 1]!;
      while (!keeps(halfEdge)) halfEdge = clockwise[halfEdge]!;
    }
    loops.push({ halfEdges, area: twice / 2 });
  }
  return { loopOf, loops };
}

/**
 * Which face each half-edge has on its left, and what covers it. Edges that hang together are a component; its outermost
 * loop belongs to the face it lies in. Components are taken from left to right, so that the one around comes first.
 */
function facesOf(
  corners: Corners,
  edges: readonly OverlayEdge[],
  loopOf: readonly number[],
  loops: readonly Loop[],
): { left: number[]; covers: number[][] } {
  const faces: number[] = new Array<number>(loops.length).fill(-1);
  const covers: number[][] = [[]];
  for (const component of componentsOf(corners, edges, loopOf, loops)) {
    const outer = component.loops.reduce((least, one) => (loops[one]!.area < loops[least]!.area ? one : least));
    const around = nextToTheLeft(corners, edges, component.leftmost, (halfEdge) => faces[loopOf[halfEdge]!]! >= 0);
    faces[outer] = around === undefined ? 0 : faces[loopOf[around]!]!;
    const open = [outer];
    for (let loop = open.pop(); loop !== undefined; loop = open.pop()) {
      for (const halfEdge of loops[loop]!.halfEdges) {
        const across = loopOf[halfEdge ^ 1]!;
        if (faces[across]! >= 0) continue;
        faces[across] = covers.length;
        covers.push(changed(covers[faces[loop]!]!, edges[halfEdge >> 1]!));
        open.push(across);
      }
    }
  }
  return { left: loopOf.map((loop) => faces[loop]!), covers };
}

/** What covers the other side of an edge. */
function changed(plies: readonly number[], { ends }: OverlayEdge): number[] {
  const now = [...plies];
  for (const { ply } of ends) {
    let i = now.length;
    while (i > 0 && now[i - 1]! > ply) i--;
    if (now[i - 1] === ply) now.splice(i - 1, 1);
    else now.splice(i, 0, ply);
  }
  return now;
}

function componentsOf(
  { xs }: Corners,
  edges: readonly OverlayEdge[],
  loopOf: readonly number[],
  loops: readonly Loop[],
): { loops: number[]; leftmost: number }[] {
  const seen = new Set<number>();
  const components: { loops: number[]; leftmost: number }[] = [];
  for (const [first, { halfEdges }] of loops.entries()) {
    if (seen.has(first)) continue;
    const component = { loops: [first], leftmost: origin(edges, halfEdges[0]!) };
    seen.add(first);
    // The list grows while it is walked.
    for (const loop of component.loops) {
      for (const halfEdge of loops[loop]!.halfEdges) {
        const u = origin(edges, halfEdge);
        if (xs[u]! < xs[component.leftmost]!) component.leftmost = u;
        const across = loopOf[halfEdge ^ 1]!;
        if (seen.has(across)) continue;
        seen.add(across);
        component.loops.push(across);
      }
    }
    components.push(component);
  }
  return components.sort((a, b) => xs[a.leftmost]! - xs[b.leftmost]!);
}

/** The first half-edge that a look to the left from a corner meets, walked so that the corner is on its left. */
function nextToTheLeft(
  { xs, ys }: Corners,
  edges: readonly OverlayEdge[],
  corner: number,
  known: (halfEdge: number) => boolean,
): number | undefined {
  const [x, y] = [xs[corner]!, ys[corner]!];
  let [best, bestX, bestLean]: [number | undefined, number, number] = [undefined, -Infinity, 0];
  for (const [e, { u, v }] of edges.entries()) {
    if (ys[u]! > y === ys[v]! > y || !known(2 * e)) continue;
    const lean = (xs[v]! - xs[u]!) / (ys[v]! - ys[u]!);
    const meets = xs[u]! + lean * (y - ys[u]!);
    if (meets > x || meets < bestX || (meets === bestX && lean <= bestLean)) continue;
    // The half-edge down has what lies to its right, as we see it, on its left.
    [best, bestX, bestLean] = [ys[u]! > y ? 2 * e : 2 * e + 1, meets, lean];
  }
  return best;
}

/** A connected part of the flat work, as seen from above. */
export type Patch = {
  /** Its outer ring counter-clockwise, then its holes clockwise, in mm. */
  readonly rings: readonly (readonly Point[])[];
  /** In mm². */
  readonly area: number;
};

/**
 * The faces of an overlay, those with the same kind that lie next to each other made one patch. Where `kindOf` is
 * undefined, there is none.
 */
export function patchesBy<K>(
  overlay: Overlay,
  kindOf: (covers: readonly number[]) => K | undefined,
): { kind: K; patch: Patch; covers: readonly number[] }[] {
  const { corners, edges, left, clockwise, covers } = overlay;
  const kinds = covers.map((one) => (one.length > 0 ? kindOf(one) : undefined));
  const same = (halfEdge: number) => kinds[left[halfEdge]!] === kinds[left[halfEdge ^ 1]!];
  const one = covers.map((_, i) => i);
  const root = (face: number): number => {
    while (one[face] !== face) face = one[face] = one[one[face]!]!;
    return face;
  };
  for (let halfEdge = 0; halfEdge < left.length; halfEdge += 2)
    if (same(halfEdge)) one[root(left[halfEdge]!)] = root(left[halfEdge + 1]!);

  const { loops } = loopsOf(corners, edges, clockwise, (halfEdge) => !same(halfEdge));
  const found = new Map<number, Loop[]>();
  for (const loop of loops) {
    const face = root(left[loop.halfEdges[0]!]!);
    if (kinds[face] === undefined) continue;
    const patch = found.get(face);
    // The outer ring, the only one with an area above 0, goes first.
    if (!patch) found.set(face, [loop]);
    else if (loop.area > patch[0]!.area) patch.unshift(loop);
    else patch.push(loop);
  }
  const pointAt = (at: number): Point => ({ x: corners.xs[at]!, y: corners.ys[at]! });
  return [...found].flatMap(([face, all]) => {
    const area = all.reduce((sum, loop) => sum + loop.area, 0);
    if (!(area > SCRAP)) return [];
    const rings = all.map(({ halfEdges }) =>
      withoutIdleCorners(halfEdges.map((halfEdge) => pointAt(origin(edges, halfEdge)))),
    );
    return [{ kind: kinds[face]!, patch: { rings, area }, covers: covers[face]! }];
  });
}
