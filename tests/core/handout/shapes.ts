/** Pieces that take more than one sheet. */
import { polygon, rectangle, withCorners } from '../../../src/core/index.ts';
import type { Outline } from '../../../src/core/index.ts';

/** An apron's corner: nothing lies in its upper right. */
export const lShape: Outline = polygon([
  { x: 0, y: 0 },
  { x: 520, y: 0 },
  { x: 520, y: 150 },
  { x: 160, y: 150 },
  { x: 160, y: 600 },
  { x: 0, y: 600 },
]);

/** A gore, as of a skirt or a sail: no edge is upright or level. */
export const slanting: Outline = polygon([
  { x: 0, y: 12 },
  { x: 330, y: 0 },
  { x: 190, y: 640 },
  { x: 140, y: 655 },
]);

/** A mat with large round corners, so that arcs run over the joints. */
export const rounded: Outline = (() => {
  const cut = withCorners(rectangle(430, 330), {
    'bottom-left corner': { rounded: 140 },
    'top-right corner': { rounded: 160 },
  });
  if (!cut.ok) throw new Error(cut.fault.message);
  return cut.value;
})();
