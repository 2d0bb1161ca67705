/** Rows of stitches along edges, for the verbs that sew them. */
import { boxOf } from '../cloth/size.ts';
import { edgesOn, waysInside } from './edges.ts';
import { fail, ok } from '../measure/index.ts';
import { length } from './fields.ts';
import { noted } from '../cloth/work.ts';
import { sewn } from '../cloth/stitch.ts';
import type { Sewn, StitchKind, Work } from '../cloth/index.ts';

export const inFromEdge = length('how far in from the edge the row is sewn. Left out, what is usual for the verb.');

/** Rows along the edges that a step names, so many mm inside them. */
export function rowsInside(work: Work, edges: readonly string[], kind: StitchKind, by: number): Sewn {
  const found = edgesOn(work, edges);
  if (!found.ok) return found;
  const { width, height } = boxOf(work.plies);
  const ways = waysInside(found.value, by, width + height);
  const after = ways.reduce((now, way) => sewn(now, kind, way), work);
  const stitches = after.stitches.slice(work.stitches.length);
  if (stitches.some(({ runs }) => runs.length === 0)) {
    return fail({ code: 'misses', message: 'The row of stitches misses the cloth.' });
  }
  return ok(noted(after, { did: kind, stitches: stitches.map(({ id }) => id) }));
}
