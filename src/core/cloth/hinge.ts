import { areaOf, endsAt, splitOff } from './ring.ts';
import { backwards, carve, renamed } from './carve.ts';
import { difference } from '../geometry/index.ts';
import type { Line } from '../geometry/index.ts';
import type { PlyEdge, PlyOutline } from './work.ts';

/** A line to fold along. What lies left of it, seen along its way, stays; what lies right of it moves. */
export type Hinge = {
  readonly line: Line;
  /** What the new edges are called; `fold` if left out. */
  readonly name?: string;
  /** Only what also lies left of these lines moves; the cloth is clipped along them, as at an inner corner. */
  readonly within?: readonly Line[];
};

/** A part that a hinge, told by its place in the list, cuts out of a ring. */
export type CutOut = { readonly outline: PlyOutline; readonly hinge: number };

type Cut = Hinge & { readonly i: number; readonly fresh: Omit<PlyEdge, 'from'> };

/** What stays of a ring and what moves about each hinge. The new folds are numbered from `number`. */
export function cutAtHinges(
  ring: PlyOutline,
  hinges: readonly Hinge[],
  number: number,
): { stays: PlyOutline[]; moves: CutOut[] } {
  if (hinges.every(({ line }) => endsAt(ring, line))) return { stays: [ring], moves: [] };
  const cuts = hinges.flatMap((hinge, i): Cut[] => {
    if (endsAt(ring, hinge.line)) return [];
    return [{ ...hinge, i, fresh: { name: hinge.name ?? 'fold', bulge: 0, fold: number + i } }];
  });
  const [first] = cuts as [Cut, ...Cut[]];
  if (cuts.length === 1) {
    const { left, right } = carve(ring, first.line, first.within ?? [], first.fresh);
    return { stays: left, moves: right.map((outline) => ({ outline, hinge: first.i })) };
  }
  const moves = cuts.flatMap((cut) => beyond(ring, cut, cut.fresh).map((outline) => ({ outline, hinge: cut.i })));
  return { stays: moves.length > 0 ? left(ring, cuts, moves) : [ring], moves };
}

/** What lies beyond a hinge and within its bounds. */
function beyond(ring: PlyOutline, { line, within = [] }: Hinge, fresh: Omit<PlyEdge, 'from'>): PlyOutline[] {
  let parts = splitOff(ring, line, fresh, -1);
  for (const bound of within) parts = parts.flatMap((part) => splitOff(part, bound, { name: 'clip', bulge: 0 }, 1));
  return parts;
}

/** Areas that differ by less, in mm², are the same. */
const SAME_AREA = 1e-3;

/** The ring without what moves. */
function left(ring: PlyOutline, cuts: readonly Cut[], moves: readonly CutOut[]): PlyOutline[] {
  // Round a shape that only bulges outward, all that lies beyond some hinge moves: straight cuts will do.
  const straight = cuts.reduce(
    (rings, { line, fresh }) => rings.flatMap((one) => splitOff(one, line, fresh, 1)),
    [ring],
  );
  const gone = moves.reduce((sum, { outline }) => sum + areaOf(outline), 0);
  const rest = straight.reduce((sum, one) => sum + areaOf(one), 0);
  if (Math.abs(areaOf(ring) - gone - rest) < SAME_AREA) return straight;
  const parts = moves.map(({ outline }) => outline);
  return renamed(difference([ring], parts), [...parts.map(backwards), ring]);
}
