import { boxOf } from './size.ts';
import { distance } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { tooFew } from './attach.ts';
import { layersAt } from './layers.ts';
import { nextNumber, noted } from './work.ts';
import { runsAlong, stitchClass } from './stitch.ts';
import type { Mark, Sewn, Stitch, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

export type Buttonhole = {
  /** The middle of the slit, in mm. */
  readonly at: Point;
  /** The length of the slit in mm. */
  readonly length: number;
  readonly runs: 'across' | 'up';
  /** How many layers it goes through, counted from above; all that lie there if left out. */
  readonly through?: number;
};

/**
 * Sews a buttonhole: a row of zigzag down one side of the slit and up the other. The slit is cut in the end, and takes
 * no cloth away.
 *
 * Faults: `not-finite`; `too-many` layers; `off-the-work` when no cloth lies there, or the slit runs off it.
 *
 * @example
 * buttonhole(flap, { at: { x: 40, y: 20 }, length: 18, runs: 'across' })
 */
export function buttonhole(work: Work, { at, length, runs, through = Infinity }: Buttonhole): Sewn {
  if (!Number.isFinite(at.x + at.y + length))
    return fail({ code: 'not-finite', message: 'The place of the buttonhole is not a number.' });
  const here = layersAt(work, at).map((ply) => ply.id);
  if (here.length === 0) {
    const { width, height } = boxOf(work.plies);
    const message = 'There is no cloth where the buttonhole is: the work is … wide and … high.';
    return fail({ code: 'off-the-work', message, lengths: [width, height] });
  }
  const few = tooFew(here.length, through);
  if (few) return fail(few);
  const plies = here.slice(Math.max(0, here.length - through));
  const half = runs === 'across' ? { x: length / 2, y: 0 } : { x: 0, y: length / 2 };
  const [from, to] = [
    { x: at.x - half.x, y: at.y - half.y },
    { x: at.x + half.x, y: at.y + half.y },
  ];
  const there = runsAlong(
    work.plies.filter(({ id }) => plies.includes(id)),
    from,
    to,
  );
  const sewn = there.reduce((sum, run) => sum + distance(run.from, run.to), 0);
  if (length - sewn > SAME)
    return fail({ code: 'off-the-work', message: 'The buttonhole runs off the cloth.', amount: length - sewn });
  const back = there.toReversed().map((run) => ({ ...run, from: run.to, to: run.from }));
  const id = nextNumber(work);
  const stitch: Stitch = { id, kind: 'zigzag', class: stitchClass.zigzag, runs: [...there, ...back] };
  const mark: Mark = { kind: 'hardware', name: 'buttonhole', what: 'buttonhole', at, plies };
  const marked = { ...work, stitches: [...work.stitches, stitch], marks: [...work.marks, mark] };
  return ok(noted(marked, { did: 'buttonhole', stitches: [id] }));
}
