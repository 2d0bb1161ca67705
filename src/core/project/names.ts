import { singleBlanks } from '../measure/index.ts';

/** Names of the numbers that pieces give to formulas. */

/** A number that a piece gives to formulas. */
export type Part = { what: 'width' | 'length' | 'height' | 'finished width' | 'finished height' } | NumberedPart;

/** `n` counts folds and pockets from 1 at the bottom. */
export type NumberedPart = { what: 'fold' | 'pocket depth' | 'pocket top'; n: number };

const sizes = ['width', 'length', 'height', 'finished width', 'finished height'] as const;

/**
 * What a part of a piece is called in formulas.
 *
 * @example partName('pocket strip', { what: 'length' }) // => 'pocket strip length'
 * @example partName('pocket strip', { what: 'pocket depth', n: 2 }) // => 'pocket strip pocket 2 depth'
 */
export function partName(piece: string, part: Part): string {
  if (!('n' in part)) return `${piece} ${part.what}`;
  return part.what === 'fold'
    ? `${piece} fold ${part.n}`
    : `${piece} pocket ${part.n} ${part.what.slice('pocket '.length)}`;
}

/** The parts of a piece; with pleats also its folds and pockets, up to `pockets` of them. */
export function partsOf(pockets: number): Part[] {
  const each = Array.from({ length: pockets }, (_, k) => k + 1);
  return [
    ...sizes.map((what) => ({ what })),
    ...Array.from({ length: 2 * pockets }, (_, k): Part => ({ what: 'fold', n: k + 1 })),
    ...each.map((n): Part => ({ what: 'pocket depth', n })),
    ...each.map((n): Part => ({ what: 'pocket top', n })),
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
export function namedParts(piece: string, label: string, pockets: number): readonly NamedPart[] {
  const key = JSON.stringify([piece, label, pockets]);
  let parts = named.get(key);
  if (!parts) {
    if (named.size > 500) named.clear();
    parts = partsOf(pockets).map((part) => ({
      part,
      name: partName(singleBlanks(piece), part),
      label: `${label}, ${'n' in part ? partName('', part).trim() : spokenParts[part.what]}`,
      spoken: spokenPart(part, label, pockets > 0),
    }));
    named.set(key, parts);
  }
  return parts;
}

/** As a sentence calls a part: `way to fold 2`, `cut width of the flap`. */
function spokenPart(part: Part, label: string, isPleated: boolean): string {
  if (part.what === 'fold') return `way to fold ${part.n}`;
  if ('n' in part) return `${part.what.slice('pocket '.length)} of pocket ${part.n}`;
  const piece = /^\p{Lu}\p{Lu}/u.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1);
  return `${spokenParts[part.what]} of the ${part.what === 'height' && isPleated ? 'pleated ' : ''}${piece}`;
}

const spokenParts: Record<Exclude<Part['what'], 'fold' | 'pocket depth' | 'pocket top'>, string> = {
  width: 'cut width',
  length: 'cut length',
  height: 'height',
  'finished width': 'finished width',
  'finished height': 'finished height',
};
