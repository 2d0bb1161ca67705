/** Piping: a strip folded round a cord, and basted along raw edges to be caught in a seam. */
import { areaOf, ON } from './ring.ts';
import { cross, distance, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { edgesOn } from './sides.ts';
import { fail, ok, plainName, SAME } from '../measure/index.ts';
import { followedBy, identity, reflection, rotation, translation } from '../geometry/transform.ts';
import { lengthOf } from './curve.ts';
import { BESIDE, END, miter, stitchSides, wayAlong } from './piping.ts';
import { lineThrough, sides } from '../geometry/index.ts';
import { nextNumber, noted } from './work.ts';
import { outlineOf } from './silhouette.ts';
import { boxOf } from './size.ts';
import { ownPlies } from './place.ts';
import { runsAlong, stitchClass } from './stitch.ts';
import { calledSo, stitchRing } from './sew-round.ts';
import { stackUp } from './combine.ts';
import type { ClothFault } from './fault.ts';
import type { LaidWork, Ply, PlyEdge, Run, Sewn, Stitch, Work } from './work.ts';
import type { Point, Side } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';

/** How an edge is piped. */
export type Pipe = {
  /** Edges by name, or `all`. */
  readonly at: readonly string[];
  /** From the raw edges to the row beside the cord, where the seam comes, in mm. */
  readonly seam: number;
  /** Of piping that goes all round: how far the ends of its strip overlap, in mm. */
  readonly overlap: number;
  readonly called: Pick<LaidWork, 'work' | 'nth'>;
  /** Whether the strip was cut on the bias. */
  readonly isBias: boolean;
};

/** Raw edges may lie so much further in or out than those they are laid on: 1/16 in. Common practice, no source. */
const NEAR = 25.4 / 16;
/** What a strip is wider is trimmed; half an inch more on either side is a slip of the pen. Common practice, no source. */
const SPARE = 12.7;
/** Where the way turns more sharply than this, the strip is clipped and goes round a corner. */
const CORNER = Math.PI / 6;

/**
 * Folds a strip round a cord and bastes it along raw edges of a work, raw edges on raw edges, the cord inside the row; at
 * corners and on curves its allowance is clipped, and all round its ends overlap. Half of the strip is its allowance and
 * half of the way round the cord: a strip is as wide as the cord is round and two allowances. What it has more is trimmed.
 *
 * Faults: those of the edges; `too-deep` for a strip too narrow for the cord, or a curve too tight for it; `strip-length`;
 * `held` for a strip that lies in layers; `not-straight` for one that is not cut on the bias along a curve.
 *
 * @example
 * pipe(front, strip, cord, { at: ['all'], seam: 12, overlap: 25, called: { work: 'strip', nth: 1 }, isBias: true })
 */
export function pipe(work: Work, strip: Work, cord: Work, how: Pipe): Sewn {
  const { seam, called } = how;
  if (!(Number.isFinite(seam) && seam > ON)) {
    return fail({
      code: 'not-finite',
      message: 'The seam that is to catch the piping has no allowance.',
      field: 'seam',
    });
  }
  const flat = [strip, cord].map(({ plies, stitches }) => plies.length === 1 && stitches.length === 0);
  if (flat.includes(false) || strip.plies[0]!.outline.length !== 4) {
    const message = 'Strip and cord lie flat and by themselves before they are made into piping.';
    return fail({ code: 'held', message });
  }
  const way = wayOf(work, how);
  if (!way.ok) return way;
  const { ring, chains, isRound } = way.value;
  const curved = chains.find(({ edges }) => edges.length > 1);
  if (curved && !how.isBias) {
    const message = `The strip is not cut on the bias, and would not lie along the curve ${ring[curved.edges[0]!]!.name}.`;
    return fail({ code: 'not-straight', message, field: 'with', fix: 'Cut it on the bias: grain: bias.' });
  }
  const [long, wide] = spanOf(strip);
  const [cordLong, thick] = spanOf(cord);
  const around = Math.PI * thick;
  const deep = Math.min(seam, (wide - around) / 2);
  if (deep < seam - NEAR || wide > around + 2 * (seam + SPARE)) {
    const message = `The cord is … round: with two allowances of … the strip is cut … wide, and it is ….`;
    const fix = 'Cut it as wide as that, or take another cord.';
    return fail({ code: 'too-deep', message, field: 'with', lengths: [around, seam, around + 2 * seam, wide], fix });
  }
  const length = chains.reduce((sum, one) => sum + one.length, 0);
  const overlap = isRound ? how.overlap : 0;
  if (long < length + overlap - SAME || cordLong < length - SAME) {
    const isCord = cordLong < length - SAME;
    const message = isCord
      ? 'The cord is … long, and the stitch line it goes along is ….'
      : `The strip is … long, and the stitch line it goes along is …${isRound ? '; its ends overlap by …' : ''}.`;
    const lengths = isCord ? [cordLong, length] : [long, length, ...(isRound ? [overlap] : [])];
    return fail({ code: 'strip-length', message, lengths, field: isCord ? 'cord' : 'with', fix: 'Cut it longer.' });
  }
  const tight = chains.find((one) => !follows(one, thick) || !follows(one, -deep));
  if (tight) {
    const message = `The ${ring[tight.edges[0]!]!.name} bends too tightly, or is too short, for a cord so thick.`;
    return fail({ code: 'too-deep', message, edge: ring[tight.edges[0]!]!.name });
  }

  const { work: both } = stackUp([work, strip, cord]);
  const [stripPly, cordPly] = both.plies.slice(work.plies.length) as [Ply, Ply];
  let number = nextNumber(both);
  const row = number++;
  const names = longEdges(stripPly);
  const laid = { ...called, transform: identity };
  const segment = (
    chain: Chain,
    from: Ply,
    face: Ply['face'],
    [out, inner]: readonly [number, number],
    cloth: number,
    edge: EdgesOf,
  ): Ply => {
    const outline = ribbon(chain, out, inner, edge, row);
    const [lies, first, second] = [alongChain(from, chain, out), chain.frames[0]!.at, chain.frames[1]!.at];
    return {
      ...from,
      id: number++,
      outline,
      face,
      fullness: cloth / areaOf(outline),
      laid: [...(from.laid ?? []), laid],
      piping: true,
      transform: face === from.face ? lies : followedBy(lies, reflection(lineThrough(first, second))),
    };
  };
  const half = deep + around / 2;
  const lower: Ply[] = [];
  const upper: Ply[] = [];
  const cords: Ply[] = [];
  for (const chain of chains) {
    const fold = number++;
    const add = (one: Chain, cloth: number) => {
      const sideOf = (name: string): EdgesOf => ({ out: { name, bulge: 0 }, in: { name: 'fold', bulge: 0, fold } });
      lower.push(segment(one, stripPly, 'wrong', [deep, thick], cloth, sideOf(names[0])));
      upper.unshift(segment(one, stripPly, 'right', [deep, thick], cloth, sideOf(names[1])));
    };
    add(chain, chain.length * half);
    if (chain === chains[0] && overlap > 0) add(overlapIn(chain, ring, overlap), overlap * half);
    cords.push(
      segment(chain, cordPly, cordPly.face, [-BESIDE, thick], chain.length * thick, {
        out: { name: 'cord', bulge: 0, held: row },
        in: { name: 'cord', bulge: 0, held: row },
      }),
    );
  }
  const own = both.plies.slice(0, work.plies.length);
  const plies = [...own, ...lower, ...cords, ...upper];
  const through = [...own, ...lower, ...upper];
  const runs = chains.flatMap(({ edges }) =>
    edges.flatMap((i): Run[] => runsAlong(through, ring[i]!.from, ring[i]!.to)),
  );
  const stitch: Stitch = { id: row, kind: 'baste', class: stitchClass.baste, runs };
  const gone = [stripPly, cordPly].reduce((sum, { outline }) => sum + areaOf(outline), 0);
  const cutAway = gone - length * (2 * half + thick) - overlap * 2 * half;
  return ok(
    noted(
      { ...both, plies, stitches: [...both.stitches, stitch] },
      { did: 'pipe', stitches: [row], ...(cutAway > 0 && { cutAway }) },
    ),
  );
}

/** A corner of the stitch line, and 1 mm into the work there, measured square to both edges. */
type Frame = { readonly at: Point; readonly into: Point };
/** Edges of the stitch line that follow one another without a corner, with the corners between them; `length` of all, in mm. */
type Chain = {
  readonly edges: readonly number[];
  readonly frames: readonly Frame[];
  readonly length: number;
  /** Whether the piping ends at its first and its last corner, and does not go on round it. */
  readonly ends: readonly [boolean, boolean];
};
type EdgesOf = { readonly out: Omit<PlyEdge, 'from'>; readonly in: Omit<PlyEdge, 'from'> };
type Way = { readonly ring: readonly Side[]; readonly chains: readonly Chain[]; readonly isRound: boolean };

/** The stitch line that the piping goes along, parted at its corners. */
function wayOf(work: Work, { at, seam }: Pipe): Result<Way, ClothFault> {
  const outline = outlineOf(ownPlies(work).filter(({ fusedTo }) => fusedTo === undefined));
  if (!outline.ok) return outline;
  const isAll = at.some((one) => plainName(one) === 'all' || plainName(one) === 'outline');
  const called = new Set(outline.value.map(({ name }) => name));
  const named = isAll ? [] : at.filter((one) => !called.has(one));
  const found = named.length > 0 ? edgesOn(work, named) : ok([]);
  if (!found.ok) return found;
  const line = stitchRing(calledSo(outline.value, found.value), { allowance: seam });
  if (!line.ok) return line;
  const ring = stitchSides(line.value.ring);
  const wanted = new Set([...at, ...found.value.map(({ name }) => name)]);
  const isPiped = ring.map(({ name }) => isAll || wanted.has(name));
  const n = ring.length;
  const turns = (i: number) => Math.abs(turnBetween(ring[(i + n - 1) % n]!, ring[i]!)) > CORNER;
  const starts = ring.flatMap((_, i) => (isPiped[i] && (!isPiped[(i + n - 1) % n] || turns(i)) ? [i] : []));
  // A ring without a corner is parted in two, so that each part has two ends.
  const from = starts.length > 0 ? starts : [0, Math.floor(n / 2)];
  const chains = from.map((start): Chain => {
    const edges = [start];
    for (let i = (start + 1) % n; isPiped[i] && !from.includes(i); i = (i + 1) % n) edges.push(i);
    const frames = [...edges, (edges.at(-1)! + 1) % n].map((i): Frame => {
      const after = ring[i]!;
      return { at: after.from, into: miter(ring[(i + n - 1) % n]!, after) };
    });
    const ends = [!isPiped[(start + n - 1) % n], !isPiped[(edges.at(-1)! + 1) % n]] as const;
    return { edges, frames, ends, length: lengthOf(frames.map((one) => one.at)) };
  });
  return ok({ ring, chains, isRound: !isPiped.includes(false) });
}

const turnBetween = (a: Side, b: Side): number => {
  const [p, q] = [wayAlong(a), wayAlong(b)];
  return Math.atan2(cross(p, q), dot(p, q));
};

/** A line so far inside a chain. Beside a corner it cuts chords of a curve off that are shorter than the corner is wide. */
function inside({ frames }: Chain, by: number): Point[] {
  const places = frames.map(({ at, into }) => ({ at, p: plus(at, times(into, by)) }));
  const turnsBack = (i: number) => {
    const [a, b] = [places[i]!, places[i + 1]!];
    return dot(minus(b.at, a.at), minus(b.p, a.p)) < ON;
  };
  while (places.length > 2 && turnsBack(0)) places.splice(1, 1);
  while (places.length > 2 && turnsBack(places.length - 2)) places.splice(-2, 1);
  return places.map(({ p }) => p);
}

/** The middle of a straight chain, or the beginning of a curved one, at least so long: there the ends of a strip overlap. */
function overlapIn({ edges, frames }: Chain, ring: readonly Side[], long: number): Chain {
  const [first, second] = [frames[0]!.at, frames[1]!.at];
  if (edges.length === 1) {
    const [along, middle] = [wayAlong(ring[edges[0]!]!), times(plus(first, second), 0.5)];
    const into = { x: -along.y, y: along.x };
    const ends = [-0.5, 0.5].map((share): Frame => ({ at: plus(middle, times(along, share * long)), into }));
    return { edges, frames: ends, length: long, ends: [true, true] };
  }
  let count = 2;
  while (count < frames.length && lengthOf(frames.slice(0, count).map(({ at }) => at)) < long) count++;
  return { edges: edges.slice(0, count - 1), frames: frames.slice(0, count), length: long, ends: [false, false] };
}

/** Whether a line so far inside a chain goes the same way all along: it bends, if at all, no tighter than the chain. */
function follows({ frames, ...chain }: Chain, by: number): boolean {
  const points = inside({ ...chain, frames }, by);
  const whole = minus(frames.at(-1)!.at, frames[0]!.at);
  if (points.length === 2) return dot(whole, minus(points[1]!, points[0]!)) > SAME;
  return points.slice(2).every((p, i) => {
    const [a, b] = [minus(points[i + 1]!, points[i]!), minus(p, points[i + 1]!)];
    return dot(unit(a), unit(b)) > Math.cos(CORNER);
  });
}

/** What lies along a chain, from so far outside it to so far inside. */
function ribbon(chain: Chain, out: number, inner: number, edge: EdgesOf, row: number): PlyEdge[] {
  const [raw, far] = [inside(chain, -out), inside(chain, inner).reverse()];
  const [start, end] = chain.ends.map((isEnd) => ({ name: isEnd ? END : 'corner', bulge: 0, held: row }));
  return [
    ...raw.map((from, i) => ({ ...(i < raw.length - 1 ? edge.out : end!), from })),
    ...far.map((from, i) => ({ ...(i < far.length - 1 ? edge.in : start!), from })),
  ];
}

/** Length and width of what lies flat, in mm. */
function spanOf({ plies }: Work): [number, number] {
  const { width, height } = boxOf(plies);
  return [Math.max(width, height), Math.min(width, height)];
}

/** What the two long edges of a strip are called. */
function longEdges({ outline }: Ply): [string, string] {
  const [a, b] = sides(outline).toSorted((p, q) => distance(q.from, q.to) - distance(p.from, p.to));
  return [a!.name, b!.name];
}

/** How a strip lies along the beginning of a chain, its long side beside the raw edge. */
function alongChain(ply: Ply, { frames }: Chain, out: number) {
  const [from, to] = [frames[0]!.at, frames[1]!.at];
  const box = boxOf([ply]);
  const turn = rotation(
    (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI - (box.width >= box.height ? 0 : 90),
    { x: box.x, y: box.y },
  );
  const placed = translation(minus(minus(from, { x: 0, y: out }), { x: box.x, y: box.y }));
  return followedBy(followedBy(ply.transform, turn), placed);
}
