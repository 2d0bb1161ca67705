/** How much thread the rows of stitches take, and how many spools that is. */
import { cutApartIn } from '../cloth/work.ts';
import { makeUp } from '../project/steps/make-up.ts';
import type { Role } from '../project/pattern.ts';
import type { Step } from '../project/step.ts';
import type { Group } from './group.ts';
import type { Share } from './shares.ts';

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
    // Of what is sewn and cut apart, one is told and all are sewn.
    const times =
      step.times *
      (cutApartIn(
        step.takes.map((name) => step.before[name]!),
        step.after,
      )?.many ?? 1);
    for (const row of step.stitches) {
      sewn += row.length * times;
      thread += row.thread * times;
    }
  }
  return { sewn, thread };
}

/** Thread for a group, by the sets of each size: a spool at each machine, and more where the rows take more. */
export function threadNeed(shares: readonly Share[], { material }: Role, group: Group): ThreadNeed {
  const each = shares.map(({ pattern, sets }) => ({ sets, ...threadIn(makeUp(pattern)) }));
  // What is told of one set is that of the largest.
  const { sewn, thread } = each.reduce((most, one) => (one.thread > most.thread ? one : most));
  const waste = WASTE * thread;
  const total = each.reduce((sum, one) => sum + one.sets * one.thread * (1 + WASTE), 0);
  const spool = (material?.sold?.by === 'spool' ? material.sold.each : undefined) ?? SPOOL;
  const byLength = Math.ceil(total / spool - 1e-9);
  return { sewn, thread, waste, total, spool, byLength, spools: Math.max(byLength, group.machines ?? group.makers) };
}
