/** What a page tells of the steps: small enough to travel with it, so that nothing has to be made up to read it. */
import type { Diagnostic, IronLimit, Minutes, Size } from '../../src/core/index.ts';

/** A step as a page tells it. Lengths in mm. */
export type StepFacts = {
  id: string;
  /** Its number among the steps that are done, from 1, and how many there are. */
  n: number;
  of: number;
  /** A sentence without its full stop. */
  title: string;
  /** The name of its result. */
  makes: string;
  /** What it measures after the step, and the depth of what stands. */
  size: Size;
  depth: number;
  minutes: Minutes;
  tools: string[];
  /** How hot an iron may be, and for what. */
  iron?: IronLimit;
  /** Where it can hurt: of each usual caution its title and its first sentence. */
  hurts: { title: string; sentence: string }[];
  note?: string;
  findings: Pick<Diagnostic, 'severity' | 'message' | 'fix'>[];
};

/** A line of the table of all steps. */
export type StepRow = Pick<StepFacts, 'id' | 'title' | 'makes' | 'size' | 'depth' | 'minutes'>;

/** A part of a work where the same stack lies everywhere. Lengths in mm. */
export type LayerPlace = {
  /** From 1: those that are sewn first, and of these the one of most layers. */
  n: number;
  /** A point of it, from the left and from the bottom of the work. */
  at: { x: number; y: number };
  /** Its layers, from the bottom up where they lie so everywhere: of which piece, of what, and how full. */
  stack: { piece: string; material: string; fullness: number }[];
  /** Its share of the work's area, 0 to 1. */
  share: number;
  /** Whether a row of this step goes through it. */
  sewn: boolean;
};
