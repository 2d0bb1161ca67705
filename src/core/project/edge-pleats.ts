/**
 * Pleats along an edge of a piece: knife, box and inverted ones, folded square to the edge along the whole piece.
 *
 * A fold of cloth of depth d lies on the cloth beside it and takes 2 d of the edge: a knife pleat is one such fold, box
 * and inverted pleats are two, turned away from each other or towards each other (NIMI, Government of India, CITS Dress
 * Making Trade Practical, p. 203 and 204: width = 2 x depth x number + pleated width; box and inverted pleats are twice
 * as wide as deep).
 */
import { SAME } from '../measure/index.ts';

export type PleatKind = 'knife' | 'box' | 'inverted';

/** More pleats than anyone folds into one edge; a guard against a slip of the key. */
export const MOST_PLEATS = 60;

/** How many depths of cloth a pleat of a kind takes up. */
export const depthsOf = (kind: PleatKind): 2 | 4 => (kind === 'knife' ? 2 : 4);

export type EdgePleatWish = {
  kind: PleatKind;
  /** The way the folded edge of a knife pleat points, seen from the right side: along the edge or against it. */
  faces: 'onward' | 'back';
  count: number;
  /** From the folded edge of a pleat in to the fold beneath it, mm. */
  depth: number;
  /** The edge between its stitch lines, lying flat, mm. */
  flat: number;
  /** From the middle of one pleat to the next; evenly over the edge if left out. */
  every?: number;
};

/** A fold line square to the edge, so many mm along the flat edge from its low end on the stitch line. */
export type EdgePleatFold = { at: number; kind: 'mountain' | 'valley'; pleat: number };

export type EdgePleatPlan = {
  kind: PleatKind;
  count: number;
  depth: number;
  /** What all pleats together take of the edge, mm. */
  takeUp: number;
  /** The edge between its stitch lines, lying flat and pleated, mm. */
  flat: number;
  pleated: number;
  /** From the middle of one pleat to the next, mm; 0 for a single one. */
  every: number;
  folds: EdgePleatFold[];
};

/** Why an edge cannot be pleated so; `amount` says by how much, in mm. */
export type EdgePleatFault = {
  code: 'pleats-not-whole' | 'too-many-pleats' | 'no-depth' | 'no-room' | 'pleats-overlap' | 'beyond-the-side';
  field: 'count' | 'depth' | 'every';
  amount?: number;
};

type Planned = { ok: true; value: EdgePleatPlan } | { ok: false; fault: EdgePleatFault };

const fail = (code: EdgePleatFault['code'], field: EdgePleatFault['field'], amount?: number): Planned => ({
  ok: false,
  fault: { code, field, ...(amount !== undefined && { amount }) },
});

/**
 * The fold lines of pleats along an edge. The pleats lie in the middle of even stretches of it; those that are deeper
 * than their stretch lie from one end to the other, each on part of the next. With `every` they lie as one group in the
 * middle.
 *
 * Faults: `no-room` when they take up the whole edge; `beyond-the-side` when a fold beneath would reach past an end of
 * the edge; `pleats-overlap` when box pleats would hide one another, or inverted ones be caught in one another.
 *
 * @example
 * planEdgePleats({ kind: 'box', faces: 'onward', count: 8, depth: 25, flat: 1200 }).value.pleated // => 400
 */
export function planEdgePleats({ kind, faces, count, depth, flat, every: asked }: EdgePleatWish): Planned {
  if (!Number.isInteger(count) || count < 1) return fail('pleats-not-whole', 'count');
  if (count > MOST_PLEATS) return fail('too-many-pleats', 'count');
  if (!(depth > SAME)) return fail('no-depth', 'depth', -depth);
  const takeUp = depthsOf(kind) * count * depth;
  const pleated = flat - takeUp;
  if (!(pleated > SAME)) return fail('no-room', 'depth', -pleated);
  // What a pleat covers of the pleated edge.
  const wide = kind === 'knife' ? depth : 2 * depth;
  const most = count > 1 ? (pleated - wide) / (count - 1) : 0;
  if (wide > pleated + SAME) return fail('beyond-the-side', 'depth', wide - pleated);
  const even = pleated / count;
  const every = count === 1 ? 0 : (asked ?? Math.min(even, most));
  if (count > 1 && every > most + SAME) return fail('beyond-the-side', 'every', (count - 1) * (every - most));
  if (count > 1 && !(every > SAME)) return fail('pleats-overlap', asked === undefined ? 'depth' : 'every', SAME);
  // Box pleats lie on top; what lies beneath an inverted one may reach no farther than the fold of the next.
  const apart = kind === 'box' ? 2 * depth : kind === 'inverted' ? depth : 0;
  if (count > 1 && apart > every + SAME) {
    return fail('pleats-overlap', asked === undefined ? 'depth' : 'every', apart - every);
  }
  const first = (pleated - (count - 1) * every) / 2;
  const folds = Array.from({ length: count }, (_, i): EdgePleatFold[] => {
    // Where its middle lies on the pleated edge, and so where it begins on the flat one.
    const middle = first + i * every + i * depthsOf(kind) * depth;
    const lines = (...all: [number, EdgePleatFold['kind']][]) =>
      all.map(([at, fold]) => ({ at: middle + at * depth, kind: fold, pleat: i + 1 }));
    if (kind === 'box') return lines([0, 'valley'], [1, 'mountain'], [3, 'mountain'], [4, 'valley']);
    if (kind === 'inverted') return lines([0, 'mountain'], [1, 'valley'], [3, 'valley'], [4, 'mountain']);
    return faces === 'onward' ? lines([0.5, 'mountain'], [1.5, 'valley']) : lines([0.5, 'valley'], [1.5, 'mountain']);
  }).flat();
  return { ok: true, value: { kind, count, depth, takeUp, flat, pleated, every, folds } };
}
