/** Piping: a strip folded round a cord, and basted along raw edges to be caught in a seam. */
import { areaOf, ON } from './ring.ts';
import { edgesOn } from './sides.ts';
import { fail, ok, plainName, SAME } from '../measure/index.ts';
import { followedBy, identity, reflection } from '../geometry/transform.ts';
import { alongChain, chainsOf, follows, longEdges, partOfChain, ribbon, spanOf } from './ribbon.ts';
import { BESIDE, END, stitchSides } from './piping.ts';
import { lineThrough } from '../geometry/index.ts';
import { nextNumber, noted } from './work.ts';
import { outlineOf } from './silhouette.ts';
import { ownPlies } from './place.ts';
import { runsAlong, stitchClass } from './stitch.ts';
import { calledSo, stitchRing } from './sew-round.ts';
import { stackUp } from './combine.ts';
import type { ClothFault } from './fault.ts';
import type { LaidWork, Ply, Run, Sewn, Stitch, Work } from './work.ts';
import type { Chain, RibbonEdges } from './ribbon.ts';
import type { Side } from '../geometry/index.ts';
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
  const flat = [strip, cord].map(
    ({ plies, stitches, marks }) => plies.length === 1 && stitches.length === 0 && marks.length === 0,
  );
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
    edge: Pick<RibbonEdges, 'out' | 'in'>,
  ): Ply => {
    const [start, end] = chain.ends.map((isEnd) => ({ name: isEnd ? END : 'corner', bulge: 0, held: row }));
    const outline = ribbon(chain, out, inner, { ...edge, start: start!, end: end! });
    const [lies, first, second] = [alongChain(from, chain, out), chain.frames[0]!.at, chain.frames[1]!.at];
    return {
      ...from,
      id: number++,
      outline,
      face,
      fullness: cloth / areaOf(outline),
      laid: [...(from.laid ?? []), laid],
      piping: true,
      bent: true,
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
      const sideOf = (name: string) => ({ out: { name, bulge: 0 }, in: { name: 'fold', bulge: 0, fold } });
      lower.push(segment(one, stripPly, 'wrong', [deep, thick], cloth, sideOf(names[0])));
      upper.unshift(segment(one, stripPly, 'right', [deep, thick], cloth, sideOf(names[1])));
    };
    add(chain, chain.length * half);
    if (chain === chains[0] && overlap > 0)
      add(partOfChain(chain, (chain.length - overlap) / 2, (chain.length + overlap) / 2), overlap * half);
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
  return ok({ ring, chains: chainsOf(ring, isPiped), isRound: !isPiped.includes(false) });
}
