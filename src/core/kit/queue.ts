/** A room in which makers wait for each other: irons and machines are shared, first come, first served. */
import type { Station, Visit } from './tasks.ts';

export type Stations = Readonly<Record<Station, number>>;

/** What came of it for one place that is shared. */
export type Waiting = {
  /** Minutes that all makers waited there together. */
  waited: number;
  /** The most makers who stood there at once and waited. */
  longest: number;
  /** Minutes that it was in use, all of its kind together. */
  busy: number;
};

/** Somebody who stands and waits for a place, in minutes from the beginning. `visit`: which of their visits it is for. */
export type Stretch = { visit: number; from: number; to: number };

export type RoomRun = {
  /** When each maker was done, in minutes from the beginning. */
  ends: number[];
  /** When each maker had ended each of their visits. */
  visitEnds: number[][];
  /** All waiting. */
  stretches: Record<Station, Stretch[]>;
  iron: Waiting;
  machine: Waiting;
};

/**
 * Lets makers go through their visits. All begin at once; whoever comes to a place first is served first, and of two
 * who come together the one who is named first.
 *
 * @param makers the visits of each, in order
 * @param stations how many of each place there are, one or more
 * @example
 * runRoom([[{ at: 'iron', minutes: 5 }], [{ at: 'iron', minutes: 5 }]], { iron: 1, machine: 1 }).ends // => [5, 10]
 */
export function runRoom(makers: readonly (readonly Visit[])[], stations: Stations): RoomRun {
  const free: Record<Station, number[]> = {
    iron: new Array<number>(stations.iron).fill(0),
    machine: new Array<number>(stations.machine).fill(0),
  };
  const waits: Record<Station, Stretch[]> = { iron: [], machine: [] };
  const visitEnds = makers.map((): number[] => []);
  const busy: Record<Station, number> = { iron: 0, machine: 0 };
  const now = makers.map(() => 0);
  const next = makers.map(() => 0);

  for (;;) {
    // Whoever is ready first moves first, so that everybody comes to a place in the order of the clock.
    let who = -1;
    for (let m = 0; m < makers.length; m++) {
      if (next[m]! < makers[m]!.length && (who < 0 || now[m]! < now[who]!)) who = m;
    }
    if (who < 0) break;
    const visit = next[who]!++;
    const { at, minutes } = makers[who]![visit]!;
    const come = now[who]!;
    if (at === 'table') {
      visitEnds[who]![visit] = now[who] = come + minutes;
      continue;
    }
    const places = free[at];
    let soonest = 0;
    for (let i = 1; i < places.length; i++) if (places[i]! < places[soonest]!) soonest = i;
    const start = Math.max(come, places[soonest]!);
    if (start > come) waits[at].push({ visit, from: come, to: start });
    busy[at] += minutes;
    visitEnds[who]![visit] = places[soonest] = now[who] = start + minutes;
  }
  const waiting = (at: Station): Waiting => ({
    waited: waits[at].reduce((sum, { from, to }) => sum + to - from, 0),
    longest: mostAtOnce(waits[at]),
    busy: busy[at],
  });
  return { ends: now, visitEnds, stretches: waits, iron: waiting('iron'), machine: waiting('machine') };
}

/** The most stretches of time that overlap. */
export function mostAtOnce(stretches: readonly Omit<Stretch, 'visit'>[]): number {
  const turns = stretches
    .flatMap(({ from, to }) => [
      { at: from, by: 1 },
      { at: to, by: -1 },
    ])
    // Who leaves makes room for who comes at the same moment.
    .sort((a, b) => a.at - b.at || a.by - b.by);
  let [count, most] = [0, 0];
  for (const { by } of turns) {
    count += by;
    most = Math.max(most, count);
  }
  return most;
}
