import { overlayOf, patchesBy } from './faces.ts';
import type { Patch } from './faces.ts';
import type { Work } from './work.ts';

/**
 * The outline of the whole work as it lies now: one patch for each part that hangs together, with its holes.
 *
 * @example
 * outlineNow(folded)[0].rings[0].length // => 4
 */
export const outlineNow = (work: Work): Patch[] =>
  patchesBy(overlayOf(work.plies), () => true).map(({ patch }) => patch);
