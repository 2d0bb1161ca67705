import type { ClothFault } from './fault.ts';
import type { Edge, Point } from '../geometry/index.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Result } from '../measure/index.ts';

/** An edge of a ply, straight. Curves are cut into chords that leave them by at most 0.05 mm. */
export type PlyEdge = Edge & {
  /** The number of the fold this edge lies on: the cloth goes on in another ply that has the same number. */
  readonly fold?: number;
  /** The number of the stitching that holds this raw edge. */
  readonly held?: number;
  /** What keeps this raw edge from fraying. */
  readonly finish?: EdgeFinish;
};

/** How raw edges are kept from fraying, beside binding them. */
export type EdgeFinish = 'zigzag' | 'overlock' | 'pinked';

/** A closed ring of straight edges, counter-clockwise, where it lies now. */
export type PlyOutline = readonly PlyEdge[];

/** One layer of one piece. A piece that is folded lies in several plies. */
export type Ply = {
  /** Its number in this work. */
  readonly id: number;
  readonly piece: string;
  readonly material: string;
  readonly outline: PlyOutline;
  /** The side that is up. */
  readonly face: 'right' | 'wrong';
  /** Where the points of the piece, as it was cut, lie now. Tells which way nap and print run. */
  readonly transform: Transform;
  /** Cloth per length along gathers: 1 for flat cloth, 2 when it is gathered to half. */
  readonly fullness: number;
  /** The ply that this one is fused to. */
  readonly fusedTo?: number;
  /** Which one of several cut of one piece in this work, from 0; 0 if left out. */
  readonly copy?: number;
  /** The works that it was laid on another with, in the order in which they were laid. */
  readonly laid?: readonly LaidWork[];
  /** Part of piping, which stands out beyond the seam that catches it: no side of the work, and not measured with it. */
  readonly piping?: true;
  /** Laid along a curve or round corners: it tells by no one transform where it lay on its strip. */
  readonly bent?: true;
};

/** A work that was laid on another or caught in its seam, and keeps its sides by its name. */
export type LaidWork = {
  readonly work: string;
  /** Counted among the works of one name, in the order in which they were taken. */
  readonly nth: number;
  /** Where its points, as it lay before it was laid, lie now. */
  readonly transform: Transform;
};

/** A straight piece of a row of stitches and the plies it goes through, bottom to top as they lay when it was sewn. */
export type Run = { readonly from: Point; readonly to: Point; readonly plies: readonly number[] };

/** What a row of stitches is for. */
export type StitchKind =
  'seam' | 'topstitch' | 'edgestitch' | 'hem' | 'baste' | 'gather' | 'zigzag' | 'overlock' | 'slipstitch';

export type Stitch = {
  readonly id: number;
  readonly kind: StitchKind;
  /** Stitch type after ISO 4915: 301 lockstitch, 304 zigzag lockstitch, 504 three-thread overedge, 200 by hand. */
  readonly class: string;
  readonly runs: readonly Run[];
  /** Of a row that was parted, as a tube was pushed into itself: the row that it was a part of. It was sewn with that. */
  readonly partOf?: number;
  /** Of a pair sewn round, or a folded work sewn up: the stitch line, the first ply of the upper wall, and the gap. */
  readonly round?: SewnRound | undefined;
  /** Of a row that left an opening: the work was folded across it since, and where the opening lies is not known. */
  readonly creased?: true;
  /** Of a row round two openings, one work in the other. */
  readonly joins?: JoinedOpenings | undefined;
  /** How much of it is sewn over again, back and forth at its ends, in mm: forth, back and forth once more. */
  readonly secured?: number;
  /** Of a row that makes a casing: the room for the cord beside it. */
  readonly channel?: Channel;
};

/** The room for a cord, in mm: from a row to the fold of a turned edge, or to the other row that sews a laid strip down. */
export type Channel = {
  readonly width: number;
  readonly strip?: Pick<LaidWork, 'work' | 'nth'>;
  /** The elastic that was drawn in, and draws it up. */
  readonly elastic?: string;
};

export type JoinedOpenings = {
  /** The rows, by number, that the work outside and the one inside it were sewn round or up with. */
  readonly outer: number;
  readonly inner: number;
  /** Plies caught in between, by number. */
  readonly caught: readonly number[];
  /** Turned right side out, so that what was inside lies beyond the seam, to be pushed in. */
  readonly turned?: true;
};

export type SewnRound = {
  /** The stitch line as a ring; edges keep the names of the edges they run along. */
  readonly ring: readonly Edge[];
  /** The width of the allowance at each edge of the ring, in mm; 0 where the edge was not sewn. */
  readonly allowances: readonly number[];
  /** For each edge of the ring, whether the cloth is folded there, from one wall to the other. None if left out. */
  readonly folds?: readonly boolean[];
  /** The lowest ply of the upper wall, by number: what is hollow lies below it. */
  readonly over: number;
  /** Its allowances lie inside. */
  readonly turned?: true;
  /** It was put into another work, and is called so there. */
  readonly put?: Pick<LaidWork, 'work' | 'nth'>;
  /** Plies caught in between, by number. */
  readonly caught: readonly number[];
  readonly gap?: { readonly from: Point; readonly to: Point; readonly edge: string; readonly closed: boolean };
};

