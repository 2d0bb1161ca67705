import { between, direction, distance, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { covers } from './ring.ts';
import { fail, ok, quote, SAME } from '../measure/index.ts';
import { laidGroups } from './sides.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import { noted } from './work.ts';
import { pathsInside } from './paths-inside.ts';
import { sewn } from './stitch.ts';
import type { LaidGroup } from './sides.ts';
import type { LaidWork, Ply, Run, Sewn, Stitch, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';
import type { WorkEdge } from './edge.ts';

/** A row closes a channel when it is sewn across more than this share of its width. Common practice, no source. */
const CLOSES = 0.5;
/** Two edges of a strip run opposite ways, as the cosine of the angle between them. */
const PARALLEL = -0.999;

/** The work after its edges were turned to a casing: the new rows know the room that lies beside them, in mm. */
export const withChannels = (before: Work, after: Work, width: number): Work => ({
  ...after,
  stitches: after.stitches.map((stitch, i) =>
    i < before.stitches.length ? stitch : { ...stitch, channel: { width } },
  ),
});

/** A work that was laid on another, by two of its sides that face away from one another; undefined if they are no such sides. */
export function stripBetween(work: Work, edges: readonly WorkEdge[]): LaidGroup | undefined {
  const [one, other, ...more] = edges;
  if (!one || !other || more.length > 0) return undefined;
  if (dot(direction(one.line.angle), direction(other.line.angle)) > PARALLEL || leftOf(one.line, other.from) <= SAME) {
    return undefined;
  }
  const isOf = (edge: WorkEdge, plies: readonly Ply[]) =>
    edge.plies?.length === plies.length && plies.every(({ id }) => edge.plies!.includes(id));
  return laidGroups(work).find(({ plies }) => isOf(one, plies) && isOf(other, plies));
}

/**
 * Sews a laid strip down along two of its edges, so many mm inside them; the room between the rows is a casing.
 *
 * Faults: `too-deep` where the rows leave no room; `misses` where a row does not hold the strip to what lies below it.
 *
 * @example
 * stripAsCasing(panel, edgesOn(panel, ['strip top', 'strip bottom']).value, 2, strip) // => room as wide as the strip less 4 mm
 */
export function stripAsCasing(work: Work, edges: readonly WorkEdge[], by: number, strip: LaidGroup): Sewn {
  const [one, other] = edges as [WorkEdge, WorkEdge];
  const width = leftOf(one.line, other.from) - 2 * by;
  if (width <= SAME) {
    const message = `The two rows leave no room for a cord in ${quote(strip.laid.work)}.`;
    return fail({ code: 'too-deep', message, edge: one.name, amount: -width });
  }
  const channel = { width, strip: { work: strip.laid.work, nth: strip.laid.nth } };
  const ways = pathsInside(work, edges, by);
  if (!ways.ok) return ways;
  const after = ways.value.reduce((now, way) => sewn(now, 'topstitch', way, { channel }), work);
  const rows = after.stitches.slice(work.stitches.length);
  const own = new Set(strip.plies.map(({ id }) => id));
  const loose = rows.findIndex(
    ({ runs }) => runs.length === 0 || runs.some(({ plies }) => plies.every((id) => own.has(id))),
  );
  if (loose >= 0) {
    const { name } = edges[loose] ?? one;
    const message = `The row inside the ${name} does not lie on other cloth all along: nothing holds the strip there.`;
    return fail({ code: 'misses', message, edge: name });
  }
  return ok(noted(after, { did: 'topstitch', stitches: rows.map(({ id }) => id) }));
}

/** A casing that is closed: the piece that it is made in, and whether it is a strip that was laid on. */
export type ClosedChannel = { readonly piece: string; readonly isStrip: boolean; readonly madeNow: boolean };

/**
 * The casings that are sewn shut by the rows of a work after the first `known`, and strips sewn down by those that were
 * shut before. What is only basted or gathered comes out again, and closes nothing. A row beside the channel, or along in
 * it, leaves it open.
 *
 * @example
 * closedChannels(topstitch(cased, { edge: 'left', inside: 6 }).value, cased.stitches.length)
 * // => [{ piece: 'bag', isStrip: false, madeNow: false }]
 */
export function closedChannels({ plies, stitches }: Work, known: number): ClosedChannel[] {
  const holds = stitches.map(({ kind }) => kind !== 'baste' && kind !== 'gather');
  const closed = new Map<string, ClosedChannel>();
  for (const [i, { channel }] of stitches.entries()) {
    const madeNow = i >= known;
    // The rows of a turned edge lie beside the fold that they make, and nothing was sewn through both layers before.
    if (!channel || (madeNow && !channel.strip)) continue;
    const rows = stitches.filter((row, k) => holds[k] && (madeNow ? !row.channel : k >= known));
    if (rows.length === 0) continue;
    for (const part of channelsOf(plies, stitches, i)) {
      if (!rows.some((row) => sewnAcross(part, row) > CLOSES * part.width)) continue;
      const isStrip = channel.strip !== undefined;
      closed.set(JSON.stringify([part.piece, isStrip]), { piece: part.piece, isStrip, madeNow });
    }
  }
  return [...closed.values()];
}

/** A straight part of a channel: from where, its ways along and across, and its walls, by number. */
type ChannelPart = {
  readonly piece: string;
  readonly at: Point;
  readonly along: Point;
  readonly across: Point;
  readonly length: number;
  readonly width: number;
  readonly walls: readonly [number, number];
};

/** The parts of the channel beside a row, each along one of its runs. */
function channelsOf(plies: readonly Ply[], stitches: readonly Stitch[], i: number): ChannelPart[] {
  const { channel, runs } = stitches[i]!;
  const { width, strip } = channel!;
  const isOther = ({ channel: its }: Stitch) =>
    strip && its?.strip?.work === strip.work && its.strip.nth === strip.nth && Math.abs(its.width - width) <= SAME;
  const others = stitches.flatMap((row, k) => (k !== i && isOther(row) ? row.runs : []));
  return runs.flatMap((run): ChannelPart[] => {
    const length = distance(run.from, run.to);
    if (length <= SAME) return [];
    const along = unit(minus(run.to, run.from));
    const middle = between(run.from, run.to, 0.5);
    const through = run.plies.flatMap((id) => plies.find((ply) => ply.id === id) ?? []);
    return [1, -1].flatMap((side): ChannelPart[] => {
      const across = { x: -along.y * side, y: along.x * side };
      const thereAt = (by: number) => through.filter(({ outline }) => covers(outline, plus(middle, times(across, by))));
      const walls = strip
        ? others.some((other) => lies(other, plus(middle, times(across, width)))) && wallsOf(thereAt(width / 2), strip)
        : thereAt(width - SAME).length >= 2 && thereAt(width + SAME).length <= 1 && outermost(thereAt(width / 2));
      if (!walls) return [];
      const [low, high] = walls;
      return [{ piece: low.piece, at: run.from, along, across, length, width, walls: [low.id, high.id] }];
    });
  });
}

/** The lowest and the highest of plies, where there are two. */
function outermost(plies: readonly Ply[]): [Ply, Ply] | undefined {
  const [low, high] = [plies[0], plies.at(-1)];
  return low && high && low !== high ? [low, high] : undefined;
}

/** What a laid strip lies on, and the side of the strip that lies on it: turned over, the strip lies below. */
function wallsOf(plies: readonly Ply[], { work, nth }: Pick<LaidWork, 'work' | 'nth'>): [Ply, Ply] | undefined {
  const isStrip = (ply: Ply) => ply.laid?.some((laid) => laid.work === work && laid.nth === nth) === true;
  const k = plies.findIndex((ply, i) => i > 0 && isStrip(ply) !== isStrip(plies[i - 1]!));
  if (k < 1) return undefined;
  const [below, above] = [plies[k - 1]!, plies[k]!];
  return isStrip(above) ? [below, above] : [above, below];
}

/** Whether a place lies on a run. */
function lies({ from, to }: Run, at: Point): boolean {
  const length = distance(from, to);
  const t = dot(minus(at, from), unit(minus(to, from)));
  return t > -SAME && t < length + SAME && Math.abs(leftOf(lineThrough(from, to), at)) <= 2 * SAME;
}

/** How much of the width of a channel a row is sewn across, through both its walls, in mm. */
function sewnAcross({ at, along, across, length, width, walls }: ChannelPart, { runs }: Stitch): number {
  const sewn = runs.flatMap((run): [number, number][] => {
    if (!walls.every((id) => run.plies.includes(id))) return [];
    const [a, b] = [run.from, run.to].map((point) => minus(point, at)) as [Point, Point];
    const [start, end] = shareWithin([dot(a, along), dot(b, along)], [-SAME, length + SAME]);
    if (start >= end) return [];
    const off = (share: number) => dot(between(a, b, share), across);
    const ends = [off(start), off(end)].map((one) => Math.min(width, Math.max(0, one)));
    return [[Math.min(...ends), Math.max(...ends)]];
  });
  let [sum, last] = [0, 0];
  for (const [from, to] of sewn.toSorted((p, q) => p[0] - q[0])) {
    sum += Math.max(0, to - Math.max(from, last));
    last = Math.max(last, to);
  }
  return sum;
}

/** Of a way from one number to another, the first and the last share that lies within bounds. */
function shareWithin([from, to]: [number, number], [least, most]: [number, number]): [number, number] {
  if (Math.abs(to - from) < 1e-9) return from >= least && from <= most ? [0, 1] : [0, 0];
  const shares = [(least - from) / (to - from), (most - from) / (to - from)];
  return [Math.max(0, Math.min(...shares)), Math.min(1, Math.max(...shares))];
}
