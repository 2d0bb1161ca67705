/**
 * What a page and its worker say to each other. All of it is plain values, so that it travels as it is.
 *
 * A page sends a project once, then requests of it at a size. Each part of the page that asks is a client with a number;
 * it has one request at a time, and a newer one replaces it.
 */
import type {
  Drift,
  Edition,
  Fit,
  HandoutSetting,
  Materials,
  Pointing,
  ProjectFile,
  ProjectWay,
  Scene,
} from '../../src/core/index.ts';
import type { ClassRequest, DrawnLayout, LayoutRequest, ClassPlan, PricedList } from './cutting-types.ts';
import type { PlaceOnSheet } from '../words/layer-study/layers-on-sheet.ts';
import type { LayerPlace } from '../words/layer-study/layers.ts';
import type { StepFacts } from '../words/step/view.ts';
import type { SeamSizes } from '../words/seam-study/sums.ts';

/** A project as `resolveProject` reads it. */
export type ProjectSource = { file: ProjectFile; materials: Materials };

/** What a learner chose. Lengths in mm. */
export type ChosenSize = ProjectWay & { edition: Edition; values: Record<string, number> };

/** A drawing of the making; lengths in mm. */
export type Drawing =
  /** What all steps come to. */
  | { of: 'whole' }
  | { of: 'step'; id: string }
  /** A step on its way: from 0, before, to 1, after. */
  | { of: 'play'; id: string; at: number }
  /** The work after a step: how many layers lie where, as thick as a material is taken to be, by role. */
  | { of: 'layers'; id: string; thickness: Record<string, number> }
  /** The same, cut through at a place, from 1. */
  | { of: 'cut'; id: string; place: number; thickness: Record<string, number> }
  /** The same, its layers lifted off each other. */
  | { of: 'layers apart'; id: string }
  | { of: 'seam'; sizes: SeamSizes; press: 'open' | 'to second' }
  | { of: 'drift'; drift: Drift };

/** A drawing, and where the places of the layers lie on it. */
export type Drawn = { scene: Scene; places?: PlaceOnSheet[] };

/** A document to print. `trial`: a few sheets are written and thrown away, so that the next request finds all ready. */
export type DocumentRequest = {
  name: string;
  setting: HandoutSetting;
  /** The addresses of the fonts. */
  fonts: { regular: string; strong: string };
  /** Where a recording shows each step, by the step’s id: “from 1:35 to 2:10”. */
  times: Readonly<Record<string, string>>;
  trial?: boolean;
};

export type PrintedDocument = { bytes: Uint8Array<ArrayBuffer>; pages: number; findings: string[] };

/** What can be asked, by kind: what goes with the request, and what the answer is. */
export type Kinds = {
  /** All steps that can be done, in order. */
  steps: { request: object; answer: StepFacts[] };
  /**
   * All steps that can be done, in order, and their drawings in some room, by the steps' ids. The first that is looked at
   * comes at once, and all of them last.
   */
  making: {
    request: { fit: Fit; first: string | undefined };
    answer: { steps: StepFacts[]; drawings: Record<string, Scene>; isWhole: boolean };
  };
  /** The most layers after each step, in the order of the steps, as a table says them. */
  'layer counts': { request: object; answer: string[] };
  /** The most layers of each step that was asked for, as a text says them; none where an option leaves the step out. */
  'layers said': { request: { asked: readonly string[] }; answer: (string | undefined)[] };
  /** The places of the work after a step; none where an option leaves the step out. */
  places: { request: { step: string }; answer: LayerPlace[] };
  /** What shows of the work after a step, to be pointed at; undefined where an option leaves the step out. */
  pointing: { request: { step: string; side: 'front' | 'back'; shows: string }; answer: Pointing | undefined };
  /** Undefined where an option leaves the step out. */
  drawing: { request: { drawing: Drawing }; answer: Drawn | undefined };
  /** Better and better layouts come one after the other. */
  layout: { request: { wish: LayoutRequest; fit: Fit }; answer: DrawnLayout | undefined };
  /** What one maker buys. */
  list: { request: { currency: string }; answer: PricedList };
  class: { request: { currency: string; wish: ClassRequest }; answer: ClassPlan };
  /** Undefined after a trial. */
  document: { request: { document: DocumentRequest }; answer: PrintedDocument | undefined };
};

export type Kind = keyof Kinds;
export type Answer<K extends Kind> = Kinds[K]['answer'];
export type Request<K extends Kind = Kind> = { [Each in Kind]: { kind: Each } & Kinds[Each]['request'] }[K];

/** From the page to the worker. `by` is the client, `n` the number of its request. */
export type ToWorker =
  | ({ kind: 'project'; project: string } & ProjectSource)
  | { kind: 'ask'; by: number; n: number; project: string; size: ChosenSize; request: Request }
  | { kind: 'stop'; by: number };

/** From the worker to the page. */
export type FromWorker = { by: number; n: number } & (
  | { kind: 'answer'; value: Answer<Kind>; isLast: boolean }
  /** How far the work is, 0 to 1. */
  | { kind: 'progress'; share: number }
  /** A sentence for the learner. */
  | { kind: 'error'; message: string }
  /** A part of the worker could not be fetched. */
  | { kind: 'unfetched' }
);
