/** Rows of stitches along edges, for the verbs that sew them. */
import { edgesOn } from '../cloth/sides.ts';
import { fail, ok } from '../measure/index.ts';
import { length, optional, yes } from './fields.ts';
import { sewsShut } from '../cloth/openings.ts';
import { pathsInside } from '../cloth/paths-inside.ts';
import { noted } from '../cloth/work.ts';
import { sewn } from '../cloth/stitch.ts';
import type { Sewn, StitchKind, Work } from '../cloth/index.ts';

export const inFromEdge = length('how far in from the edge the row is sewn. Left out, what is usual for the verb.');

export const sewShut = optional(yes('the row is meant to sew the opening there shut.'));

/** Rows along the edges that a step names, so many mm inside them. Faults: also `opening` where that sews one shut. */
export function rowsThatShow(work: Work, edges: readonly string[], kind: StitchKind, by: number, shut = false): Sewn {
  const found = edgesOn(work, edges);
  const closed = found.ok && !shut ? sewsShut(work, found.value) : undefined;
  return closed ? fail(closed) : rowsInside(work, edges, kind, by);
}

/** Rows along the edges that a step names, so many mm inside them. */
export function rowsInside(work: Work, edges: readonly string[], kind: StitchKind, by: number): Sewn {
  const found = edgesOn(work, edges);
  if (!found.ok) return found;
  const ways = pathsInside(work, found.value, by);
  const after = ways.reduce((now, way) => sewn(now, kind, way), work);
  const stitches = after.stitches.slice(work.stitches.length);
  if (stitches.some(({ runs }) => runs.length === 0)) {
    return fail({ code: 'misses', message: 'The row of stitches misses the cloth.' });
  }
  return ok(noted(after, { did: kind, stitches: stitches.map(({ id }) => id) }));
}
