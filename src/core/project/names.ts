import { inSentence, singleBlanks } from '../measure/index.ts';

/** Names of the numbers that pieces give to formulas. */

/** A number that a piece gives to formulas. */
export type Part =
  | { what: 'width' | 'length' | 'height' | 'finished width' | 'finished height' }
  | EdgePleatPart
  | NumberedPart
  | LinePart;

/** A number of a piece that is pleated along an edge: what the pleats take, how deep one is, and the edge once pleated. */
export type EdgePleatPart = { what: 'takeup' | 'pleat depth' | 'pleated edge' };

/** The length of an edge on a line, or all round where no edge is named. */
export type LinePart = { what: 'stitch line' | 'cut line'; edge?: string };

/** `n` counts folds and pockets from 1 at the bottom. */
export type NumberedPart = { what: 'fold' | 'pocket depth' | 'pocket top'; n: number };

const sizes = ['width', 'length', 'height', 'finished width', 'finished height'] as const;
const pleatSizes = ['takeup', 'pleat depth', 'pleated edge'] as const;

/**
 * What a part of a piece is called in formulas.
 *
 * @example partName('pocket strip', { what: 'length' }) // => 'pocket strip length'
 * @example partName('pocket strip', { what: 'pocket depth', n: 2 }) // => 'pocket strip pocket 2 depth'
 */
export function partName(piece: string, part: Part): string {
  if (isLine(part)) return [piece, part.edge ?? '', part.what].filter(Boolean).join(' ');
  if (!('n' in part)) return `${piece} ${part.what}`;
  return part.what === 'fold'
    ? `${piece} fold ${part.n}`
    : `${piece} pocket ${part.n} ${part.what.slice('pocket '.length)}`;
}

const isLine = (part: Part): part is LinePart => part.what === 'stitch line' || part.what === 'cut line';

/**
 * The parts of a piece; with pleats also its folds and pockets, up to `pockets` of them, or what pleats `along` an edge
 * come to, and with `edges` the lengths of those and all round.
 */
export function partsOf(pockets: number | 'along', edges?: readonly string[]): Part[] {
  if (pockets === 'along') return [...partsOf(0, edges), ...pleatSizes.map((what) => ({ what }))];
  const each = Array.from({ length: pockets }, (_, k) => k + 1);
  return [
    ...sizes.map((what) => ({ what })),
    ...Array.from({ length: 2 * pockets }, (_, k): Part => ({ what: 'fold', n: k + 1 })),
    ...each.map((n): Part => ({ what: 'pocket depth', n })),
    ...each.map((n): Part => ({ what: 'pocket top', n })),
    ...(edges ? [{}, ...edges.map((edge) => ({ edge: singleBlanks(edge) }))] : []).flatMap((one): Part[] => [
      { what: 'stitch line', ...one },
      { what: 'cut line', ...one },
    ]),
  ];
}

/** The parts of a piece with what formulas call them, what learners read, and what a sentence says after “the”. */
export type NamedPart = { part: Part; name: string; label: string; spoken: string };

const named = new Map<string, readonly NamedPart[]>();

/**
 * The parts of a piece by name and label. Kept, because the same few lists are asked for at every move of a slider.
 *
 * @example namedParts('flap', 'Flap', 0)[0] // => { part: { what: 'width' }, name: 'flap width', label: 'Flap, cut width', spoken: 'cut width of the flap' }
 */
export function namedParts(
  piece: string,
  label: string,
  pockets: number | 'along',
  edges?: readonly string[],
): readonly NamedPart[] {
  const key = JSON.stringify([piece, label, pockets, edges]);
  let parts = named.get(key);
  if (!parts) {
    if (named.size > 500) named.clear();
    parts = partsOf(pockets, edges).map((part) => ({
      part,
      name: partName(singleBlanks(piece), part),
      label: `${label}, ${'n' in part || isLine(part) ? partName('', part).trim() : spokenParts[part.what]}`,
      spoken: spokenPart(part, label, pockets !== 'along' && pockets > 0),
    }));
    named.set(key, parts);
  }
  return parts;
}

/** As a sentence calls a part: `way to fold 2`, `cut width of the flap`. */
function spokenPart(part: Part, label: string, isPleated: boolean): string {
  if (part.what === 'fold') return `way to fold ${part.n}`;
  if ('n' in part) return `${part.what.slice('pocket '.length)} of pocket ${part.n}`;
  if (isLine(part)) {
    const edge = part.edge === undefined ? 'length' : `length of the ${part.edge}`;
    return `${edge} on the ${part.what} of the ${inSentence(label)}`;
  }
  return `${spokenParts[part.what]} of the ${part.what === 'height' && isPleated ? 'pleated ' : ''}${inSentence(label)}`;
}

const spokenParts: Record<Exclude<Part['what'], NumberedPart['what'] | LinePart['what']>, string> = {
  width: 'cut width',
  length: 'cut length',
  height: 'height',
  'finished width': 'finished width',
  'finished height': 'finished height',
  takeup: 'takeup of the pleats',
  'pleat depth': 'pleat depth',
  'pleated edge': 'pleated edge',
};
