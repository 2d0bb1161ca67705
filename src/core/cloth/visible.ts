import { awayFrom, covers, ON } from './ring.ts';
import { overlayOf, patchesBy } from './faces.ts';
import type { PlyEnd } from './overlay.ts';
import type { Patch } from './faces.ts';
import type { Mark, Ply, PlyEdge, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** The front is the side that is up. */
export type SeenFrom = 'front' | 'back';

/** A part of a ply that shows. */
export type VisiblePart = Patch & {
  readonly ply: Ply;
  /** The face of the cloth that is seen. */
  readonly face: 'right' | 'wrong';
};

/** A straight stretch of the edge of a ply. */
export type EdgeStretch = {
  readonly ply: Ply;
  /** The whole edge it is a stretch of: its name, and whether it is a fold, held by a seam, or raw. */
  readonly edge: PlyEdge;
  readonly from: Point;
  readonly to: Point;
};

/** What is seen of a work from one side. */
export type Visible = {
  /** They do not overlap, and together they are the outline of the work. */
  readonly parts: readonly VisiblePart[];
  /** Edges that are seen. */
  readonly edges: readonly EdgeStretch[];
  /** Edges that layers nearer to the eye hide; where several lie on each other, the nearest that is not glued. Drawn dashed. */
  readonly hidden: readonly EdgeStretch[];
};

/**
 * What shows from the front (the side that is up) or from the back. Patches lie where the work lies; a drawing
 * of the back mirrors them, or turns the work over first and shows its front.
 *
 * @example
 * shown(folded).parts.map(({ face, area }) => [face, area]) // => [['right', 2000], ['wrong', 2000]]
 */
export function visibleFrom(work: Work, side: SeenFrom = 'front'): Visible {
  const overlay = overlayOf(work.plies);
  const front = side === 'front';
  // -1 and Infinity lie behind every ply.
  const behind = front ? -1 : Infinity;
  const nearest = (covers: readonly number[]): number => (front ? covers.at(-1) : covers[0]) ?? behind;
  const nearer = (a: number, b: number) => (front ? Math.max(a, b) : Math.min(a, b));

  const parts = patchesBy(overlay, nearest).map(({ kind, patch }): VisiblePart => {
    const ply = work.plies[kind]!;
    return { ...patch, ply, face: front ? ply.face : ply.face === 'right' ? 'wrong' : 'right' };
  });

  const seen = new Stretches(work.plies);
  const unseen = new Stretches(work.plies);
  const { xs, ys } = overlay.corners;
  for (const [e, { u, v, ends }] of overlay.edges.entries()) {
    const [here, there] = [
      nearest(overlay.covers[overlay.left[2 * e]!]!),
      nearest(overlay.covers[overlay.left[2 * e + 1]!]!),
    ];
    const shows = here === there ? undefined : ends.find(({ ply }) => ply === nearer(here, there));
    // Where edges lie on each other, the glued one of interfacing stands for none but itself.
    const cloth = ends.filter((one) => !isGlued(work.plies[one.ply]!, one.edge));
    const behindIt = cloth.length > 0 ? cloth : ends;
    const end = shows ?? behindIt.reduce((best, one) => (nearer(best.ply, one.ply) === one.ply ? one : best));
    (shows ? seen : unseen).add(end, { x: xs[u]!, y: ys[u]! }, { x: xs[v]!, y: ys[v]! });
  }
  return { parts, edges: seen.list(), hidden: unseen.list() };
}

/** Glue holds the raw edges of interfacing. */
const isGlued = ({ fusedTo, outline }: Ply, edge: number): boolean =>
  fusedTo !== undefined && outline[edge]!.fold === undefined;

/**
 * The marks that show from one side: those that sit on the ply nearest to the eye, or go through it. Others lie hidden
 * behind it.
 *
 * @example
 * marksShown(turned, 'front') // => [] when the snap is on the back
 */
export const visibleMarks = ({ plies, marks }: Work, side: SeenFrom = 'front'): Mark[] =>
  marks.filter(({ at, plies: on, slides }) => {
    const isHere = ({ outline }: Ply) => covers(outline, at) || (slides && awayFrom(outline, at) < 0.1);
    const nearest = side === 'front' ? plies.findLast(isHere) : plies.find(isHere);
    if (nearest === undefined || on.includes(nearest.id)) return nearest !== undefined;
    // What a strap runs through goes round all of the strap, folded over it or not.
    return slides === true && plies.some(({ id, piece }) => piece === nearest.piece && on.includes(id));
  });

/** Collects stretches of edges; those of one edge that follow each other become one. */
class Stretches {
  #plies: readonly Ply[];
  #found = new Map<number, PlyEnd & { stretches: { from: Point; to: Point }[] }>();

  constructor(plies: readonly Ply[]) {
    this.#plies = plies;
  }

  add({ ply, edge }: PlyEnd, from: Point, to: Point): void {
    const key = ply * 0x100000 + edge;
    const found = this.#found.get(key);
    if (found) found.stretches.push({ from, to });
    else this.#found.set(key, { ply, edge, stretches: [{ from, to }] });
  }

  list(): EdgeStretch[] {
    return [...this.#found.values()].flatMap(({ ply: level, edge: i, stretches }) => {
      const ply = this.#plies[level]!;
      const edge = ply.outline[i]!;
      return following(edge.from, stretches).map((stretch) => ({ ply, edge, ...stretch }));
    });
  }
}

/** Stretches of one straight edge in order from its start, joined where one begins at the end of another. */
function following(start: Point, stretches: readonly { from: Point; to: Point }[]): { from: Point; to: Point }[] {
  const away = (p: Point) => Math.hypot(p.x - start.x, p.y - start.y);
  const ordered = stretches
    .map(({ from, to }) => (away(from) <= away(to) ? { from, to } : { from: to, to: from }))
    .sort((a, b) => away(a.from) - away(b.from));
  const joined: { from: Point; to: Point }[] = [];
  for (const stretch of ordered) {
    const last = joined.at(-1);
    if (last && Math.abs(away(last.to) - away(stretch.from)) <= ON) last.to = stretch.to;
    else joined.push({ ...stretch });
  }
  return joined;
}
