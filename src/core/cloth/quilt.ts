import { acrossWork, runsAlong, stitchClass } from './stitch.ts';
import { boxOf } from './size.ts';
import { direction, plus, times } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { middleOfWork } from './place.ts';
import { nextNumber, noted } from './work.ts';
import type { Run, Sewn, Stitch, Work } from './work.ts';

/** More rows one way than anybody sews. */
const MOST = 500;

/**
 * Sews rows across a work, through all that lies there: one through its middle, others so far apart on both sides of it,
 * as far as the work goes. They are kept as one row of many stretches.
 *
 * @param angles which ways the rows run, in degrees
 * Faults: `not-finite` for rows that do not lie apart; `too-many` of them; `misses` where there is no cloth.
 *
 * @example
 * quilt(mat, { every: 50, angles: [0, 90] }) // => a grid of squares of 50 mm, with a crossing in the middle
 */
export function quilt(work: Work, { every, angles }: { every: number; angles: readonly number[] }): Sewn {
  const { width, height } = boxOf(work.plies);
  if (!(every > SAME)) {
    const fix = 'Say how far apart they lie: “every: 2”.';
    return fail({ code: 'not-finite', message: 'The rows would lie on one another.', field: 'every', fix });
  }
  if (Math.hypot(width, height) / every > MOST) {
    const message = `More than ${MOST} rows would be sewn one way.`;
    return fail({ code: 'too-many', message, field: 'every', fix: 'Make “every” larger.' });
  }
  const middle = middleOfWork(work);
  const runs: Run[] = [];
  for (const angle of angles) {
    const across = direction(angle + 90);
    // A row on the very edge would sew nothing.
    const reach = (Math.abs(across.x) * width + Math.abs(across.y) * height) / 2 - SAME;
    for (let k = -Math.floor(reach / every); k * every <= reach; k++) {
      const line = { at: plus(middle, times(across, k * every)), angle };
      runs.push(...runsAlong(work.plies, ...acrossWork(work, line)));
    }
  }
  if (runs.length === 0) return fail({ code: 'misses', message: 'The rows miss the cloth.' });
  const stitch: Stitch = { id: nextNumber(work), kind: 'topstitch', class: stitchClass.topstitch, runs };
  return ok(noted({ ...work, stitches: [...work.stitches, stitch] }, { did: 'quilt', stitches: [stitch.id] }));
}
