/** A curved edge bound with a strip that is cut on the bias. */
import { alongChain, chainsOf, follows, lengthInside, longEdges, partOfChain, ribbon, spanOf } from './ribbon.ts';
import { areaOf, ON } from './ring.ts';
import { distance, dot, plus, times } from '../geometry/point.ts';
import { fail, ok, plainName, SAME } from '../measure/index.ts';
import { followedBy, reflection } from '../geometry/transform.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import { nextNumber, noted } from './work.ts';
import { outlineOf } from './silhouette.ts';
import { ownPlies } from './place.ts';
import { runsAlong, stitchClass } from './stitch.ts';
import { stackUp } from './combine.ts';
import { stitchSides, wayAlong } from './piping.ts';
import type { Chain, Frame } from './ribbon.ts';
import type { Ply, PlyEdge, Run, Sewn, Stitch, Work } from './work.ts';
import type { Point, Side } from '../geometry/index.ts';

/** How a curved edge is bound. */
export type BindCurve = {
  /** Finished width, in mm; the strip is four times as wide. */
  readonly width: number;
  /** Allowance of the seam that joins the ends of a strip that goes all round, in mm. */
  readonly seam: number;
  readonly isBias: boolean;
  /** How far inside the binding's inner fold the last row runs, in mm; 1.5 is common practice, no source. */
  readonly inside?: number;
};

/**
 * A strip on the bias gives so much along its outer fold, where it is longer or shorter than the stitch line: a quarter, as
 * at an outer curve of five times the width of the binding. Common practice, no source.
 */
const GIVES = 0.25;

/** A curved edge, or a ring without corners, that a step names: the edges of the outline, and how they follow one another. */
export type CurvedEdge = {
  readonly ring: readonly Side[];
  readonly chains: readonly Chain[];
  readonly isRound: boolean;
};

/**
 * The curved edge that names stand for: edges of the outline that follow one another without a corner, or `all` of one that
 * has none. Undefined where they are straight, or go round corners.
 */
export function curvedAt(work: Work, at: readonly string[]): CurvedEdge | undefined {
  const outline = outlineOf(ownPlies(work).filter(({ fusedTo }) => fusedTo === undefined));
  if (!outline.ok) return undefined;
  const ring = stitchSides(outline.value);
  const isAll = at.some((one) => ['all', 'outline'].includes(plainName(one)));
  const names = new Set(ring.map(({ name }) => plainName(name)));
  if (!isAll && !at.every((one) => names.has(plainName(one)))) return undefined;
  const wanted = ring.map(({ name }) => isAll || at.some((one) => plainName(one) === plainName(name)));
  const chains = chainsOf(ring, wanted);
  const isRound = !wanted.includes(false);
  // A ring without a corner is parted in two; what has more parts goes round corners.
  const isSmooth = chains.length === (isRound ? 2 : 1) && chains.some(({ frames }) => bends(frames));
  return isSmooth ? { ring, chains: isRound ? chains : chains.map((one) => cutFlush(one, ring)), isRound } : undefined;
}

/** Whether a line is no straight one. */
const bends = (frames: readonly Frame[]): boolean => {
  const line = lineThrough(frames[0]!.at, frames.at(-1)!.at);
  return frames.some(({ at }) => Math.abs(leftOf(line, at)) > SAME);
};

/** A chain that ends with the edges beside it: what lies along it is cut off in line with them. */
function cutFlush(chain: Chain, ring: readonly Side[]): Chain {
  const n = ring.length;
  const beside = (at: Point, along: Side, away: Point): Frame => {
    const way = wayAlong(along);
    const deep = dot({ x: -way.y, y: way.x }, away);
    return { at, into: deep > 0.2 ? times(away, 1 / deep) : { x: -way.y, y: way.x } };
  };
  const [first, last] = [chain.edges[0]!, chain.edges.at(-1)!];
  const [before, after] = [ring[(first + n - 1) % n]!, ring[(last + 1) % n]!];
  const start = beside(chain.frames[0]!.at, ring[first]!, times(wayAlong(before), -1));
  const end = beside(chain.frames.at(-1)!.at, ring[last]!, wayAlong(after));
  return { ...chain, frames: [start, ...chain.frames.slice(1, -1), end] };
}

