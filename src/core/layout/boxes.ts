/** Lays the boxes round pieces on one cloth: for rectangles, and for everything that is cut straight. */
import { lowestHeight } from './bounds.ts';
import { inOrder } from './in-order.ts';
import { FAR, firstOrders, TURNED, UP } from './orders.ts';
import { random } from './random.ts';
import { fullest, shortest, type Found, type Manner, type Search } from './search.ts';
import { skyline } from './skyline.ts';
import { stepsFor } from './steps.ts';
import { byStraightCuts } from './strips.ts';
import type { Kind, Laid } from './box.ts';
import type { Ready } from './ready.ts';

/** A piece in its place: the lower left corner of its box, in mm from the corner of the room. */
export type Spot = {
  ready: Ready;
  x: number;
  y: number;
  angle: number;
  /** Where the search chose which ones are mirrored. */
  mirrored?: boolean;
};

/** What was found so far: where pieces lie, and how far along the cloth the last one reaches. */
export type Laying = { spots: Spot[]; length: number; tries: number };

export type Task = {
  pieces: { ready: Ready; count: number }[];
  /** The room on the cloth; the height may be Infinity. */
  width: number;
  height: number;
  gap: number;
  repeat: number | undefined;
  /** Of each group that must match, the mark that lies where the repeat begins: the same on every cloth. */
  leads: ReadonlyMap<string, number>;
  straight: boolean;
  seed: number;
  tries: number;
  /** Only for an answer at once. */
  first: boolean;
  stop: () => boolean;
};

/** Layouts to try in a moment: fewer, the more pieces there are. */
export function fewTries(pieces: number): number {
  return Math.round(Math.min(12_000, Math.max(4, 4e7 / Math.max(1, pieces * pieces))));
}

/** With at most so many pieces, laying strictly in order is as good as the best fit; with more it seldom is. */
const FEW = 32;
const MANY = 1000;

/**
 * Better and better layouts of the pieces on one cloth; where the cloth has an end, with as much on it as was found to
 * go. Also yields the number of tries now and then.
 */
export function* layBoxes(task: Task): Generator<Laying | number, void, void> {
  const matched = task.pieces.filter(({ ready }) => task.repeat !== undefined && ready.piece.match);
  if (!task.straight || matched.length === 0) {
    yield* layAll(task, task.pieces, 0, []);
    return;
  }
  // Strips as high as whole repeats, so that each begins at the same place of the print; what need not match follows.
  let first: Laying = { spots: [], length: 0, tries: 0 };
  for (const found of layAll({ ...task, tries: Math.min(task.tries, 64) }, matched, 0, [])) {
    if (typeof found === 'number') yield found;
    else first = found;
  }
  const rest = task.pieces.filter((piece) => !matched.includes(piece));
  if (rest.length === 0) yield first;
  else {
    let any = false;
    for (const found of layAll(task, rest, first.length + (first.length > 0 ? task.gap : 0), first.spots)) {
      if (typeof found !== 'number') any = true;
      yield found;
    }
    if (!any) yield first;
  }
}

/** The bound on the length of cloth that boxes of these pieces need, in mm. */
export function shortestLength(pieces: Task['pieces'], width: number, gap: number): number {
  const steps = stepsFor([...lengthsOf(pieces, gap)]);
  const kinds = pieces.map(({ ready, count }) => plainKind(ready, count, gap, steps.piece));
  const height = lowestHeight(kinds, steps.cloth(width + gap));
  return Math.max(0, steps.mm(height) - gap);
}

const lengthsOf = (pieces: Task['pieces'], gap: number): number[] =>
  pieces.flatMap(({ ready }) => [ready.width + gap, ready.height + gap]);

/** A piece as a rectangle in steps, with the gap above and to its right. */
export function plainKind(ready: Ready, count: number, gap: number, inSteps: (mm: number) => number): Kind {
  return {
    width: inSteps(ready.width + gap),
    height: inSteps(ready.height + gap),
    count,
    turns: ready.angles.includes((ready.angles[0]! + 90) % 360) && !ready.atFold,
  };
}

