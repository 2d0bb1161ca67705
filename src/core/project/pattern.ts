/** What resolveProject makes of a project file: every number in mm, in one edition, with the chosen options applied. */
import type { Hardware } from '../steps/index.ts';
import type { Diagnostic, Place, Edition, Grid } from '../measure/index.ts';
import type { Dimension, Formula } from '../formula/index.ts';
import type { Outline, Point } from '../geometry/index.ts';
import type { PatternCache } from './cache.ts';
import type { EdgePleatPlan } from './edge-pleats.ts';
import type { PleatPlan } from './pleats.ts';
import type { ProjectFile } from './schema.ts';

/** Where a measure comes from: the file's number, a formula, the pleats of a piece, or the size of a piece. */
export type Source = 'stated' | 'derived' | 'pleats' | 'piece';

/** What a learner may choose for a measure. All but `kind` in mm, whole numbers for a count, or plain numbers. */
export type Adjustable = {
  kind: 'length' | 'count' | 'number';
  min: number;
  max: number;
  step: number;
  /** The lesson’s own value. */
  lesson: number;
};

export type Measure = {
  name: string;
  label: string;
  /** What a sentence calls it after “the”, where the label is no part of a sentence. */
  spoken?: string;
  /** mm, mm², or a plain number, as `dimension` says. */
  value: number;
  dimension: Dimension;
  source: Source;
  /** A plain number that counts nothing, such as a fullness of 1.5. */
  isRatio?: true;
  formula?: Formula | undefined;
  adjustable?: Adjustable;
  note?: string;
};

export type Size = { width: number; height: number };

export type Grain = 'lengthwise' | 'crosswise' | 'bias' | 'any';

/** A fold line across a piece, in the coordinates of its cut outline’s box. */
export type FoldLine = {
  kind: 'mountain' | 'valley';
  /** The raw edge it is measured from, and how far from it in mm. */
  edge: 'bottom' | 'right' | 'top' | 'left';
  at: number;
  from: Point;
  to: Point;
  label?: string;
  /** The pocket it belongs to, counted from 1 at the bottom. */
  pocket?: number;
  /** The pleat along an edge that it belongs to, counted from 1 at the left or the bottom. */
  pleat?: number;
};

/**
 * Pleats along an edge. The fold lines run square to it, so many mm (`at`) from the left or the bottom of the box round
 * the cut line.
 */
export type EdgePleats = EdgePleatPlan & { edge: string; from: 'left' | 'bottom' };

/** A mark on the cut edge. */
export type Notch = { edge: string; at: Point; label?: string };

/**
 * A dart: its width between the legs on the stitch line, its length from there to its point, the allowance there, through
 * which the legs run straight on, in mm; where its middle lies on the cut edge, and the ways along the edge and into
 * the piece.
 */
export type Dart = {
  edge: string;
  width: number;
  length: number;
  allowance: number;
  middle: Point;
  along: Point;
  inward: Point;
};

/** A piece to cut. Its coordinates start at the lower left of the box round its cut outline. */
export type Piece = {
  name: string;
  label: string;
  /** The role of its material; '' when the file names none. */
  material: string;
  count: number;
  /** The stitch line. */
  outline: Outline;
  /** The cut line. */
  cutOutline: Outline;
  /** The edges of both lines that stand for a corner which was rounded or cut off. */
  corners: readonly string[];
  /** Seam allowance in mm at each edge of the stitch line. */
  allowance: Record<string, number>;
  /** The box round the cut line. */
  size: Size;
  /** The box round the stitch line; of a pleated piece, once it is folded. */
  sewn: Size;
  grain: Grain;
  nap: 'up' | 'any';
  folds: FoldLine[];
  notches: Notch[];
  darts: Dart[];
  pleats?: PleatPlan;
  edgePleats?: EdgePleats;
  /** The piece it is cut like, as an interfacing is. */
  insetFrom?: string;
  /** How much smaller it is cut than that at each side, in mm. */
  inset?: { left: number; right: number; bottom: number; top: number };
  /** It lies ready cut when the class begins. */
  preCut?: true;
  /** A long strip that may be joined from several. */
  joined?: true;
  /** What joining two of them takes of each, in mm; left out where neither the piece nor the project has a seam. */
  joinSeam?: number;
  note?: string;
};

/** Whether something goes where it should, and with how much room. */
export type HoldCheck = {
  /** What is held, as the file says it. */
  what: string;
  /** Its published name, or the file’s words. */
  thing: string;
  /** Width across and height as it goes in, in mm. */
  size: Size;
  /** Where its size is published; 'project file' when the author gives the size. */
  source: string;
  /** The piece, and the pocket of it counted from 1 at the bottom. */
  piece: string;
  pocket?: number;
  /** It goes between the piece and what the piece is sewn to. */
  behind?: true;
  place: Place;
  /** How the work lies when it goes in: before the folds that close it, or with them. */
  state: 'open' | 'closed';
  fits: boolean;
  /**
   * Width: the opening less the thing less the ease at both sides. Height: for a closed piece the same; for a pleat
   * pocket how far the thing’s top stays below the finished top edge. Less than 0 is too little.
   */
  room: Size;
  /** The share of its height that the pocket covers, up to 1, and the least share wanted. */
  covered: number;
  cover: number;
  /** How much of it stands out above the pocket’s top, in mm; 0 if it sinks in. */
  shows: number;
  /** The same in one plain sentence. */
  sentence: string;
};

