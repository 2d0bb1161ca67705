import { stitchLines } from '../cloth/stitch-lines.ts';
import type { StitchLine } from '../cloth/stitch-lines.ts';
import type { Work } from '../cloth/work.ts';

/** It saves time alone: a work does not change, and its rows follow from it. */
const read = new WeakMap<Work, readonly StitchLine[]>();

/** The rows of stitches of a work, read once: a drawing draws them and tells them too. */
export function rowsOf(work: Work): readonly StitchLine[] {
  let rows = read.get(work);
  if (!rows) read.set(work, (rows = stitchLines(work)));
  return rows;
}
