import { formatLength } from '../../measure/index.ts';
import type { Pattern } from '../pattern.ts';

/** Writes lengths as the reader of a pattern sees them. */
export const sayIn =
  ({ edition, grid }: Pattern) =>
  (mm: number): string =>
    formatLength(mm, edition, { grid });

/** Thickness is told in tenths of a millimetre in both editions, as needles and presser feet are. */
export const sayThickness = (mm: number): string => `${mm.toFixed(1)} mm`;