/**
 * Binds a curved edge: the strip is sewn to it right sides together at the finished width, opened, folded round the raw edge
 * with its own raw edge turned in, and sewn down. It is as long as the stitch line; all round its ends are joined by a seam.
 *
 * Faults: `not-straight` for a strip that is not cut on the bias; `strip-length`; `too-deep` for a strip too narrow or too
 * wide, or where the curve bends more than a strip on the bias gives; `held` for one that lies in layers.
 */
export function bindCurve(work: Work, strip: Work, { ring, chains, isRound }: CurvedEdge, how: BindCurve): Sewn {
  const { width, seam, isBias, inside = 1.5 } = how;
  const names = new Set(chains.flatMap(({ edges }) => edges.map((i) => ring[i]!.name)));
  const name = names.size === 1 ? [...names][0]! : 'outline';
  if (!Number.isFinite(width + inside + seam) || width <= 0) {
    return fail({ code: 'not-finite', message: 'The finished width of the binding is not a length.' });
  }
  if (!isBias) {
    const message = `The ${name} is curved, and the strip is not cut on the bias: it would not lie flat there.`;
    return fail({ code: 'not-straight', message, field: 'with', fix: 'Cut it on the bias: grain: bias.' });
  }
  const hasMore = strip.stitches.length > 0 || strip.marks.length > 0;
  if (strip.plies.length !== 1 || strip.plies[0]!.outline.length !== 4 || hasMore) {
    const message = 'A strip that is bound along a curve lies flat, in one layer with straight ends.';
    return fail({
      code: 'held',
      message,
      fix: 'Bind with a strip that is neither folded nor gathered, with nothing on it.',
    });
  }
  const [long, wide] = spanOf(strip);
  const turn = wide - 3 * width;
  if (turn <= ON || turn > width + SAME) {
    const message = `A binding ${turn <= ON ? 'has nothing to turn in' : 'reaches too far'}: its strip should be four times its width.`;
    return fail({
      code: 'too-deep',
      message,
      field: 'width',
      amount: wide - 4 * width,
      fix: 'Cut it four times as wide.',
    });
  }
  const lengths = chains.map((chain) => lengthInside(chain, width));
  const length = lengths.reduce((sum, one) => sum + one, 0);
  const raw = chains.reduce((sum, one) => sum + one.length, 0);
  const gives = raw / length - 1;
  if (!chains.every((one) => follows(one, width)) || Math.abs(gives) > GIVES) {
    const message = `The ${name} bends so tightly that a binding so wide would not lie flat: along its fold it is … and along the stitches ….`;
    return fail({
      code: 'too-deep',
      message,
      field: 'width',
      lengths: [raw, length],
      fix: 'Make it narrower, or face the edge.',
    });
  }
  const joins = isRound ? seam : 0;
  if (isRound && !(seam > ON)) {
    return fail({
      code: 'too-deep',
      message: 'The ends of the strip are joined by a seam, and its allowance is nothing.',
    });
  }
  if (Math.abs(long - length - 2 * joins) > NEAR) {
    const message = `The strip is … long, and the stitch line that it goes along is …${isRound ? ': with a seam of … at both of its ends it is cut …' : ''}.`;
    const fix = 'Cut it as long as that, or trim it in a step before.';
    const all = [long, length, ...(isRound ? [joins, length + 2 * joins] : [])];
    return fail({ code: 'strip-length', message, field: 'with', lengths: all, fix });
  }

  const { work: both } = stackUp([work, strip]);
  const ply = both.plies.at(-1)!;
  let number = nextNumber(both);
  const [seamRow, row, join] = [number++, number++, number++];
  const [first, second] = longEdges(ply);
  // Of what the strip is longer or shorter than the sum of what is sewn, each part takes its share.
  const share = long / (length + 2 * joins);
  const bands: Ply[][] = [[], [], [], []];
  const lay = (chain: Chain, along: number, edge: number, ends: readonly [Band, Band]) => {
    const folds = [number++, number++, number++];
    const held = (name: string, by: number): Band => ({ name, bulge: 0, held: by });
    const fold = (k: number): Band => ({ name: k === 1 ? ring[edge]!.name : 'fold', bulge: 0, fold: folds[k]! });
    const parts: readonly { deep: readonly [number, number]; out: Band; in: Band; isRight: boolean }[] = [
      { deep: [0, width], out: held(first, seamRow), in: fold(0), isRight: false },
      { deep: [0, width], out: fold(1), in: fold(0), isRight: true },
      { deep: [0, width], out: fold(1), in: fold(2), isRight: false },
      { deep: [width - turn, width], out: held(second, row), in: fold(2), isRight: true },
    ];
    for (const [i, { deep, out, in: inner, isRight }] of parts.entries()) {
      const outline = ribbon(chain, -deep[0], deep[1], { out, in: inner, start: ends[0], end: ends[1] });
      const lies = alongChain(ply, chain, 0);
      const face = isRight ? 'right' : 'wrong';
      const about = reflection(lineThrough(chain.frames[0]!.at, chain.frames[1]!.at));
      bands[i]!.push({
        ...ply,
        id: number++,
        outline,
        face,
        bent: true,
        fullness: (share * along * (deep[1] - deep[0])) / areaOf(outline),
        transform: face === ply.face ? lies : followedBy(lies, about),
      });
    }
  };
  const end: Band = isRound ? { name: 'corner', bulge: 0, held: join } : { name: 'end', bulge: 0, held: seamRow };
  for (const [i, chain] of chains.entries()) lay(chain, lengths[i]!, chain.edges[0]!, [end, end]);
  if (isRound) {
    // The allowances of the seam that joins the ends are pressed open, one on either side of it.
    const [a, b] = [chains[0]!, chains.at(-1)!];
    lay(partOfChain(a, 0, joins), joins, a.edges[0]!, [end, end]);
    lay(partOfChain(b, b.length - joins, b.length), joins, b.edges.at(-1)!, [end, end]);
  }
  const own = both.plies.slice(0, work.plies.length).map((one) => heldAlong(one, chains, seamRow));
  const [allowance, front, back, turned] = bands as [Ply[], Ply[], Ply[], Ply[]];
  // Where the ends are joined, each fold lies inside the one that goes round it.
  const plies = [...back, ...turned.toReversed(), ...own, ...allowance, ...front.toReversed()];
  const runsIn = (through: readonly Ply[], by: number): Run[] =>
    chains.flatMap((chain) => {
      const way = lineOf(chain, by);
      return way.slice(1).flatMap((to, i) => runsAlong(through, way[i]!, to));
    });
  const stitches: Stitch[] = [
    { id: seamRow, kind: 'seam', class: stitchClass.seam, runs: runsIn([...own, ...allowance], width - ON) },
    { id: row, kind: 'edgestitch', class: stitchClass.edgestitch, runs: runsIn(plies, width - inside) },
  ];
  if (isRound) {
    const { at, into } = chains[0]!.frames[0]!;
    const across = ([low, high]: readonly [number, number], band: readonly Ply[]): Run => ({
      from: plus(at, times(into, low)),
      to: plus(at, times(into, high)),
      plies: [band[0]!.id, band[1]!.id],
    });
    const runs = bands.map((band, i) => across(i === 3 ? [width - turn, width] : [0, width], band));
    stitches.unshift({ id: join, kind: 'seam', class: stitchClass.seam, runs });
  }
  return ok(
    noted(
      { ...both, plies, stitches: [...both.stitches, ...stitches] },
      { did: 'bind', stitches: stitches.map(({ id }) => id) },
    ),
  );
}