/** Something at a place: hardware, a notch, a boxed corner. It moves with its plies. */
export type Mark = {
  readonly kind: 'hardware' | 'notch' | 'box';
  readonly name: string;
  readonly at: Point;
  /** The plies it sits on or goes through, bottom to top. */
  readonly plies: readonly number[];
  /** Of hardware: what it is, where that is known: snap, button, ring. */
  readonly what?: string;
  /** Of hardware that a strap runs through, such as a ring. */
  readonly slides?: true;
  /** Of hardware: the step that set it, by its id. */
  readonly step?: string;
  /** Of a boxed corner: where the corner of the flat work lies. */
  readonly corner?: Point;
  /** Of a boxed corner: the side of the square measured from the seam lines, in mm. */
  readonly square?: number;
};

/** One edge that a seam met, with its length in mm. */
export type MetEdge = {
  readonly edge: string;
  readonly piece: string;
  readonly length: number;
  readonly allowance: number;
};

/** What a step did, for whoever keeps the ledger. */
export type StepRecord = {
  readonly did: string;
  readonly stitches?: readonly number[];
  readonly met?: readonly MetEdge[];
  /** Which faces touch in a seam. */
  readonly together?: 'right sides together' | 'wrong sides together' | 'right side to wrong side';
  /** Of a seam that is opened: how the layers lay on one another when it was sewn. */
  readonly sewnAs?: SewnAs;
  /** Area cut away, in mm². */
  readonly cutAway?: number;
  /** Length before and after, in mm, of an edge that was gathered or eased. */
  readonly drawnUp?: { readonly edge: string; readonly from: number; readonly to: number };
  /** What was cut apart: into how many alike, of which this is one, and along which lines of the first work it took. */
  readonly apart?: Apart;
  /** What a fold needs to be undone. */
  readonly undo?: Undo;
};

/** Layers on one another at the machine, from the table upward, before they are opened. */
export type SewnAs = Pick<Work, 'plies' | 'stitches' | 'marks'> & {
  /** The plies of the uppermost layer, by number. */
  readonly top: ReadonlySet<number>;
};

export type Apart = {
  readonly many: number;
  readonly cuts: readonly { readonly from: Point; readonly to: Point }[];
  /** Each row is sewn twice: also turned by a half about the middle of each work. */
  readonly twice?: true;
};

export type Undo = {
  readonly before: Pick<Work, 'plies' | 'stitches' | 'marks'>;
  readonly after: readonly Ply[];
  readonly over: Transform;
  /** For each ply made by the fold: the ply it came from, and whether it moved. */
  readonly came: ReadonlyMap<number, { readonly from: number; readonly moved: boolean }>;
};

/** Work in progress: a flat stack of plies, bottom to top, with its stitches, marks, and the steps done. */
export type Work = {
  readonly plies: readonly Ply[];
  readonly stitches: readonly Stitch[];
  readonly marks: readonly Mark[];
  readonly done: readonly StepRecord[];
};

/** What every sewing step gives. */
export type Sewn = Result<Work, ClothFault>;

/** The next free number for plies, folds and stitches. */
export function nextNumber(work: Work): number {
  let most = 0;
  for (const ply of work.plies) {
    most = Math.max(most, ply.id);
    for (const edge of ply.outline) most = Math.max(most, edge.fold ?? 0, edge.held ?? 0);
  }
  for (const stitch of work.stitches) most = Math.max(most, stitch.id);
  return most + 1;
}

/** What a step cut apart, told by the record that it added to those of the works it took; undefined if it cut nothing apart. */
export const cutApartIn = (works: readonly Work[], after: Work): Apart | undefined =>
  after.done.length > works.reduce((sum, { done }) => sum + done.length, 0) ? after.done.at(-1)?.apart : undefined;

/** Whether a ply was laid on another work, or put into one, under a name. */
export const wasLaidAs = ({ laid }: Pick<Ply, 'laid'>, { work, nth }: Pick<LaidWork, 'work' | 'nth'>): boolean =>
  laid?.some((one) => one.work === work && one.nth === nth) === true;

/** What was put into a work, as it is called there; `but` is left out. */
export const putsIn = (
  { stitches }: Pick<Work, 'stitches'>,
  but?: SewnRound['put'],
): Pick<LaidWork, 'work' | 'nth'>[] =>
  stitches.flatMap(({ round }) => (round?.put && round.put !== but ? [round.put] : []));

/** A row of which it is not known any more where what it was sewn round lies; where it left an opening, it says so. */
export function withoutRound(stitch: Stitch): Stitch {
  const { round } = stitch;
  const wasOpen = round?.allowances.some((width, i) => width === 0 && round.folds?.[i] !== true) === true;
  return { ...stitch, round: undefined, ...(wasOpen && { creased: true as const }) };
}

/** The same work with one more step in its book. */
export const noted = (work: Work, done: StepRecord): Work => ({ ...work, done: [...work.done, done] });
