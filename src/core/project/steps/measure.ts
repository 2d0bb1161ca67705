/** Sizes of works in mm². */
import { area } from '../../geometry/index.ts';
import { size } from '../../cloth/index.ts';
import type { Work } from '../../cloth/index.ts';

/** All plies of a work together. */
export const areaOf = (work: Work): number => work.plies.reduce((sum, ply) => sum + area(ply.outline), 0);

/** The box round a work. */
export function sizeOf(work: Work): number {
  const { width, height } = size(work);
  return width * height;
}
