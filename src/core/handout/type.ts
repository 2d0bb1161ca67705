import { TYPE } from '../drawing/dimension.ts';
import { MARGIN, papers } from './paper.ts';
import type { HandoutSetting } from './handout.ts';

/** A printer's point in mm. */
export const POINT = 25.4 / 72;

/** Large print: no letter is smaller (RNIB, Clear Print and Large Print guidelines, 14 pt and up; from memory). */
export const LARGEST_SMALL = 14 * POINT;

/** Sizes of type, and the width of text, in mm. */
export type Type = {
  /** From margin to margin. */
  readonly width: number;
  readonly small: number;
  readonly text: number;
  readonly heading: number;
  readonly title: number;
  /** How much larger than on a screen drawings are laid out, so that their letters keep to the smallest size. */
  readonly drawing: number;
};

const normal: Omit<Type, 'width'> = {
  small: TYPE,
  text: 11 * POINT,
  heading: 14 * POINT,
  title: 20 * POINT,
  drawing: 1,
};

const large: Omit<Type, 'width'> = {
  small: LARGEST_SMALL,
  text: 16 * POINT,
  heading: 19 * POINT,
  title: 25 * POINT,
  drawing: LARGEST_SMALL / TYPE,
};

export const typeOf = ({ paper, largePrint = false }: HandoutSetting): Type => ({
  ...(largePrint ? large : normal),
  width: papers[paper].width - 2 * MARGIN,
});

/** From one line of reading matter to the next, as a share of its type. */
export const LEADING = 1.38;
