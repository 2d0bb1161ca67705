/** One step of making a project up, as the ledger keeps it. */
import type { Diagnostic, Place } from '../measure/index.ts';
import type { NeedlePoint } from './needle.ts';
import type { Sewing } from './sewing.ts';
import type { Size } from './pattern.ts';
import type { StitchKind, Work } from '../cloth/index.ts';
import type { CautionKey, Instruction, Minutes, Tool, VerbName } from '../steps/index.ts';

/** A row of stitches that a step adds. */
export type SewnRow = {
  /** Its number in the work. */
  id: number;
  kind: StitchKind;
  /** Stitch type after ISO 4915: 301 lockstitch, 304 zigzag, 504 three-thread overedge, 200 by hand. */
  class: string;
  /** Length of the row in mm. */
  length: number;
  /** The most layers it goes through, and how many of them are interfacing. */
  layers: number;
  fused: number;
  /** How thick the thickest place of the row is, in mm, and where, in the coordinates of the step's work. */
  thickness: number;
  at: { x: number; y: number };
  /** Thread it takes, all threads together, in mm. */
  thread: number;
  /** One layer of the thickest cloth it goes through, in mm; 0 where that is not known. */
  cloth: number;
  /** The needle's point that a material of it asks for. */
  point?: NeedlePoint;
};

/** The least heat that something in the heap takes, in °C, and what takes no more. */
export type IronLimit = { celsius: number; material: string };

/**
 * A wait: the iron stays on one place, or the work lies still until it is cold. Without `seconds` only the maker of the
 * material knows how long; `from` says whose number it is.
 */
export type Timer = { what: 'press' | 'cool'; seconds?: number; from: 'author' | 'material' | 'maker' };

/** The thickest place of a work: how thick and how many plies, and where, in the coordinates of the step's work. */
export type Thickest = { mm: number; layers: number; at: { x: number; y: number } };

export type Step = {
  id: string;
  /** A plain sentence made from the verb, without a full stop: Join the pocket panel and the facing at the top. */
  title: string;
  verb: VerbName;
  /** What its verb was told, lengths in mm. */
  instruction: Instruction;
  /** Its place in the file: ['steps', 3]. */
  place: Place;
  /** The pieces and earlier results it takes, by name. */
  takes: string[];
  /** The name of its result. Later steps take it by that name. */
  makes: string;
  /** What it took, by name, as it was before. */
  before: Record<string, Work>;
  after: Work;
  /** How large the work is after the step, in mm: the box round it as it lies, or as it stands from seam to seam. */
  size: Size;
  /** The depth that boxed corners give, in mm; 0 for what lies flat. */
  depth: number;
  /** What the author says it measures now, in mm. */
  nowMeasures?: Partial<Size> & { round?: number; within?: number };
  /** The rows of stitches that this step adds. */
  stitches: SewnRow[];
  minutes: Minutes;
  /** How many works are made alike: 4 where a step hems each of 4 napkins. */
  times: number;
  /** It is done before the class begins. */
  doneBefore?: true;
  /** No session of a class ends between this step and the next. */
  keepWithNext?: true;
  /** Plain names of the tools, for a list: sewing machine, iron, ruler. */
  tools: string[];
  /** Those of the tools that the kit knows, by key. */
  uses: Tool[];
  cautions: CautionKey[];
  /** Where an iron is used: how hot it may be for the most delicate material in the heap. */
  iron?: IronLimit;
  /** Where something is sewn: how the machine is set for it. */
  sewing?: Sewing;
  /** What is waited for at the iron. */
  timers: Timer[];
  /** The most layers at one place, interfacing counted. */
  readonly layersMost: number;
  /** How many of those are interfacing. */
  readonly fusedMost: number;
  /** The thickest place. A material whose thickness is not known counts as a quilting cotton. */
  readonly thicknessMost: Thickest;
  note?: string;
  /** How it looks when it is right, and what to do if it went wrong, in the author's words. */
  shouldLook?: string;
  ifWrong?: string;
  /** A sentence tells the maker what to mind of the turn of cloth. */
  readonly advice: string | undefined;
};

/** The whole ledger: the steps that can be done, what stands in the way of the others, and every result by name. */
export type Ledger = {
  steps: Step[];
  findings: Diagnostic[];
  /** Every piece, and every result as the last step that made it left it. */
  results: Record<string, Work>;
  /** The name of the last step's result, or of what the file says is finished. */
  finished?: string;
};
