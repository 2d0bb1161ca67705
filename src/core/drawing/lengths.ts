import { formatLength } from '../measure/index.ts';
import type { Edition, Grid } from '../measure/index.ts';

/** How a drawing writes lengths: on the sheet, and in the text beside it. */
export type LengthWriter = { set: (mm: number) => string; say: (mm: number) => string };

/**
 * The writer of an edition.
 *
 * @example
 * writer({ edition: 'inch' }).say(114.3) // => '4 and a half inches'
 */
export function lengthWriter({ edition, grid }: { edition: Edition; grid?: Grid }): LengthWriter {
  const options = grid ? { grid } : {};
  return {
    set: (mm) => formatLength(mm, edition, { ...options, style: 'set' }),
    say: (mm) => formatLength(mm, edition, { ...options, style: 'spoken' }),
  };
}
