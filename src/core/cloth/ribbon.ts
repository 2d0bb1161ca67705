/** What lies along a line that may be curved: strips, in parts from corner to corner, each as wide as it is told. */
import { boxOf } from './size.ts';
import { cross, distance, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { followedBy, rotation, translation } from '../geometry/transform.ts';
import { lengthOf } from './curve.ts';
import { miter, wayAlong } from './piping.ts';
import { ON } from './ring.ts';
import { SAME } from '../measure/index.ts';
import { sides } from '../geometry/index.ts';
import type { Ply, PlyEdge, Work } from './work.ts';
import type { Point, Side } from '../geometry/index.ts';

/** Where a line turns more sharply than this, it goes round a corner. */
export const CORNER = Math.PI / 6;

/** A place on a line, and 1 mm into the work there: at a bend measured square to both edges that meet there. */
export type Frame = { readonly at: Point; readonly into: Point };

/** Edges of a ring that follow one another without a corner, with the places between them; `length` of all, in mm. */
export type Chain = {
  readonly edges: readonly number[];
  readonly frames: readonly Frame[];
  readonly length: number;
  /** Whether what lies along it ends with it, and does not go on round a corner. */
  readonly ends: readonly [boolean, boolean];
};

/** What the edges of a strip are called: the one outside, the one inside, and those at its ends. */
export type RibbonEdges = Record<'out' | 'in' | 'start' | 'end', Omit<PlyEdge, 'from'>>;

/** The edges of a ring that are wanted, parted at its corners; a ring without a corner in two halves. */
export function chainsOf(ring: readonly Side[], wanted: readonly boolean[]): Chain[] {
  const n = ring.length;
  const turns = (i: number) => Math.abs(turnBetween(ring[(i + n - 1) % n]!, ring[i]!)) > CORNER;
  const starts = ring.flatMap((_, i) => (wanted[i] && (!wanted[(i + n - 1) % n] || turns(i)) ? [i] : []));
  if (starts.length === 0 && !wanted.includes(true)) return [];
  const from = starts.length > 0 ? starts : [0, Math.floor(n / 2)];
  return from.map((start): Chain => {
    const edges = [start];
    for (let i = (start + 1) % n; wanted[i] && !from.includes(i); i = (i + 1) % n) edges.push(i);
    const frames = [...edges, (edges.at(-1)! + 1) % n].map((i): Frame => {
      const after = ring[i]!;
      return { at: after.from, into: miter(ring[(i + n - 1) % n]!, after) };
    });
    const ends = [!wanted[(start + n - 1) % n], !wanted[(edges.at(-1)! + 1) % n]] as const;
    return { edges, frames, ends, length: lengthOf(frames.map((one) => one.at)) };
  });
}

const turnBetween = (a: Side, b: Side): number => {
  const [p, q] = [wayAlong(a), wayAlong(b)];
  return Math.atan2(cross(p, q), dot(p, q));
};

/** A line so far inside a chain. Beside a corner it cuts chords of a curve off that are shorter than the corner is wide. */
export function inside({ frames }: Chain, by: number): Point[] {
  const places = frames.map(({ at, into }) => ({ at, p: plus(at, times(into, by)) }));
  const turnsBack = (i: number) => {
    const [a, b] = [places[i]!, places[i + 1]!];
    return dot(minus(b.at, a.at), minus(b.p, a.p)) < ON;
  };
  while (places.length > 2 && turnsBack(0)) places.splice(1, 1);
  while (places.length > 2 && turnsBack(places.length - 2)) places.splice(-2, 1);
  return places.map(({ p }) => p);
}

/** How long a line so far inside a chain is, in mm. */
export const lengthInside = (chain: Chain, by: number): number => lengthOf(inside(chain, by));

/** Whether a line so far inside a chain goes the same way all along: it bends, if at all, no tighter than the chain. */
export function follows({ frames, ...chain }: Chain, by: number): boolean {
  const points = inside({ ...chain, frames }, by);
  const whole = minus(frames.at(-1)!.at, frames[0]!.at);
  if (points.length === 2) return dot(whole, minus(points[1]!, points[0]!)) > SAME;
  return points.slice(2).every((p, i) => {
    const [a, b] = [minus(points[i + 1]!, points[i]!), minus(p, points[i + 1]!)];
    return dot(unit(a), unit(b)) > Math.cos(CORNER);
  });
}

/** Part of a chain, from so far along it to so far along it. */
export function partOfChain({ frames, ...chain }: Chain, from: number, to: number): Chain {
  const part: Frame[] = [];
  let gone = 0;
  for (const [i, next] of frames.slice(1).entries()) {
    const here = frames[i]!;
    const [long, along] = [distance(here.at, next.at), unit(minus(next.at, here.at))];
    const square = { x: -along.y, y: along.x };
    const place = (t: number): Frame =>
      t < ON ? here : t > long - ON ? next : { at: plus(here.at, times(along, t)), into: square };
    if (gone + long > from + ON && gone < to - ON) {
      if (part.length === 0) part.push(place(Math.max(0, from - gone)));
      part.push(place(Math.min(long, to - gone)));
    }
    gone += long;
  }
  return { ...chain, frames: part, length: to - from, ends: [true, true] };
}

/** The outline of what lies along a chain, from so far outside it to so far inside. */
export function ribbon(chain: Chain, out: number, inner: number, edge: RibbonEdges): PlyEdge[] {
  const [first, far] = [inside(chain, -out), inside(chain, inner).reverse()];
  return [
    ...first.map((from, i) => ({ ...(i < first.length - 1 ? edge.out : edge.end), from })),
    ...far.map((from, i) => ({ ...(i < far.length - 1 ? edge.in : edge.start), from })),
  ];
}

/** Length and width of what lies flat, in mm. */
export function spanOf({ plies }: Work): [number, number] {
  const { width, height } = boxOf(plies);
  return [Math.max(width, height), Math.min(width, height)];
}

/** What the two long edges of a strip are called. */
export function longEdges({ outline }: Ply): [string, string] {
  const [a, b] = sides(outline).toSorted((p, q) => distance(q.from, q.to) - distance(p.from, p.to));
  return [a!.name, b!.name];
}

/** How a strip lies along the beginning of a chain, its long side beside the raw edge. */
export function alongChain(ply: Ply, { frames }: Chain, out: number) {
  const [from, to] = [frames[0]!.at, frames[1]!.at];
  const box = boxOf([ply]);
  const turn = rotation(
    (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI - (box.width >= box.height ? 0 : 90),
    { x: box.x, y: box.y },
  );
  const placed = translation(minus(minus(from, { x: 0, y: out }), { x: box.x, y: box.y }));
  return followedBy(followedBy(ply.transform, turn), placed);
}
