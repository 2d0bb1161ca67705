import { boxOf } from '../cloth/size.ts';
import type { Box, Point } from '../geometry/index.ts';
import type { SeenFrom } from '../cloth/visible.ts';
import type { Work } from '../cloth/work.ts';
import type { Onto } from './path.ts';
import type { Shape } from './scene.ts';

/** A work seen from one side, at its place among the other things drawn to the same scale. */
export type View = {
  readonly work: Work;
  readonly side: SeenFrom;
  /** The box round the work, in mm of cloth, as it lies. */
  readonly box: Box;
  /** Where the lower left corner of its box comes to be, in mm of cloth. */
  readonly at: Point;
};

/** Something drawn to the same scale beside works that lie flat, such as a bag that stands; in mm of cloth. */
export type Inset = {
  readonly width: number;
  readonly height: number;
  /** Its shapes, with the lower left corner of the whole at the origin. */
  shapes: (name: string, onto: Onto) => Shape[];
};

/** A work with its lower left corner at a place; seen from the back, left and right change. */
export const viewOf = (work: Work, side: SeenFrom, at: Point = { x: 0, y: 0 }): View => ({
  work,
  side,
  box: boxOf(work.plies),
  at,
});

/** Where points of the work come to be on the sheet. */
export const viewed =
  ({ side, box, at }: View, onto: Onto): Onto =>
  ({ x, y }) =>
    onto({ x: at.x + (side === 'front' ? x - box.x : box.x + box.width - x), y: at.y + y - box.y });

/** The box of the work where it is drawn, in mm of cloth. */
export const boxInView = ({ box, at }: View): Box => ({ ...at, width: box.width, height: box.height });
