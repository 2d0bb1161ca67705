/** Lays the boxes round pieces on one cloth: for rectangles, and for everything that is cut straight. */
import { lowestHeight } from './bounds.ts';
import { inOrder } from './in-order.ts';
import { FAR, firstOrders, TURNED, UP } from './orders.ts';
import { random } from './random.ts';
import { fullest, shortest, type Found, type LayerShare, type Search } from './search.ts';
import { skyline } from './skyline.ts';
import { lengthUnits } from './length-units.ts';
import { byStraightCuts } from './strips.ts';
import type { RectangleKind, LaidRectangle } from './box.ts';
import type { PreparedPiece } from './prepare.ts';

/** A piece in its place: the lower left corner of its box, in mm from the corner of the room. */
export type PlacedPiece = {
  prepared: PreparedPiece;
  x: number;
  y: number;
  angle: number;
  /** Where the search chose which ones are mirrored. */
  mirrored?: boolean;
};

/** What was found so far: where pieces lie, and how far along the cloth the last one reaches. */
export type BoxLayout = { spots: PlacedPiece[]; length: number; tries: number };

export type BoxTask = {
  pieces: { prepared: PreparedPiece; count: number }[];
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
export function* layBoxes(task: BoxTask): Generator<BoxLayout | number, void, void> {
  const matched = task.pieces.filter(({ prepared }) => task.repeat !== undefined && prepared.piece.match);
  if (!task.straight || matched.length === 0) {
    yield* layAll(task, task.pieces, 0, []);
    return;
  }
  // Strips as high as whole repeats, so that each begins at the same place of the print; what need not match follows.
  let first: BoxLayout = { spots: [], length: 0, tries: 0 };
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
export function shortestLength(pieces: BoxTask['pieces'], width: number, gap: number): number {
  const units = lengthUnits([...lengthsOf(pieces, gap)]);
  const kinds = pieces.map(({ prepared, count }) => plainKind(prepared, count, gap, units.piece));
  const height = lowestHeight(kinds, units.cloth(width + gap));
  return Math.max(0, units.mm(height) - gap);
}

const lengthsOf = (pieces: BoxTask['pieces'], gap: number): number[] =>
  pieces.flatMap(({ prepared }) => [prepared.width + gap, prepared.height + gap]);

/** A piece as a rectangle in whole units, with the gap above and to its right. */
export function plainKind(
  prepared: PreparedPiece,
  count: number,
  gap: number,
  inUnits: (mm: number) => number,
): RectangleKind {
  return {
    width: inUnits(prepared.width + gap),
    height: inUnits(prepared.height + gap),
    count,
    turns: prepared.angles.includes((prepared.angles[0]! + 90) % 360) && !prepared.atFold,
  };
}

function* layAll(
  task: BoxTask,
  pieces: BoxTask['pieces'],
  from: number,
  before: PlacedPiece[],
): Generator<BoxLayout | number, void, void> {
  const { gap, repeat, straight } = task;
  const toMatch = repeat !== undefined && pieces.some(({ prepared }) => prepared.piece.match);
  const rises = pieces.map(({ prepared }) =>
    toMatch && prepared.piece.match ? riseOf(prepared, task.leads, repeat) : undefined,
  );
  const units = lengthUnits([
    ...lengthsOf(pieces, gap),
    ...(toMatch ? [repeat, ...rises.filter((rise) => rise !== undefined && rise > 0).map((rise) => rise!)] : []),
  ]);
  const inUnits = units.piece;
  const kinds = pieces.map(({ prepared, count }, i): RectangleKind => {
    const kind = plainKind(prepared, count, gap, inUnits);
    const rise = rises[i];
    const placed = prepared.atFold ? { ...kind, atFold: true } : kind;
    if (rise === undefined) return placed;
    const every = inUnits(repeat!);
    const phase = inUnits(rise);
    if (!straight) return { ...placed, repeat: { every, phase } };
    return { ...kind, height: Math.ceil((phase + kind.height) / every) * every };
  });
  const width = units.cloth(task.width + gap);
  const cap = units.cloth(task.height - from + gap);
  const total = kinds.reduce((sum, kind) => sum + kind.count, 0);
  const plain = kinds.every((kind) => !kind.atFold && !kind.repeat);
  const manners: LayerShare[] = straight
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
  const laying = (laid: LaidRectangle[], height: number, tries: number): BoxLayout => {
    const spots = laid.map(({ kind, x, y, turned }): PlacedPiece => {
      const { prepared } = pieces[kind]!;
      const rise = straight ? (rises[kind] ?? 0) : 0;
      return {
        prepared,
        x: units.mm(x),
        y: from + units.mm(y) + rise,
        angle: turned ? (prepared.angles[0]! + 90) % 360 : prepared.angles[0]!,
      };
    });
    // A strip that is whole repeats high reaches beyond its pieces; of the last one that much is not needed.
    const length =
      straight && toMatch
        ? Math.max(from, ...spots.map(({ prepared, y }) => y + prepared.height))
        : from + units.mm(height) - gap;
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
export function riseOf({ piece }: PreparedPiece, leads: BoxTask['leads'], repeat: number): number {
  const { group, at } = piece.match!;
  const rise = (leads.get(group) ?? at) - at;
  return ((rise % repeat) + repeat) % repeat;
}
