import type { Path } from './path.ts';

/** What a line or a surface means. The look of each is in pens.ts; its words for the legend too. */
export type ShapeRole =
  // surfaces
  | 'right side'
  | 'wrong side'
  | 'second cloth'
  | 'second cloth, wrong side'
  | 'third cloth'
  | 'third cloth, wrong side'
  | 'leather'
  | 'leather, wrong side'
  | 'lining'
  | 'lining, wrong side'
  | 'interfacing'
  | 'batting'
  | 'tape'
  | 'allowance'
  | 'held'
  | 'trimmed'
  | 'layer'
  | 'layers 1'
  | 'layers 2'
  | 'layers 3'
  | 'layers 4'
  | 'layers 5'
  // lines of cloth
  | 'cut'
  | 'stitch'
  | 'valley'
  | 'mountain'
  | 'raw edge'
  | 'fold edge'
  | 'seam'
  | 'basting'
  | 'zigzag'
  | 'pinked'
  | 'size 1'
  | 'size 2'
  | 'size 3'
  | 'size 4'
  | 'size 5'
  | 'size 6'
  | 'hand stitch'
  | 'hidden'
  | 'face'
  | 'notch'
  | 'grain'
  | 'hardware'
  | 'teeth'
  // lines about the drawing
  | 'arrow'
  | 'plate'
  | 'dimension'
  | 'leader'
  | 'break'
  | 'scale bar';

/** A line or surface. `now` marks the one thing to look at: the fold being made, the line being sewn. */
export type PathShape = {
  readonly kind: 'path';
  readonly name: string;
  readonly role: ShapeRole;
  readonly path: Path;
  readonly now?: boolean;
  /** How far the motif is turned, clockwise in degrees, so that it runs as the cloth lies. */
  readonly turn?: number;
};

/** One line of lettering; `x`, `y` is the anchor on its baseline, `size` the height of its type in mm. Always upright. */
export type TextShape = {
  readonly kind: 'text';
  readonly name: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly strong?: boolean;
  readonly now?: boolean;
};

export type Shape = PathShape | TextShape;

/**
 * A drawing, ready for a screen, a page or a test. All measures are mm of the sheet it is shown on, x to the right and
 * y down from the upper left corner, as screens and pages have it. Shapes lie in painting order, and each has a name
 * of its own.
 */
export type Scene = {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  /** mm on the sheet for 1 mm of cloth. */
  readonly scale: number;
  readonly shapes: readonly Shape[];
  /** The same in sentences, with the same numbers, for whoever cannot see the drawing. */
  readonly text: readonly string[];
};

/** The room a drawing is shown in, in mm: the whole width, and how tall what is drawn to scale may become. */
export type Fit = { width: number; height?: number };

/** One CSS pixel in mm: an inch has 96 of them (CSS Values and Units 4, section 6.2). */
export const MM_PER_PIXEL = 25.4 / 96;

/** The narrowest room that drawings are laid out for: 256 px, a 320 px wide screen less its margins and a box's. */
export const NARROWEST = 256 * MM_PER_PIXEL;
