import { cutOrder } from '../drawing/piece.ts';
import { stiffens } from '../project/lists.ts';
import type { Drawn } from './nested.ts';
import type { Pattern, Piece } from '../project/pattern.ts';

/** Pieces that one template serves; never empty. */
export type Alike = readonly [Drawn, ...Drawn[]];

type Materials = Pattern['materials'];

/** Kinds that are bought by their measure: nobody cuts a zip round a template. */
const bought: readonly (string | undefined)[] = ['hardware', 'thread'];

/** Whether a piece is cut from something that lies flat under a template. */
export const takesTemplate = (piece: Piece, materials: Materials): boolean =>
  !bought.includes(materials[piece.material]?.material?.kind);

/**
 * Pieces together that have one outline, the same allowances, folds, notches and grain: what a maker marks and cuts is
 * the same, whatever it is cut from. What stiffens keeps apart from cloth, since it has no right side to turn up.
 */
export function groupAlike(pieces: readonly Drawn[], materials: Materials): Alike[] {
  const groups = new Map<string, [Drawn, ...Drawn[]]>();
  for (const piece of pieces) {
    const key = shapeOf(piece, stiffens(piece, materials));
    const group = groups.get(key);
    if (group) group.push(piece);
    else groups.set(key, [piece]);
  }
  return [...groups.values()];
}

/** All that a template shows of a piece, to a hundredth of a millimetre. */
function shapeOf({ cutOutline, outline, folds, notches, darts, grain, nest }: Drawn, stiff: boolean): string {
  const ring = (edges: Piece['outline']) => edges.map(({ from, bulge }) => [from.x, from.y, bulge]);
  const creases = folds.map(({ kind, edge, at, from, to, label }) => [kind, edge, at, from, to, label]);
  const all = [
    ring(cutOutline),
    ring(outline),
    creases,
    notches.map(({ at, label }) => [at, label]),
    darts,
    nest?.map((one) => ring(one.cutOutline)),
    grain,
    stiff,
  ];
  return JSON.stringify(all, (_, value: unknown) =>
    typeof value === 'number' ? Math.round(value * 100) / 100 : value,
  );
}

/**
 * How many to cut of what, for all the pieces of one template.
 *
 * @example orderOf([front, back, lining], materials) // => 'Cut 2 of print, 1 of lining'
 */
export function orderOf(pieces: Alike, materials: Materials): string {
  const counts = new Map<string, Piece>();
  for (const piece of pieces) {
    const before = counts.get(piece.material)?.count ?? 0;
    counts.set(piece.material, { ...piece, count: before + piece.count });
  }
  const [first, ...rest] = [...counts.values()].map((piece) => cutOrder(piece, materials));
  return [first, ...rest.map((order) => order.replace(/^Cut /, ''))].join(', ');
}
