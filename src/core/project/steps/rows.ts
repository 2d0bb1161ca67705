/** The rows of stitches that a step adds: how long, through how much, and the thread they take. */
import { threadPer } from '../thread.ts';
import { countLayers } from '../../cloth/layers.ts';
import { materialIn, thicknessOf } from './thickness.ts';
import type { Pattern } from '../pattern.ts';
import type { NeedlePoint } from '../needle.ts';
import type { Ply, Run, Stitch, StitchKind, Work } from '../../cloth/index.ts';
import type { SewnRow } from '../step.ts';

/** Stitch length in mm: 2.5 for seams, 4 to 5 for basting, 3 to 4 for gathers (course notes on stitch lengths). */
export const stitchLength = (kind: StitchKind): number => (kind === 'baste' || kind === 'gather' ? 4 : 2.5);

/** The rows that lie in a work after a step and did not in those it took. New rows come last. */
export function rowsAdded(before: readonly Work[], after: Work, pattern: Pattern): SewnRow[] {
  const rowsOf = ({ stitches }: Work) => stitches.filter(({ partOf }) => partOf === undefined);
  const known = before.reduce((sum, work) => sum + rowsOf(work).length, 0);
  const added = rowsOf(after).slice(known);
  if (added.length === 0) return [];
  const plies = new Map(after.plies.map((ply) => [ply.id, ply]));
  return added.map((stitch) => rowOf(stitch, plies, pattern));
}

function rowOf(
  { id, kind, class: type, runs, secured = 0 }: Stitch,
  plies: ReadonlyMap<number, Ply>,
  pattern: Pattern,
): SewnRow {
  let [length, layers, fused, thickness, thread, cloth] = [0, 0, 0, 0, 0, 0];
  let point: NeedlePoint | undefined;
  let at = { x: 0, y: 0 };
  for (const run of runs) {
    const through = run.plies.map((number) => plies.get(number)).filter((ply) => ply !== undefined);
    const mm = thicknessOf(pattern, through);
    length += lengthOf(run);
    if (through.length > layers) ({ layers, fused } = countLayers(through));
    if (mm >= thickness) at = middleOf(run);
    thickness = Math.max(thickness, mm);
    for (const ply of through) {
      const material = materialIn(pattern, ply);
      if (material?.kind === 'cloth') cloth = Math.max(cloth, material.thickness ?? 0);
      point = sterner(point, material?.needle);
    }
    thread += lengthOf(run) * threadPer(type, { thickness: mm, stitch: stitchLength(kind) });
  }
  // At each end it goes back and forth once more.
  if (length > 0) thread *= 1 + (2 * secured) / length;
  return { id, kind, class: type, length, layers, fused, thickness, at, thread, cloth, ...(point && { point }) };
}

/** Of two points that materials ask for, the one that goes through both. */
const STERN: readonly NeedlePoint[] = ['universal', 'jeans', 'leather'];
const sterner = (a: NeedlePoint | undefined, b: NeedlePoint | undefined): NeedlePoint | undefined =>
  a === undefined || (b !== undefined && STERN.indexOf(b) > STERN.indexOf(a)) ? b : a;

export const middleOf = ({ from, to }: Run) => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });

export const lengthOf = ({ from, to }: Run): number => Math.hypot(to.x - from.x, to.y - from.y);