function* layAll(
  task: Task,
  pieces: Task['pieces'],
  from: number,
  before: Spot[],
): Generator<Laying | number, void, void> {
  const { gap, repeat, straight } = task;
  const toMatch = repeat !== undefined && pieces.some(({ ready }) => ready.piece.match);
  const rises = pieces.map(({ ready }) =>
    toMatch && ready.piece.match ? riseOf(ready, task.leads, repeat) : undefined,
  );
  const steps = stepsFor([
    ...lengthsOf(pieces, gap),
    ...(toMatch ? [repeat, ...rises.filter((rise) => rise !== undefined && rise > 0).map((rise) => rise!)] : []),
  ]);
  const inSteps = steps.piece;
  const kinds = pieces.map(({ ready, count }, i): Kind => {
    const kind = plainKind(ready, count, gap, inSteps);
    const rise = rises[i];
    const placed = ready.atFold ? { ...kind, atFold: true } : kind;
    if (rise === undefined) return placed;
    const every = inSteps(repeat!);
    const phase = inSteps(rise);
    if (!straight) return { ...placed, repeat: { every, phase } };
    return { ...kind, height: Math.ceil((phase + kind.height) / every) * every };
  });
  const width = steps.cloth(task.width + gap);
  const cap = steps.cloth(task.height - from + gap);
  const total = kinds.reduce((sum, kind) => sum + kind.count, 0);
  const plain = kinds.every((kind) => !kind.atFold && !kind.repeat);
  const manners: Manner[] = straight
    ? [
        { layer: byStraightCuts(kinds, true), share: 1 },
        ...(toMatch ? [] : [{ layer: byStraightCuts(kinds), share: 8 }]),
      ]
    : [
        { layer: skyline(kinds), share: 4 },
        ...(total > MANY ? [] : [{ layer: inOrder(kinds), share: total <= FEW || !plain ? 3 : 0.4 }]),
      ];
  const search: Search = {
    width,
    bound: Math.ceil(kinds.reduce((sum, kind) => sum + kind.width * kind.height * kind.count, 0) / width - 1e-9),
    // With very many kinds one layout takes long.
    starts: kinds.length > MANY ? firstOrders(kinds).slice(0, 1) : firstOrders(kinds),
    ways: Uint8Array.from(kinds, (kind) => (kind.turns ? TURNED : 0) | (straight ? UP | FAR : 0)),
    random: random(task.seed),
    tries: task.tries,
    stop: task.stop,
  };
  const laying = (laid: Laid[], height: number, tries: number): Laying => {
    const spots = laid.map(({ kind, x, y, turned }): Spot => {
      const { ready } = pieces[kind]!;
      const rise = straight ? (rises[kind] ?? 0) : 0;
      return {
        ready,
        x: steps.mm(x),
        y: from + steps.mm(y) + rise,
        angle: turned ? (ready.angles[0]! + 90) % 360 : ready.angles[0]!,
      };
    });
    // A strip that is whole repeats high reaches beyond its pieces; of the last one that much is not needed.
    const length =
      straight && toMatch
        ? Math.max(from, ...spots.map(({ ready, y }) => y + ready.height))
        : from + steps.mm(height) - gap;
    return { spots: [...before, ...spots], length, tries };
  };

  if (cap < Infinity) {
    let last: Found | undefined;
    let complete = false;
    for (const found of fullest(manners, cap, search)) {
      if (typeof found === 'number') yield found;
      else {
        complete = found.laid.length === total;
        last = found;
        yield laying(found.laid, found.height, found.tries);
      }
    }
    if (!complete || !last) return;
    search.known = last;
    search.tries -= last.tries;
  } else if (!task.first) search.bound = Math.max(search.bound, lowestHeight(kinds, width));
  for (const found of shortest(manners, search))
    yield typeof found === 'number' ? found : laying(found.laid, found.height, found.tries);
}

/** How far above a place where the repeat begins a piece must lie, so that it matches the others of its group. */
export function riseOf({ piece }: Ready, leads: Task['leads'], repeat: number): number {
  const { group, at } = piece.match!;
  const rise = (leads.get(group) ?? at) - at;
  return ((rise % repeat) + repeat) % repeat;
}
