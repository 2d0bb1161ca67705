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
