/** What is to be laid, on what, and how. All lengths in mm. */
import type { Edition } from '../measure/index.ts';
import type { Outline } from '../geometry/index.ts';
import type { Grain, Piece } from '../project/pattern.ts';

/** A piece to cut, as the pattern gives it: its cut line, with y running up the piece. */
export type Wanted = {
  name: string;
  label?: string;
  outline: Outline;
  count: number;
  /** Lengthwise if left out: the piece's own height runs along the selvage. */
  grain?: Grain | undefined;
  /** up: never turned by a half. */
  nap?: 'up' | 'any' | undefined;
  /** How many of them are mirror images, as of a left and a right. */
  mirrored?: number;
  /** The edge of a half pattern that lies on the fold: opened out there, it is the whole piece. */
  fold?: string;
  /** Pieces of one group take the same place on the repeat, at this height above their lowest point. */
  match?: { group: string; at: number };
};

export type Demand = readonly Wanted[];

/** A cloth to lay on. Cloths are used in the order they are listed. */
export type Cloth = {
  name: string;
  /**
   * bolt: bought by length. pre-cut: bought by the piece, as fat quarters are. offcut: what is there already, and costs
   * nothing.
   */
  kind: 'bolt' | 'pre-cut' | 'offcut';
  /** From edge to edge, with the selvages. */
  width: number;
  /** What is left off at each side. None if left out. */
  selvage?: number;
  /** Along the selvage. A bolt's, if it is known how much there is; without it, as much as is needed. */
  length?: number;
  /** How many there are of a pre-cut or an offcut. Left out: as many as needed of a pre-cut, one offcut. */
  count?: number;
  nap?: 'none' | 'one way';
  /** The height of the print's repeat, along the selvage. Every piece of this cloth begins at the same place of it. */
  repeat?: number;
  /** Folded lengthwise, selvage to selvage: every cut goes through two layers, the fold lies at the left. */
  folded?: boolean;
};

export type LayOptions = {
  /** free: with scissors. straight cuts: every cut goes from edge to edge, as a rotary cutter and a ruler go. */
  manner?: 'free' | 'straight cuts';
  /** Between pieces. None if left out. */
  gap?: number | undefined;
  /** Kept free along every edge of the cloth. None if left out. */
  edge?: number | undefined;
  /** The same seed and the same number of tries give the same layout. */
  seed?: number;
  /** How many layouts are tried for each cloth. Left out, few enough for a moment's wait, or until the time is up. */
  tries?: number;
  /** When the search ends at the latest. */
  seconds?: number;
  /** Asked often: should the search end now? The best layout so far is the answer then. */
  cancelled?: () => boolean;
  selling?: Selling;
  /** In whose marks findings speak. Metric if left out. */
  edition?: Edition;
};

/** How cloth is sold, and what is added for the wash. */
export type Selling = {
  /** The shop cuts in steps of so many mm. */
  step?: number | undefined;
  /** Lengthwise, in per cent of the length before washing. */
  shrinkage?: number | undefined;
  /** Lost where the cut end is straightened. */
  straightening?: number | undefined;
};

/** A piece of a pattern as a demand. */
export function wanted(piece: Piece): Wanted {
  const { name, label, cutOutline: outline, count, grain, nap } = piece;
  return { name, label, outline, count, grain, nap };
}
