/** How much thread the rows of stitches take, and how many spools that is. */
import { makeUp } from '../project/steps/make-up.ts';
import { setsFor } from './group.ts';
import type { Pattern, Role } from '../project/pattern.ts';
import type { Step } from '../project/step.ts';
import type { Group } from './group.ts';

/**
 * Added for ends, bobbins that run out and rows that are sewn again: 15 to 20 % (A&E, Technical Bulletin 18, estimating
 * thread consumption); others say 10 to 15 % (Apparel Science). Learners unpick more than a factory does: the most.
 */
export const WASTE = 0.2;

/** The length of a spool where materials.yaml gives none, in mm. Common practice, no source. */
const SPOOL = 100_000;

export type ThreadNeed = {
  /** Length of all rows of one set, mm. */
  sewn: number;
  /** Thread in them, all threads of a stitch together, mm. */
  thread: number;
  /** More, for waste. */
  waste: number;
  /** Of all sets, waste included. */
  total: number;
  /** Length of one spool. */
  spool: number;
  spools: number;
  /** How many spools the length alone asks for; the rest is one for each machine. */
  byLength: number;
};

/**
 * Thread for the rows of one set, in mm: what they measure, and the thread in them.
 *
 * @example
 * threadIn(makeUp(pattern)).thread // => 4270
 */
export function threadIn(steps: readonly Step[]): { sewn: number; thread: number } {
  let [sewn, thread] = [0, 0];
  for (const step of steps) {
    for (const row of step.stitches) {
      sewn += row.length * step.times;
      thread += row.thread * step.times;
    }
  }
  return { sewn, thread };
}

/** Thread for a group: a spool at each machine, and more where the rows take more. */
export function threadNeed(pattern: Pattern, { material }: Role, group: Group): ThreadNeed {
  const sets = setsFor(group);
  const { sewn, thread } = threadIn(makeUp(pattern));
  const waste = WASTE * thread;
  const total = sets * (thread + waste);
  const spool = (material?.sold?.by === 'spool' ? material.sold.each : undefined) ?? SPOOL;
  const byLength = Math.ceil(total / spool - 1e-9);
  return { sewn, thread, waste, total, spool, byLength, spools: Math.max(byLength, group.machines ?? group.makers) };
}
