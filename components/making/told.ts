/** What a page tells of the steps: small enough to travel with it, so that nothing has to be made up to read it. */
import type { Finding, Minutes, Size } from '../../src/core/index.ts';

/** A step as a page tells it. Lengths in mm. */
export type ToldStep = {
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
  /** Keys of the usual cautions. */
  cautions: string[];
  note?: string;
  findings: Pick<Finding, 'severity' | 'message' | 'mend'>[];
};

/** A line of the table of all steps. */
export type ToldLine = Pick<ToldStep, 'id' | 'title' | 'makes' | 'size' | 'depth' | 'minutes'>;

/** A part of a work where the same stack lies everywhere. Lengths in mm. */
export type ToldPlace = {
  /** From 1, the thickest first. */
  n: number;
  /** A point of it, from the left and from the bottom of the work. */
  at: { x: number; y: number };
  /** The stack from the bottom up: the name of each layer's piece, its material, and how full it lies. */
  stack: { piece: string; material: string; fullness: number }[];
  /** Its share of the work's area, 0 to 1. */
  share: number;
  /** Whether a row of this step goes through it. */
  sewn: boolean;
};
