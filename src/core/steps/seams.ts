/** What the verbs that sew seams share. */
import { edgeOn } from '../cloth/sides.ts';
import { length, optional } from './fields.ts';
import { ok } from '../measure/index.ts';
import type { ClothFault, Work, WorkEdge } from '../cloth/index.ts';
import type { Result } from '../measure/index.ts';

export const seam = optional(length('seam allowance. Left out, the measure called seam.'));

/** The edges of two works that are sewn together; a single one stands for both. */
export function bothEdges(at: readonly string[], a: Work, b: Work): Result<[WorkEdge, WorkEdge], ClothFault> {
  const first = edgeOn(a, at[0] ?? '');
  if (!first.ok) return first;
  const second = edgeOn(b, at[1] ?? at[0] ?? '');
  return second.ok ? ok([first.value, second.value]) : second;
}

/**
 * What the two rows of a French seam take of an allowance, and what is left of the first after trimming, in mm: 3/8 and 1/4 in
 * of 5/8 in (Oklahoma Cooperative Extension, 4-H Construction Card 810).
 */
export const frenchParts = (allowance: number): { first: number; second: number; trimTo: number } => ({
  first: (allowance * 3) / 5,
  second: (allowance * 2) / 5,
  trimTo: allowance / 5,
});
