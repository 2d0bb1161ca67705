/** What laying gives. All lengths in mm. */
import type { Diagnostic } from '../measure/index.ts';
import type { Outline, Point } from '../geometry/index.ts';
import type { StraightCut } from './cuts.ts';
import type { Purchase } from './purchase.ts';

/** A piece where it lies. */
export type Placement = {
  piece: string;
  /** Counted from 1 among its alike. */
  number: number;
  /** How it was turned, in degrees counter-clockwise. */
  angle: number;
  mirrored: boolean;
  /** Where it lies on the cloth: x from the left edge, selvage included, y from the cut end. */
  outline: Outline;
  /** The lower left corner of the box round it, and its size. */
  at: Point;
  size: { width: number; height: number };
  /** How many pieces the cut gives: 2 through folded cloth, unless it lies on the fold. */
  layers: 1 | 2;
};

/** One cloth with what is laid on it. */
export type LaidCloth = {
  cloth: string;
  kind: 'bolt' | 'pre-cut' | 'offcut';
  /** Counted from 1 among its alike. */
  number: number;
  /** As it lies: half the width where it is folded. */
  width: number;
  /** The part between the selvages, as it lies. */
  from: number;
  to: number;
  /** Used of a bolt; the whole of a pre-cut or an offcut. */
  length: number;
  folded: boolean;
  placements: Placement[];
  /** The order of cuts, for straight cuts. */
  cuts: StraightCut[];
  /** The share of the usable cloth that pieces take, up to 1. */
  share: number;
};

export type Layout = {
  manner: 'free' | 'straight cuts';
  cloths: LaidCloth[];
  /** From bolts, together. */
  length: number;
  /** How many pre-cuts. */
  preCuts: number;
  /** What no layout can undercut: of the length where a bolt is used, and of the number of pre-cuts where none is. */
  bound: { length: number; preCuts: number };
  /** All is laid, and it takes no more than the bound: no layout takes less. */
  proven: boolean;
  /** The share of the used cloth that pieces take, up to 1. */
  share: number;
  /** What is not on any cloth. */
  left: { piece: string; count: number }[];
  /** What to ask for in the shop, where a bolt is used. */
  buy: Purchase;
  findings: Diagnostic[];
};
