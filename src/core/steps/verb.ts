/** What a file in verbs/ says of its verb. */
import type { CautionKey, Foot, Material, Tool } from './tools.ts';
import type { Edition } from '../measure/index.ts';
import type { Field, Fields, ValuesOf, WorksOf } from './fields.ts';
import type { DartOnPiece } from '../cloth/dart.ts';
import type { PleatLine } from '../cloth/pleat.ts';
import type { Sewn } from '../cloth/index.ts';

/** What every step of a project is done with. */
export type StepContext = {
  /** Usual distances are round numbers of one edition. */
  readonly edition: Edition;
  /** The measure called seam, in mm; 0 where there is none. */
  readonly seam: number;
  /** Which one of several works of a name is laid on another now: counted from 1, and on with each call. */
  readonly nthOf: (work: string) => number;
  /** What plays a role: cloth, interfacing, hardware; undefined where the file names nothing. */
  readonly kindOf: (role: string) => string | undefined;
  /** What the material of a role is as hardware, and how large; undefined where the file names nothing. */
  readonly hardwareOf: (role: string) => Pick<Material, 'hardware' | 'across' | 'thickness'> | undefined;
  /** Of a piece that is cut like another and smaller: the other, and how much smaller at each edge, in mm. */
  readonly setInto: (piece: string) => SetInto | undefined;
  /** The fold lines of a piece that is pleated under pieces, measured from the bottom or the left of its cut size. */
  readonly pleatsOf: (piece: string) => PiecePleats | undefined;
  /** Whether a piece is cut on the bias. */
  readonly onBias: (piece: string) => boolean;
  /** The darts of a piece, as they lie on it when it is cut. */
  readonly dartsOf: (piece: string) => readonly DartOnPiece[];
};

export type PiecePleats = {
  readonly from: 'bottom' | 'left';
  readonly folds: readonly PleatLine[];
  /** They lie along an edge, and make no pockets. */
  readonly isAlong?: true;
};

export type SetInto = { piece: string; left: number; right: number; bottom: number; top: number };

/** What is pressed in a step beside the seams it sews: a fold or an allowance, the whole work, or a whole interfacing. */
export type Pressing = 'a fold' | 'the work' | 'an interfacing';

/** A distance to measure in a step: `Lay it … from the top.`, and how much. */
export type Measured = { readonly says: string; readonly length: number };

/** What others need to know of a verb, and nobody reads off its name. */
export type Traits = {
  /** It cuts cloth away. */
  readonly cuts?: true;
  /** The work lies turned over afterwards; its folds were seams before. */
  readonly turnsOver?: true;
  /** It turns a work right side out through its gap. */
  readonly turnsOut?: true;
  /** It bonds an interfacing by heat. */
  readonly fuses?: true;
  /** It folds cloth along the pleats of a piece: many folds at once, and a tall drawing. */
  readonly pleats?: true;
  /** It sets hardware. */
  readonly setsHardware?: true;
  /** Its first work is laid on the second; with other verbs the second comes to the first. */
  readonly laysFirst?: true;
  /** Its first row is sewn before it folds. */
  readonly sewsBeforeFolding?: true;
  /** It is done on the wrong side, which its drawing shows if there is more to see. */
  readonly onWrongSide?: true;
  /** The iron is used before the machine; with other verbs what is sewn is pressed. */
  readonly ironsFirst?: true;
  /** Its handling is done at the iron. */
  readonly handledAtIron?: true;
  /** The foot of the machine that it needs, whatever it sews. */
  readonly foot?: Foot;
};

/**
 * A verb of the trade. One of its fields has its name and comes first; the works it takes are taken in the order of its
 * fields.
 */
type VerbOf<Name extends string, F extends Fields, Step, Works> = Traits & {
  readonly name: Name;
  readonly fields: F;
  /** The field whose work keeps its name; the first work that is taken if left out. */
  readonly keeps?: keyof F & string;
  /** Minutes that handling takes somebody who sews at home, beside the sewing: matching, pinning, folding, turning. */
  readonly handling: number;
  /** What it does in a plain sentence, without a full stop. `material` finds the material of a role. */
  title(step: Step, material?: MaterialOf): string;
  /** Distances that have to be measured, each in a sentence with … where the length stands, in mm. */
  measured?(step: Step): readonly Measured[];
  /** The usual tools. */
  tools(step: Step, material?: MaterialOf): readonly Tool[];
  /** What is pressed; nothing if left out. */
  pressing?(step: Step): Pressing | undefined;
  /** What can hurt beside the tools. `material` finds the material of a role. */
  cautions?(step: Step, material: MaterialOf): readonly CautionKey[];
  /** Does it to the cloth. Faults are those of the cloth. */
  apply(step: Step, works: Works, setting: StepContext): Sewn;
};

export type Verb<Name extends string, F extends Fields> = VerbOf<Name, F, ValuesOf<F>, WorksOf<F>>;

type Any = Readonly<Record<string, unknown>>;

/** Finds the material of a role; undefined where the file names nothing. */
export type MaterialOf = (role: string) => Material | undefined;

/** Any verb. What its functions are given must come from its own fields. */
export type AnyVerb = VerbOf<string, Fields, Any, Any>;

/** A verb as its file writes it; the types of its values are those of its fields. */
export const verb = <const Name extends string, const F extends Fields>(
  file: Verb<Name, F> & { readonly fields: Readonly<Record<Name, Field>> },
): Verb<Name, F> => file;
