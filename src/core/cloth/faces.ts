import { fencesOf, withoutIdleCorners } from './overlay.ts';
import { SCRAP } from './ring.ts';
import type { Corners, Fence } from './overlay.ts';
import type { Ply } from './work.ts';
import type { Point } from '../geometry/index.ts';

/**
 * The plies of a work drawn over each other. Every fence has two ways along it: way 2e from `u` to `v`, way 2e + 1
 * back; on the left of each lies a face, one connected part covered by the same plies. Face 0 is the table around.
 */
export type Overlay = {
  readonly corners: Corners;
  readonly fences: readonly Fence[];
  /** For each way: the face on its left. */
  readonly left: readonly number[];
  /** For each way: the next way clockwise that sets out from the same corner. */
  readonly clockwise: readonly number[];
  /** For each face: the plies that cover it by their level in the stack, bottom to top. */
  readonly covers: readonly (readonly number[])[];
};

const made = new WeakMap<readonly Ply[], Overlay>();

/** The overlay of a stack of plies. It is made once for each stack. */
export function overlayOf(plies: readonly Ply[]): Overlay {
  let overlay = made.get(plies);
  if (!overlay) made.set(plies, (overlay = makeOverlay(plies)));
  return overlay;
}

function makeOverlay(plies: readonly Ply[]): Overlay {
  const { corners, fences } = fencesOf(plies);
  const clockwise = turnsOf(corners, fences);
  const { roundOf, rounds } = roundsOf(corners, fences, clockwise, () => true);
  const { left, covers } = facesOf(corners, fences, roundOf, rounds);
  return { corners, fences, left, clockwise, covers };
}

const origin = (fences: readonly Fence[], way: number): number => (way & 1 ? fences[way >> 1]!.v : fences[way >> 1]!.u);

function turnsOf({ xs, ys }: Corners, fences: readonly Fence[]): number[] {
  const from: number[][] = xs.map(() => []);
  const angles: number[] = [];
  for (const [e, { u, v }] of fences.entries()) {
    from[u]!.push(2 * e);
    from[v]!.push(2 * e + 1);
    const angle = Math.atan2(ys[v]! - ys[u]!, xs[v]! - xs[u]!);
    angles.push(angle, angle > 0 ? angle - Math.PI : angle + Math.PI);
  }
  const clockwise: number[] = [];
  for (const ways of from) {
    ways.sort((a, b) => angles[a]! - angles[b]!);
    for (const [i, way] of ways.entries()) clockwise[way] = ways[(i + ways.length - 1) % ways.length]!;
  }
  return clockwise;
}

/** A walk along the fences with the same face on the left, until it comes back to where it began. */
type Round = {
  readonly ways: readonly number[];
  /** In mm²; negative when it goes clockwise, round something that lies in the face. */
  readonly area: number;
};

/** All walks along the ways that are kept, and for each way the number of its walk. */
function roundsOf(
  { xs, ys }: Corners,
  fences: readonly Fence[],
  clockwise: readonly number[],
  keeps: (way: number) => boolean,
): { roundOf: number[]; rounds: Round[] } {
  const roundOf: number[] = new Array<number>(2 * fences.length).fill(-1);
  const rounds: Round[] = [];
  for (let first = 0; first < roundOf.length; first++) {
    if (roundOf[first]! >= 0 || !keeps(first)) continue;
    const ways: number[] = [];
    let twice = 0;
    let u = origin(fences, first);
    const [x, y] = [xs[u]!, ys[u]!];
    for (let way = first; roundOf[way]! < 0;) {
      roundOf[way] = rounds.length;
      ways.push(way);
      const v = origin(fences, way ^ 1);
      twice += (xs[u]! - x) * (ys[v]! - y) - (ys[u]! - y) * (xs[v]! - x);
      u = v;
      way = clockwise[way ^ 1]!;
      while (!keeps(way)) way = clockwise[way]!;
    }
    rounds.push({ ways, area: twice / 2 });
  }
  return { roundOf, rounds };
}

/**
 * Which face each way has on its left, and what covers it. Fences that hang together are an island; its outermost
 * round belongs to the face it lies in. Islands are taken from left to right, so that the one around comes first.
 */
