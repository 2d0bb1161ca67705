/** How much room a drawing has, measured in the browser and rounded to steps, so that it is not laid out at every pixel. */
import type { Attachment } from 'svelte/attachments';
import { MM_PER_PIXEL, NARROWEST } from '../../../src/core/index.ts';

/** CSS pixels. Wider than a scroll bar, so that one that comes and goes with the drawing's height does not make the width jump back and forth. */
const STEP = 24;

export class DrawingWidth {
  /** CSS pixels; what every page has before anything is measured. */
  #pixels = $state(NARROWEST / MM_PER_PIXEL);

  /** The width to lay out for, in mm. */
  get width(): number {
    return this.#pixels * MM_PER_PIXEL;
  }

  /** Watches the width of an element: `{@attach room.watch}`. */
  readonly watch: Attachment<HTMLElement> = (element) => {
    const measured = new ResizeObserver(([entry]) => {
      const width = Math.floor(entry?.contentRect.width ?? 0);
      // At once when there is less room, since letters must not shrink; only for a step more when there is more.
      if (width > 0 && (width < this.#pixels || width >= this.#pixels + STEP)) this.#pixels = width;
    });
    measured.observe(element);
    return () => measured.disconnect();
  };
}
