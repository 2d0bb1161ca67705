/** How long a class takes over some tasks when irons and machines are shared: tried many times, with makers of every pace. */
import { random } from '../layout/random.ts';
import { mostAtOnce, runRoom } from './queue.ts';
import type { Random } from '../layout/random.ts';
import type { Station, ClassTask, Visit } from './tasks.ts';

/** A room: makers, and what they share. */
export type Room = { makers: number; machines: number; irons: number };

/** How one task goes: when nine in ten have done it, and the waiting that it brings. */
export type TaskOutlook = {
  most: number;
  /** Minutes that a maker waits for it at a place, on average. */
  waits: Record<Station, number>;
  /** The longest queue for it at a place, on average of the trials. */
  queue: Record<Station, number>;
};

export type Outlook = {
  /** One maker of usual pace with the room to themselves, in minutes. */
  alone: number;
  /** When half of all makers are done, and when nine in ten are. */
  half: number;
  most: number;
  /** Minutes that a maker waits at a place, on average. */
  waits: Record<Station, number>;
  /** The longest queue at a place, on average of the trials. */
  queue: Record<Station, number>;
  /** Each task, in order; none where they were not asked for. */
  tasks: TaskOutlook[];
};

/**
 * Makers differ: the quickest take three quarters of the usual time, the slowest half as much again. And none is the
 * same in every task. Common practice, no source.
 */
const PACE = { quickest: 0.75, slowest: 1.5, usual: 1 };
const TASK = 0.2;

/** Enough for the minutes to stand still to the whole minute or so. */
const TRIALS = 60;

/**
 * The outlook of a class. The same seed gives the same outlook.
 *
 * @param byTask tells each task, too, which takes longer
 *
 * @example
 * outlookOf(tasks, { makers: 12, machines: 6, irons: 2 }).waits.iron // => 8.4
 */
export function outlookOf(tasks: readonly ClassTask[], room: Room, seed = 1, trials = TRIALS, byTask = false): Outlook {
  const { makers } = room;
  const stations = { iron: Math.max(1, room.irons), machine: Math.max(1, room.machines) };
  const chance = random(seed);
  const ends: number[] = [];
  /** The task of each visit, and the last visit of each task. */
  const taskOf = tasks.flatMap(({ visits }, task) => visits.map(() => task));
  const lastOf = tasks.map((_, task) => taskOf.lastIndexOf(task));
  const each = (byTask ? tasks : []).map(() => ({
    ends: [] as number[],
    waited: { iron: 0, machine: 0 },
    longest: { iron: 0, machine: 0 },
  }));
  const sums = { iron: { waited: 0, longest: 0 }, machine: { waited: 0, longest: 0 } };
  for (let trial = 0; trial < trials; trial++) {
    const run = runRoom(
      Array.from({ length: makers }, () => paced(tasks, chance)),
      stations,
    );
    ends.push(...run.ends);
    for (const at of ['iron', 'machine'] as const) {
      sums[at].waited += run[at].waited;
      sums[at].longest += run[at].longest;
      if (!byTask) continue;
      for (const [task, stretches] of Map.groupBy(run.stretches[at], ({ visit }) => taskOf[visit]!)) {
        const one = each[task]!;
        one.waited[at] += stretches.reduce((sum, { from, to }) => sum + to - from, 0);
        one.longest[at] += mostAtOnce(stretches);
      }
    }
    for (const [task, one] of each.entries()) {
      // A task without minutes is done with the one before.
      const last = lastOf[task]! < 0 ? taskOf.findLastIndex((other) => other < task) : lastOf[task]!;
      one.ends.push(...run.visitEnds.map((visits) => visits[last] ?? 0));
    }
  }
  ends.sort((a, b) => a - b);
  const share = (part: number): number => shareOf(ends, part);
  const waited = (at: Station): number => sums[at].waited / Math.max(1, trials * makers);
  return {
    alone: tasks.reduce((sum, { minutes }) => sum + minutes, 0),
    half: share(0.5),
    most: share(0.9),
    waits: { iron: waited('iron'), machine: waited('machine') },
    queue: { iron: sums.iron.longest / trials, machine: sums.machine.longest / trials },
    tasks: each.map(({ ends, waited, longest }): TaskOutlook => {
      const [people, tries] = [Math.max(1, trials * makers), Math.max(1, trials)];
      return {
        most: shareOf(
          ends.toSorted((a, b) => a - b),
          0.9,
        ),
        waits: { iron: waited.iron / people, machine: waited.machine / people },
        queue: { iron: longest.iron / tries, machine: longest.machine / tries },
      };
    }),
  };
}

/** When that share of all ends, which are in order, has come. */
const shareOf = (ends: readonly number[], part: number): number =>
  ends[Math.min(ends.length - 1, Math.floor(part * ends.length))] ?? 0;

/** A maker's visits, at a pace of their own. */
function paced(tasks: readonly ClassTask[], chance: Random): Visit[] {
  const pace = triangular(chance.share());
  return tasks.flatMap(({ visits }) => {
    const mood = 1 + TASK * (2 * chance.share() - 1);
    return visits.map(({ at, minutes }) => ({ at, minutes: minutes * pace * mood }));
  });
}

/** From an even share to a pace: the usual one most often, the outermost hardly ever. */
function triangular(share: number): number {
  const { quickest, usual, slowest } = PACE;
  const [all, low, high] = [slowest - quickest, usual - quickest, slowest - usual];
  return share < low / all ? quickest + Math.sqrt(share * all * low) : slowest - Math.sqrt((1 - share) * all * high);
}