function facesOf(
  corners: Corners,
  fences: readonly Fence[],
  roundOf: readonly number[],
  rounds: readonly Round[],
): { left: number[]; covers: number[][] } {
  const faces: number[] = new Array<number>(rounds.length).fill(-1);
  const covers: number[][] = [[]];
  for (const island of islandsOf(corners, fences, roundOf, rounds)) {
    const outer = island.rounds.reduce((least, one) => (rounds[one]!.area < rounds[least]!.area ? one : least));
    const around = nextToTheLeft(corners, fences, island.leftmost, (way) => faces[roundOf[way]!]! >= 0);
    faces[outer] = around === undefined ? 0 : faces[roundOf[around]!]!;
    const open = [outer];
    for (let round = open.pop(); round !== undefined; round = open.pop()) {
      for (const way of rounds[round]!.ways) {
        const across = roundOf[way ^ 1]!;
        if (faces[across]! >= 0) continue;
        faces[across] = covers.length;
        covers.push(changed(covers[faces[round]!]!, fences[way >> 1]!));
        open.push(across);
      }
    }
  }
  return { left: roundOf.map((round) => faces[round]!), covers };
}

/** What covers the other side of a fence. */
function changed(plies: readonly number[], { ends }: Fence): number[] {
  const now = [...plies];
  for (const { ply } of ends) {
    let i = now.length;
    while (i > 0 && now[i - 1]! > ply) i--;
    if (now[i - 1] === ply) now.splice(i - 1, 1);
    else now.splice(i, 0, ply);
  }
  return now;
}

function islandsOf(
  { xs }: Corners,
  fences: readonly Fence[],
  roundOf: readonly number[],
  rounds: readonly Round[],
): { rounds: number[]; leftmost: number }[] {
  const seen = new Set<number>();
  const islands: { rounds: number[]; leftmost: number }[] = [];
  for (const [first, { ways }] of rounds.entries()) {
    if (seen.has(first)) continue;
    const island = { rounds: [first], leftmost: origin(fences, ways[0]!) };
    seen.add(first);
    // The list grows while it is walked.
    for (const round of island.rounds) {
      for (const way of rounds[round]!.ways) {
        const u = origin(fences, way);
        if (xs[u]! < xs[island.leftmost]!) island.leftmost = u;
        const across = roundOf[way ^ 1]!;
        if (seen.has(across)) continue;
        seen.add(across);
        island.rounds.push(across);
      }
    }
    islands.push(island);
  }
  return islands.sort((a, b) => xs[a.leftmost]! - xs[b.leftmost]!);
}

/** The first way that a look to the left from a corner meets, walked so that the corner is on its left. */
function nextToTheLeft(
  { xs, ys }: Corners,
  fences: readonly Fence[],
  corner: number,
  known: (way: number) => boolean,
): number | undefined {
  const [x, y] = [xs[corner]!, ys[corner]!];
  let [best, bestX, bestLean]: [number | undefined, number, number] = [undefined, -Infinity, 0];
  for (const [e, { u, v }] of fences.entries()) {
    if (ys[u]! > y === ys[v]! > y || !known(2 * e)) continue;
    const lean = (xs[v]! - xs[u]!) / (ys[v]! - ys[u]!);
    const meets = xs[u]! + lean * (y - ys[u]!);
    if (meets > x || meets < bestX || (meets === bestX && lean <= bestLean)) continue;
    // The way down has what lies to its right, as we see it, on its left.
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
  const { corners, fences, left, clockwise, covers } = overlay;
  const kinds = covers.map((one) => (one.length > 0 ? kindOf(one) : undefined));
  const same = (way: number) => kinds[left[way]!] === kinds[left[way ^ 1]!];
  const one = covers.map((_, i) => i);
  const root = (face: number): number => {
    while (one[face] !== face) face = one[face] = one[one[face]!]!;
    return face;
  };
  for (let way = 0; way < left.length; way += 2) if (same(way)) one[root(left[way]!)] = root(left[way + 1]!);

  const { rounds } = roundsOf(corners, fences, clockwise, (way) => !same(way));
  const found = new Map<number, Round[]>();
  for (const round of rounds) {
    const face = root(left[round.ways[0]!]!);
    if (kinds[face] === undefined) continue;
    const patch = found.get(face);
    // The outer ring, the only one with an area above 0, goes first.
    if (!patch) found.set(face, [round]);
    else if (round.area > patch[0]!.area) patch.unshift(round);
    else patch.push(round);
  }
  const pointAt = (at: number): Point => ({ x: corners.xs[at]!, y: corners.ys[at]! });
  return [...found].flatMap(([face, all]) => {
    const area = all.reduce((sum, round) => sum + round.area, 0);
    if (!(area > SCRAP)) return [];
    const rings = all.map(({ ways }) => withoutIdleCorners(ways.map((way) => pointAt(origin(fences, way)))));
    return [{ kind: kinds[face]!, patch: { rings, area }, covers: covers[face]! }];
  });
}
