import { distance } from '../geometry/point.ts';
import { inverse, transformPoint } from '../geometry/transform.ts';
import { overlayOf } from './faces.ts';
import { SAME } from '../measure/index.ts';
import type { Overlay } from './faces.ts';
import type { Ply, PlyEdge, Run, StitchKind, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** A stretch of raw edge that wear and water get at. */
export type ExposedEdge = { readonly ply: Ply; readonly edge: PlyEdge; readonly length: number };

/** Rows that shut the room between the layers they go through. Basting comes out; an overcast edge holds nothing shut. */
const shuts: Readonly<Record<StitchKind, boolean>> = {
  seam: true,
  topstitch: true,
  edgestitch: true,
  hem: true,
  slipstitch: true,
  baste: false,
  gather: false,
  zigzag: false,
  overlock: false,
};

/**
 * An opening that is narrower than a hand, in mm, or a smaller share of the way round its room, shelters what lies inside:
 * the ends of a hem, a casing or a French seam. From memory.
 */
const HAND = 75;
const SHARE = 0.1;

/** Half as wide as a row of stitches is taken to be, in mm. */
const THREAD = 0.1;

/**
 * The raw edges that something gets at: those on either side of the work, and those in a room between its layers that is
 * open, as the allowances inside a bag are. What lies in a room that is sewn shut, as between a bag and its lining, or in a
 * hem, is sheltered. The edges of what is fused are held by glue and left out.
 *
 * @example
 * exposedEdges(cut({ piece: 'flap', material: 'linen', outline: rectangle(80, 60) }).value).length // => 4
 */
export function exposedEdges({ plies, stitches }: Work): ExposedEdge[] {
  const runs = stitches.flatMap((stitch) => (shuts[stitch.kind] ? stitch.runs : []));
  const overlay = overlayOf([...plies, ...runs.map(threadOf)]);
  const rooms = new Rooms(overlay, plies, runs);
  const found = new Map<PlyEdge, { ply: Ply; edge: PlyEdge; length: number }>();
  const { xs, ys } = overlay.corners;
  for (const [e, { u, v, ends }] of overlay.edges.entries()) {
    const length = Math.hypot(xs[v]! - xs[u]!, ys[v]! - ys[u]!);
    for (const end of ends) {
      const ply = plies[end.ply];
      const edge = ply?.outline[end.edge];
      if (!ply || !edge || ply.fusedTo !== undefined || edge.fold !== undefined) continue;
      if (!rooms.isOpenBeside(e, end.ply)) continue;
      const before = found.get(edge);
      if (before) before.length += length;
      else found.set(edge, { ply, edge, length });
    }
  }
  return [...found.values()];
}

/** A row as a very narrow ply, so that the overlay is cut along it. */
function threadOf({ from, to, plies: [first] }: Run): Ply {
  const size = distance(from, to) || 1;
  const way = { x: ((to.x - from.x) / size) * THREAD, y: ((to.y - from.y) / size) * THREAD };
  const at = (p: Point, along: number, aside: number) => ({
    name: '',
    bulge: 0,
    from: { x: p.x + along * way.x - aside * way.y, y: p.y + along * way.y + aside * way.x },
  });
  const outline = [at(from, -1, -1), at(to, 1, -1), at(to, 1, 1), at(from, -1, 1)];
  const flat = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
  return { id: first ?? 0, piece: '', material: '', outline, face: 'right', transform: flat, fullness: 1 };
}

/** Two sides of a fold at one place: on one side of an edge of the overlay they shut what is between them, on both they are one sheet. */
type FoldHere = { readonly a: number; readonly b: number; readonly side: 'left' | 'right' | 'both' };

/**
 * The rooms between the layers. Over each face of the overlay a stack of n plies has n + 1 gaps, the lowest and the
 * highest of them outside; air goes from face to face round raw edges, and not through folds, cloth or rows of stitches.
 */
class Rooms {
  readonly #overlay: Overlay;
  readonly #plies: readonly Ply[];
  /** For each face: the levels of the plies there, without threads. */
  readonly #stacks: readonly (readonly number[])[];
  /** For each face: the lowest and the highest level that each row there goes through. */
  readonly #rows: readonly (readonly (readonly [number, number])[])[];
  readonly #first: readonly number[];
  /** Union-find over the gaps inside. */
  readonly #one: number[];
  readonly #open = new Map<number, boolean>();

  constructor(overlay: Overlay, plies: readonly Ply[], runs: readonly Run[]) {
    this.#overlay = overlay;
    this.#plies = plies;
    const level = new Map(plies.map(({ id }, i) => [id, i]));
    const reach = runs.map(({ plies: through }): readonly [number, number] => {
      const levels = through.flatMap((id) => level.get(id) ?? []);
      return [Math.min(...levels), Math.max(...levels)];
    });
    this.#stacks = overlay.covers.map((covers) => covers.filter((one) => one < plies.length));
    // The same row is the same value over each face that it crosses.
    this.#rows = overlay.covers.map((covers) =>
      covers.flatMap((one) => (one < plies.length ? [] : [reach[one - plies.length]!])),
    );
    let next = 0;
    this.#first = this.#stacks.map((stack) => (next += stack.length + 1) - stack.length - 1);
    this.#one = Array.from({ length: next }, (_, i) => i);
    this.#measure();
  }

  /** Whether air gets at the edge of a ply that ends at an edge of the overlay. */
  isOpenBeside(e: number, ply: number): boolean {
    const isFolded = this.#foldsAt(e).some(({ a, b, side }) => side !== 'both' && a < ply && ply < b);
    return [0, 1].some((side) => {
      const face = this.#overlay.left[2 * e + side]!;
      const stack = this.#stacks[face]!;
      const gap = stack.filter((one) => one < ply).length;
      if (!stack.includes(ply)) return !isFolded && this.#isOpen(face, gap);
      // Where it ends inside a fold, air comes from the gaps beside it.
      return isFolded && [gap, gap + 1].some((one) => this.#isOpen(face, one));
    });
  }

  #isOpen(face: number, gap: number): boolean {
    if (this.#isOutside(face, gap)) return true;
    return !this.#isSewn(face, gap) && this.#open.get(this.#root(this.#first[face]! + gap)) === true;
  }

  #isOutside(face: number, gap: number): boolean {
    return gap === 0 || gap === this.#stacks[face]!.length;
  }

  /** Whether a row shuts a gap: it goes through the plies on both sides of it. */
  #isSewn(face: number, gap: number): boolean {
    const stack = this.#stacks[face]!;
    const [below, above] = [stack[gap - 1], stack[gap]];
    if (below === undefined || above === undefined) return false;
    return this.#rows[face]!.some(([low, high]) => low <= below && above <= high);
  }

  #root(gap: number): number {
    let at = gap;
    while (this.#one[at] !== at) at = this.#one[at] = this.#one[this.#one[at]!]!;
    return at;
  }

  /** Joins the gaps between which air goes, and measures how far each room is open. */
  #measure(): void {
    const { edges, corners, left } = this.#overlay;
    const ways = edges.map((_, e) => this.#waysAcross(e));
    for (const [e, across] of ways.entries()) {
      const [l, r] = [left[2 * e]!, left[2 * e + 1]!];
      for (const [a, b] of across) {
        if (this.#isOutside(l, a) || this.#isOutside(r, b)) continue;
        this.#one[this.#root(this.#first[l]! + a)] = this.#root(this.#first[r]! + b);
      }
    }
    const sizes = new Map<number, { mouth: number; round: number }>();
    for (const [e, { u, v }] of edges.entries()) {
      const length = Math.hypot(corners.xs[v]! - corners.xs[u]!, corners.ys[v]! - corners.ys[u]!);
      const [l, r] = [left[2 * e]!, left[2 * e + 1]!];
      const [here, there] = [this.#roomsOver(l), this.#roomsOver(r)];
      const mouths = new Set(
        ways[e]!.flatMap(([a, b]) => {
          if (this.#isOutside(l, a) === this.#isOutside(r, b)) return [];
          return this.#isOutside(l, a) ? this.#root(this.#first[r]! + b) : this.#root(this.#first[l]! + a);
        }),
      );
      for (const room of new Set([...here, ...there])) {
        if (!mouths.has(room) && here.has(room) && there.has(room)) continue;
        const size = sizes.get(room) ?? { mouth: 0, round: 0 };
        size.round += length;
        if (mouths.has(room)) size.mouth += length;
        sizes.set(room, size);
      }
    }
    for (const [room, { mouth, round }] of sizes) this.#open.set(room, mouth >= HAND && mouth >= SHARE * round);
  }

  #roomsOver(face: number): Set<number> {
    const rooms = new Set<number>();
    for (let gap = 1; gap < this.#stacks[face]!.length; gap++)
      if (!this.#isSewn(face, gap)) rooms.add(this.#root(this.#first[face]! + gap));
    return rooms;
  }

  /** The gaps on the left of an edge of the overlay and those on its right between which air goes. */
  #waysAcross(e: number): [number, number][] {
    const { left } = this.#overlay;
    const [l, r] = [left[2 * e]!, left[2 * e + 1]!];
    const [here, there] = [this.#stacks[l]!, this.#stacks[r]!];
    const folds = this.#foldsAt(e);
    const found: [number, number][] = [];
    for (let a = 0; a <= here.length; a++) {
      if (this.#isSewn(l, a) || isShut(here, a, folds, 'left')) continue;
      for (let b = 0; b <= there.length; b++) {
        if (this.#isSewn(r, b) || isShut(there, b, folds, 'right')) continue;
        const low = Math.max(here[a - 1] ?? -1, there[b - 1] ?? -1);
        const high = Math.min(here[a] ?? Infinity, there[b] ?? Infinity);
        if (low >= high || folds.some((fold) => isApart(here, a, there, b, fold))) continue;
        // On a seam line the layers on one side are sewn to those on the other.
        const sewn = this.#rows[l]!.some((row) => this.#rows[r]!.includes(row) && row[0] <= low && high <= row[1]);
        if (sewn) continue;
        found.push([a, b]);
      }
    }
    return found;
  }

  /** The folds on an edge of the overlay: each with its two plies, the first on the left where they lie on both sides. */
  #foldsAt(e: number): FoldHere[] {
    const { edges, corners, left } = this.#overlay;
    const { u, v, ends } = edges[e]!;
    const middle = { x: (corners.xs[u]! + corners.xs[v]!) / 2, y: (corners.ys[u]! + corners.ys[v]!) / 2 };
    const here = this.#stacks[left[2 * e]!]!;
    const folded = ends.flatMap(({ ply: level, edge }) => {
      const ply = this.#plies[level];
      const fold = ply?.outline[edge]?.fold;
      if (!ply || fold === undefined) return [];
      return [{ level, fold, at: transformPoint(inverse(ply.transform), middle), isLeft: here.includes(level) }];
    });
    return folded.flatMap((one, i) =>
      folded.slice(i + 1).flatMap((other): FoldHere[] => {
        if (other.fold !== one.fold || distance(other.at, one.at) > SAME) return [];
        if (one.isLeft !== other.isLeft) {
          const [a, b] = one.isLeft ? [one.level, other.level] : [other.level, one.level];
          return [{ a, b, side: 'both' }];
        }
        const [a, b] = [Math.min(one.level, other.level), Math.max(one.level, other.level)];
        return [{ a, b, side: one.isLeft ? 'left' : 'right' }];
      }),
    );
  }
}

/** Whether a gap lies inside a fold on its side. */
const isShut = (stack: readonly number[], gap: number, folds: readonly FoldHere[], on: 'left' | 'right'): boolean =>
  folds.some(({ a, b, side }) => side === on && (stack[gap - 1] ?? -1) >= a && (stack[gap] ?? Infinity) <= b);

/** Whether a sheet that goes on from the left to the right lies between two gaps. */
function isApart(here: readonly number[], a: number, there: readonly number[], b: number, fold: FoldHere): boolean {
  if (fold.side !== 'both') return false;
  return (here[a - 1] ?? -1) >= fold.a !== (there[b - 1] ?? -1) >= fold.b;
}