export type OptionChoice = { label: string; on: boolean; default: boolean; note?: string };

/** One of several, by the names of the file. */
export type Choice = {
  label: string;
  chosen: string;
  default: string;
  note?: string;
  of: Record<string, { label: string; note?: string }>;
};

/** The sizes that it is made in. `measures` are those that a size gives, by name. */
export type Sizes = {
  label: string;
  chosen: string;
  default: string;
  note?: string;
  of: string[];
  measures: string[];
};

/** A material in its role. */
export type Role = {
  role: string;
  label: string;
  /** The entry of materials.yaml. */
  use: string;
  /** How many, for what is counted. */
  count?: number;
  /** It lines something, and is drawn in a tone of its own. */
  lining?: true;
  material?: Material;
  note?: string;
};

/** `per`: what the amount buys, a length in mm or one of what is counted; `words`: the same as the file says it. */
export type Price = { amount: number; currency?: string; per: number | 'spool' | 'pack' | 'piece'; words: string };

/** An entry of materials.yaml in mm and one edition. */
export type Material = {
  name: string;
  label: string;
  kind: 'cloth' | 'interfacing' | 'batting' | 'by length' | 'thread' | 'hardware';
  /** Of one layer, mm. */
  thickness?: number;
  /** Usable width between the selvages, mm. */
  width?: number;
  nap: 'none' | 'one way';
  /** The hottest iron it takes, °C. */
  heat?: number;
  /** How hot the iron must be for it to fuse, °C. */
  fuses?: number;
  /** How long the iron stays on one place to fuse it, and how long it then lies still, in s. */
  presses?: number;
  cools?: number;
  /** Set where it is made to line things. */
  lining?: true;
  /** Of hardware: what it is. */
  hardware?: Hardware;
  /** Of a button its diameter, of a ring, slider or hook the widest strap that goes through, of a zip both its tapes, mm. */
  across?: number;
  /** Of a zip: how far its stops are from the ends of its tapes, mm, and what its teeth are made of. */
  stops?: number;
  teeth?: 'metal' | 'plastic';
  /** The point of the needle that goes through it well, where it matters. */
  needle?: 'universal' | 'jeans' | 'leather';
  /** Set where holes of pins and needles do not close again. */
  holes?: 'stay';
  /** Of cloth: set where a raw edge does not fray. */
  frays?: false;
  /** How much shorter it comes out of the wash, in per cent of its length. */
  shrinks?: number;
  /** How much narrower, in per cent of its width. */
  shrinksAcross?: number;
  /** Of goods by length: what each end of a piece loses, mm. */
  ends?: number;
  /** Lost where the shop's end is cut straight, mm. */
  straightening?: number;
  /** `each`: the length in mm the shop cuts in steps of or winds on a spool, or how many a pack holds. */
  sold?: { by: 'length' | 'spool' | 'pack' | 'piece'; each?: number };
  price?: Price;
  note?: string;
};

/** What the ledger of steps starts from, beside the steps themselves. */
export type Making = {
  /** The measure called seam, in mm: the allowance of a step that names none. */
  seam?: number;
  /** Pieces that the features leave out, each with the option or the one of a choice that does. */
  leftOut: Record<string, string>;
  /** The thickest stack in mm that goes under the presser foot, and who says so. */
  machine: { lifts: number; source: string };
};

/** A size that the file promises, in mm. `within`: how far off the work may be. */
export type Promised = Size & { within?: number };

/** The finished work as the last step leaves it. `of`: its name, where the file gives one; `thickness` where it promises one. */
export type Finished = Promised & { of?: string; open?: Promised; thickness?: number };

/** How pieces are laid on cloth, in mm. */
export type Cutting = { manner: 'free' | 'straight cuts'; gap: number; edge: number };

/** What a pattern was worked out from. Its steps and its matched prints are read there once they are asked for. */
export type Origin = {
  file: ProjectFile;
  /** The edition of its numbers. Words follow the edition of the pattern, as the setting of a drawing does. */
  edition: Edition;
};

/**
 * All that is known of a project in one edition. It is a value: a copy with another field is as good as the first, and
 * whatever is asked of it follows from the fields it has.
 */
export type Pattern = {
  title: string;
  summary?: string;
  edition: Edition;
  /** The edition a number without a unit belongs to. */
  home: Edition;
  grid: Grid;
  /** By name, the file’s own first and in its order, then the numbers that pieces and pleats give. */
  measures: Record<string, Measure>;
  /** By name, in the file’s order; without what the options leave out. */
  pieces: Record<string, Piece>;
  materials: Record<string, Role>;
  options: Record<string, OptionChoice>;
  choices: Record<string, Choice>;
  sizes?: Sizes;
  holds: HoldCheck[];
  cutting: Cutting;
  /** How it is made, where the file says so. */
  making?: Making;
  finished?: Finished;
  findings: Diagnostic[];
  origin: Origin;
  /** What was asked of it before. It saves time and says nothing of its own. */
  cache: PatternCache;
};
