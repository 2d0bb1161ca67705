/** Drawing elastic or a cord into a casing that goes round an opening. */
import { asEdge, bodyOf, inwardFrom, openingsOf, rowInside, standsOut } from './openings.ts';
import { asOneStep, foldInHand } from './group.ts';
import { boxesStand } from './box.ts';
import { boxOf } from './size.ts';
import { between, distance, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { fail, ok, quote, SAME } from '../measure/index.ts';
import { fold } from './fold.ts';
import { foldsBetween } from './sew-up.ts';
import { GATHERS, gatherOpening } from './gather.ts';
import { isOwnCloth, wallsOf } from './walls.ts';
import { layersAt } from './layers.ts';
import { lineLeft, liesOn } from './edge.ts';
import { lyingAcross, topOf } from './bind-opening.ts';
import { movedWork } from './move.ts';
import { nextNumber } from './work.ts';
import { onto, overturning } from './place.ts';
import { transformPoint } from '../geometry/transform.ts';
import { runsAlong, stitchClass } from './stitch.ts';
import { leftOf, sides } from '../geometry/index.ts';
import { stackUp, withPlies } from './combine.ts';
import { stripLaid } from './bind-round.ts';
import type { ClothFault } from './fault.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Opening } from './openings.ts';
import type { Ply, Sewn, Stitch, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

export type DrawIn = {
  /** The opening that the casing goes round. */
  readonly opening: Opening;
  /** Of elastic: how long the opening is round afterwards, in mm. A cord draws nothing up, and its ends hang out. */
  readonly to?: number | undefined;
  /** Of elastic: how far its ends overlap where they are sewn together, in mm. */
  readonly overlap: number;
};

/** So much beside the casing is drawn up with it in the picture, in mm. */
const BESIDE = 6;

/**
 * Draws elastic or a cord into the casing round an opening, by the way in that its row leaves open. Elastic is joined into a
 * ring as long as the opening is to be; the casing and the way in are sewn up after it, and the cloth is drawn up. A cord goes
 * round once, and both its ends hang out of the way in.
 *
 * Faults: `unclear-casing` where there is no casing, nothing leads into it, or elastic lies in it already; `too-wide` for
 * what does not go in; `strip-length` for elastic of another length and for a cord that is too short; `too-deep` for an overlap
 * that is too long; `held` for what is folded or joined, and for a work that is not turned; those of gathering an opening.
 *
 * @example
 * drawIn(skirt, elastic, { opening: openingsOf(skirt)[1], to: 700, overlap: 25 }) // elastic of 725 mm
 */
export function drawIn(work: Work, strip: Work, how: DrawIn): Sewn {
  const { opening, to, overlap } = how;
  const { name, row, round } = opening;
  const flat = stripLaid(strip);
  if (!flat.ok) return flat;
  const { piece } = flat.value.ply;
  const found = casingAt(work, opening);
  if (!found.ok) return found;
  const casing = found.value;
  const { width } = casing.channel!;
  const { lower, upper } = wallsOf(work, row);
  const below = wayInto(work, opening, casing, lower);
  const wayIn = wayInto(work, opening, casing, upper);
  if (below && !wayIn) {
    const over = overturning(work);
    const turned = movedWork(work, over);
    const there = transformPoint(over, opening.to);
    const its = openingsOf(turned).find((one) => one.row === row && distance(one.from, there) < SAME);
    const done = its && drawIn(turned, strip, { ...how, opening: its });
    if (done) return done.ok ? ok(movedWork(done.value, over)) : done;
  }
  const wrong =
    doesNotGoIn(flat.value, { width, wayIn }) ??
    wrongLength(flat.value, { opening, to, overlap }) ??
    standsOut(work, opening);
  if (wrong) return fail(wrong);
  const drawn =
    to === undefined || round - to < SAME
      ? ok(work)
      : gatherOpening(work, opening, { to, rows: [], depth: width + BESIDE, all: true });
  if (!drawn.ok) return drawn;
  const comesOut =
    wayIn &&
    minus('at' in wayIn ? wayIn.at : between(wayIn.from, wayIn.to, 0.5), between(opening.from, opening.to, 0.5));
  const right = -dot(comesOut ?? { x: 0, y: 0 }, unit(minus(opening.to, opening.from)));
  const ring = to === undefined ? cordRing(strip, flat.value, round, right) : elasticRing(strip, flat.value, overlap);
  if (!ring.ok) return ring;

  const gathered = heldBy(work, drawn.value, casing.id);
  const inside = (width - flat.value.wide) / 2;
  const place = onto(asEdge(opening), topOf({ ...ring.value, plies: ring.value.plies.slice(0, 1) }), inside, 'middle');
  const { work: both, of } = stackUp([gathered, movedWork(ring.value, place)]);
  const isStrip = ({ id }: Ply) => of[1]!.has(id);
  const laid = inCasing(both, opening, width, {
    isStrip,
    casing: casing.id,
    byBody: wayIn !== undefined && 'at' in wayIn,
  });
  if (!laid.ok) return laid;
  const shut =
    to !== undefined && wayIn && 'from' in wayIn ? sewnShut(laid.value, opening, wayIn, to / round) : laid.value;
  const stitches = shut.stitches.map((one) =>
    one.id === casing.id && to !== undefined ? { ...one, channel: { ...one.channel!, elastic: piece } } : one,
  );
  const rows = stitches.slice(work.stitches.length).map(({ id }) => id);
  const drawnUp = to === undefined ? undefined : { edge: name, from: round, to };
  const done = { did: 'draw', stitches: rows, ...(drawnUp && { drawnUp }) };
  return boxesStand(work, ok(asOneStep([...work.done, ...strip.done], { ...shut, stitches }, done)));
}

/** Whether a row makes a casing along an opening: it runs as far inside as the casing has room. */
const isCasing =
  (line: Line) =>
  ({ channel, runs }: Stitch): boolean =>
    channel !== undefined &&
    !channel.strip &&
    runs.length > 0 &&
    runs.every((run) => liesOn(lineLeft(line, channel.width), run));

/** Whether a casing goes along an opening, by the line of it. */
export const hasCasing = ({ stitches }: Work, line: Line): boolean => stitches.some(isCasing(line));

/** The row of the casing that goes round an opening. */
function casingAt(work: Work, { name, line }: Opening): Result<Stitch, ClothFault> {
  const casing = work.stitches.findLast(isCasing(line));
  if (!casing) {
    const message = `No casing goes round the ${name}.`;
    const fix = 'Make one first, such as “casing: skirt, at: opening, width: 1, way in: 2”.';
    return fail({ code: 'unclear-casing', message, edge: name, fix });
  }
  const { elastic } = casing.channel!;
  if (elastic === undefined) return ok(casing);
  const message = `${quote(elastic)} lies in the casing already, and draws it up.`;
  return fail({ code: 'unclear-casing', message, edge: name, fix: 'Draw one elastic into each casing.' });
}

/** What leads into a casing in one wall: the gap in its row, from where to where, or a buttonhole. */
type WayIn = { readonly from: Point; readonly to: Point } | { readonly at: Point } | undefined;

function wayInto(work: Work, opening: Opening, { channel, runs }: Stitch, wall: readonly Ply[]): WayIn {
  const [from, to] = rowInside(work, opening, channel!.width);
  const way = unit(minus(to, from));
  const along = (p: Point) => dot(minus(p, from), way);
  const isOf = (one: number) => wall.some(({ id }) => id === one);
  const sewn = runs
    .filter(({ plies }) => plies.some(isOf))
    .map((run) => [along(run.from), along(run.to)].toSorted((a, b) => a - b) as [number, number])
    .toSorted((a, b) => a[0] - b[0]);
  let reached = 0;
  for (const [start, end] of [...sewn, [distance(from, to), Infinity] as const]) {
    if (start - reached > SAME) return { from: plus(from, times(way, reached)), to: plus(from, times(way, start)) };
    reached = Math.max(reached, end);
  }
  return work.marks.find(({ what, plies }) => what === 'buttonhole' && plies.some(isOf));
}

type Strip = { readonly long: number; readonly wide: number; readonly ply: Ply };

/** Why a strip does not go into a casing. */
function doesNotGoIn(
  { wide, ply: { piece } }: Strip,
  { width, wayIn }: { width: number; wayIn: WayIn },
): ClothFault | undefined {
  if (wide > width + SAME) {
    const message = `${quote(piece)} is … wide, and the casing has room for …: it does not go in.`;
    const fix = 'Make the casing wider, or take something narrower.';
    return { code: 'too-wide', message, lengths: [wide, width], piece, fix, amount: wide - width };
  }
  if (wayIn === undefined) {
    const message = `Nothing leads into the casing: ${quote(piece)} cannot be drawn in.`;
    const fix = 'Leave a gap in its row, such as “way in: 2 in”, or sew a buttonhole into its outer layer before.';
    return { code: 'unclear-casing', message, fix };
  }
  if ('at' in wayIn || distance(wayIn.from, wayIn.to) > wide - SAME) return undefined;
  const message = `${quote(piece)} is … wide, and the way into the casing is … long: it does not go in.`;
  const fix = 'Make “way in” of the casing longer.';
  return { code: 'too-wide', message, lengths: [wide, distance(wayIn.from, wayIn.to)], piece, fix };
}

/** Why elastic or a cord has not the length that it needs. */
function wrongLength(
  { long, ply: { piece } }: Strip,
  { opening: { name, round }, to, overlap }: DrawIn,
): ClothFault | undefined {
  if (to === undefined) {
    if (long > round - SAME) return undefined;
    const message = `${quote(piece)} is … long, and the ${name} is … round: its ends do not come out of the casing.`;
    const fix = 'Cut it longer, or say with “to” how far elastic draws the opening up.';
    return { code: 'strip-length', message, lengths: [long, round], piece, fix, amount: long - round };
  }
  if (!Number.isFinite(to) || to <= 0) {
    return { code: 'not-finite', message: 'An opening cannot be drawn up to nothing.', field: 'to' };
  }
  if (to > round + SAME) {
    const message = `The ${name} is only … round: elastic of … does not draw it up.`;
    return { code: 'not-shorter', message, lengths: [round, to], edge: name, field: 'to', amount: to - round };
  }
  if (!(overlap > 0) || overlap > to / 4) {
    const message = 'The ends of the elastic overlap by …, and its ring is … long.';
    return { code: 'too-deep', message, lengths: [overlap, to], field: 'overlap' };
  }
  if (Math.abs(long - to - overlap) <= SAME) return undefined;
  const message = `${quote(piece)} is … long: for a ring of …, with ends that overlap by …, it is cut … long.`;
  const lengths = [long, to, overlap, to + overlap];
  const fix = 'Cut it as long as that, or change “to” or “overlap”.';
  return { code: 'strip-length', message, lengths, piece, fix, amount: long - to - overlap };
}

/** Folds one after another, each at a line that what stays lies on the left of. */
function foldedAt(work: Work, lines: readonly Line[]): Sewn {
  let now = work;
  for (const line of lines) {
    const folded = fold(now, { line, lands: 'over', name: 'fold' });
    if (!folded.ok) return folded;
    now = folded.value;
  }
  return ok(now);
}

/** Elastic as a ring that lies flat: one half below, and over it both ends, which overlap and are sewn together. */
function elasticRing(strip: Work, { long }: Strip, overlap: number): Sewn {
  const lying = lyingAcross(strip, long);
  const { x, y, width, height } = boxOf(lying.plies);
  const by = (width - overlap) / 4 + overlap / 2;
  const join = nextNumber(lying);
  const isEnd = (a: Point, b: Point) => [x, x + width].some((end) => Math.abs(a.x - end) + Math.abs(b.x - end) < SAME);
  const held = withPlies(lying, (ply) => ({
    ...ply,
    outline: sides(ply.outline).map(({ from, to }, i) => ({
      ...ply.outline[i]!,
      ...(isEnd(from, to) && { held: join }),
    })),
  }));
  const folded = foldedAt({ ...held, stitches: [{ id: join, kind: 'seam', class: stitchClass.seam, runs: [] }] }, [
    { at: { x: x + by, y }, angle: 270 },
    { at: { x: x + width - by, y }, angle: 90 },
  ]);
  if (!folded.ok) return folded;
  const middle = x + width / 2;
  const runs = runsAlong(folded.value.plies.slice(1), { x: middle, y }, { x: middle, y: y + height });
  return ok({ ...folded.value, stitches: folded.value.stitches.map((one) => ({ ...one, runs })), done: [] });
}

/**
 * A cord that lies round once. Its ends come out of the way in, so far to the right of the middle of the upper half, and hang
 * down side by side, equally long.
 */
function cordRing(strip: Work, { long, wide }: Strip, round: number, right: number): Sewn {
  const lying = lyingAcross(strip, long);
  const { x, y, width } = boxOf(lying.plies);
  const middle = x + width / 2;
  const hangs = (long - round) / 2 > wide && round / 4 > Math.abs(right) + wide;
  let now = lying;
  for (const [side, turnsBack, turnsDown] of [
    [-1, 270, 135],
    [1, 90, 225],
  ] as const) {
    const back = { at: { x: middle + right + (side * round) / 4, y }, angle: turnsBack };
    const all = new Set(now.plies.map(({ id }) => id));
    const folded = foldInHand({ work: now, hand: all }, { line: back, lands: 'over', name: 'fold' });
    if (!folded.ok) return folded;
    now = folded.value.work;
    if (!hangs) continue;
    const down = { at: { x: middle + 2 * right + (side * wide) / 2, y: y + wide / 2 }, angle: turnsDown };
    const hanging = foldInHand({ work: now, hand: folded.value.moved }, { line: down, lands: 'over', name: 'fold' });
    if (!hanging.ok) return hanging;
    now = hanging.value.work;
  }
  return ok({ ...now, done: [] });
}

/** The edges along the foot of the gathers are held by the casing. */
function heldBy(before: Work, after: Work, casing: number): Work {
  const known = new Set(before.plies.flatMap(({ outline }) => outline.flatMap(({ held }) => held ?? [])));
  return withPlies(after, (ply) => ({
    ...ply,
    outline: ply.outline.map((edge) =>
      edge.name === GATHERS && edge.held !== undefined && !known.has(edge.held) ? { ...edge, held: casing } : edge,
    ),
  }));
}

type Strips = { readonly isStrip: (ply: Ply) => boolean; readonly casing: number; readonly byBody: boolean };

/**
 * A ring that lies on a work, between the layers of its casing: the first of its plies in the lower wall, the others in the upper
 * one. Ends that hang out come from between the layers where the row is open; by way of a buttonhole they lie on the wall.
 */
function inCasing(
  both: Work,
  opening: Opening,
  width: number,
  { isStrip, casing, byBody }: Strips,
): Result<Work, ClothFault> {
  const { line, row, name } = opening;
  const work = { ...both, plies: both.plies.filter((ply) => !isStrip(ply)) };
  const walls = wallsOf(work, row);
  const [low, ...others] = both.plies.filter(isStrip);
  const foot = lineLeft(line, width);
  const hangs = ({ outline }: Ply) => outline.some(({ from }) => leftOf(foot, from) > SAME);
  const outside = byBody ? others.filter(hangs) : [];
  const middle = between(opening.from, opening.to, 1 / 3);
  const at = plus(middle, times(inwardFrom(line), width / 2));
  const plies = [...work.plies];
  for (const [wall, strips] of [
    [walls.upper, others.filter((ply) => !outside.includes(ply))],
    [walls.lower, low ? [low] : []],
  ] as const) {
    const there = layersAt({ ...work, plies: wall }, at).filter(isOwnCloth(work, row));
    const body = bodyOf(there);
    if (!body || there.length < 2) {
      const message = `The casing does not go all round the ${name}: one of its walls has no second layer there.`;
      return fail({ code: 'unclear-casing', message, edge: name });
    }
    const isLowest = body === there[0];
    const own = withFolds(wall, body, line).map((ply) => wall.indexOf(ply));
    const [k, last] = [wall.indexOf(body), wall.indexOf(isLowest ? there.at(-1)! : there[0]!)];
    // Allowances that were turned in at the seams stay with the wall, and what was turned in at the opening keeps its own.
    const beside = own.filter((i) => (isLowest ? i >= k && i < last : i <= k && i > last));
    const next = wall[isLowest ? Math.max(...beside) + 1 : Math.min(...beside)]!;
    plies.splice(plies.indexOf(next), 0, ...strips);
    if (wall === walls.upper) plies.splice(plies.indexOf(body) + (isLowest ? 0 : 1), 0, ...outside);
  }
  // A cord that goes through a buttonhole goes through the wall there, and not round an edge of it.
  const through = new Set(outside.flatMap(({ outline }) => outline.flatMap(({ fold: number }) => number ?? [])));
  const unfolded = (ply: Ply): Ply => ({
    ...ply,
    outline: ply.outline.map(({ fold: number, ...edge }) => {
      if (number === undefined) return edge;
      return isStrip(ply) && through.has(number) ? { ...edge, held: casing } : { ...edge, fold: number };
    }),
  });
  const first = belowUpper(walls.upper, outside, plies);
  const stitches = both.stitches.map((one) =>
    one.id === row && first ? { ...one, round: { ...one.round!, over: first.id } } : one,
  );
  return ok({ ...both, plies: outside.length > 0 ? plies.map(unfolded) : plies, stitches });
}

/** A layer of a wall with what is folded or fused to it, but for what is folded along a line. */
function withFolds(wall: readonly Ply[], layer: Ply, line: Line): readonly Ply[] {
  const found = [layer];
  const isWith = (one: Ply, other: Ply) =>
    one.fusedTo === other.id || foldsBetween(one, other).some((side) => !liesOn(line, side));
  for (const one of found) {
    for (const ply of wall) if (!found.includes(ply) && (isWith(ply, one) || isWith(one, ply))) found.push(ply);
  }
  return found;
}

/** What lies below the upper wall and belongs to it; undefined where it begins with itself. */
function belowUpper(upper: readonly Ply[], outside: readonly Ply[], plies: readonly Ply[]): Ply | undefined {
  const [first] = outside;
  return first && plies.indexOf(first) < plies.indexOf(upper[0]!) ? first : undefined;
}

/** The way in is sewn up, where it lies once the cloth is drawn up. */
function sewnShut(
  work: Work,
  opening: Opening,
  gap: { readonly from: Point; readonly to: Point },
  share: number,
): Work {
  const way = unit(minus(opening.to, opening.from));
  const middle = between(opening.from, opening.to, 0.5);
  const drawn = (p: Point) => plus(p, times(way, (share - 1) * dot(minus(p, middle), way)));
  const { upper } = wallsOf(work, opening.row);
  const runs = runsAlong(upper, drawn(gap.from), drawn(gap.to));
  return { ...work, stitches: [...work.stitches, { id: nextNumber(work), kind: 'hem', class: stitchClass.hem, runs }] };
}