type Band = Omit<PlyEdge, 'from'>;

/** A strip is cut to the marks of a ruler, and a bias strip gives that much: 1/16 in. Common practice, no source. */
const NEAR = 25.4 / 16;

/** The line so far inside a chain. */
const lineOf = ({ frames }: Chain, by: number): Point[] => frames.map(({ at, into }) => plus(at, times(into, by)));

/** The raw edges of the work along the bound ones are held by their seam. */
function heldAlong(ply: Ply, chains: readonly Chain[], seam: number): Ply {
  const isBound = (a: Point, b: Point) =>
    chains.some(({ frames }) => frames.slice(1).some(({ at }, i) => [a, b].every((p) => isOn(p, frames[i]!.at, at))));
  const outline = ply.outline.map((edge, i) => {
    const to = ply.outline[(i + 1) % ply.outline.length]!.from;
    const isRaw = edge.fold === undefined && edge.held === undefined;
    return isRaw && isBound(edge.from, to) ? { ...edge, held: seam } : edge;
  });
  return { ...ply, outline };
}

const isOn = (p: Point, from: Point, to: Point): boolean =>
  Math.abs(distance(p, from) + distance(p, to) - distance(from, to)) < SAME / 10 ||
  distance(p, from) < SAME ||
  distance(p, to) < SAME;
