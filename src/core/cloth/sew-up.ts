/** Sewing up a folded work at its own edges: a bag of one piece, a tube of a strip, a sleeve. */
import { pipingWaits } from './piping.ts';
import { area, leftOf, lineThrough, sides } from '../geometry/index.ts';
import { asOneStep } from './group.ts';
import { grade } from './allowances.ts';
import { turn } from './turn.ts';
import { withEdgeInside } from './openings.ts';
import { calledSo, gapIn, heldRound, looseBetween, stitchRing, stitchRound } from './sew-round.ts';
import { distance } from '../geometry/point.ts';
import { facesTogether } from './seam.ts';
import { fail, listed, ok, SAME } from '../measure/index.ts';
import { liesOn } from './edge.ts';
import { noted } from './work.ts';
import { outlineOf } from './silhouette.ts';
import { inverse, transformPoint } from '../geometry/transform.ts';
import { laidWith } from './walls.ts';
import { withPlies } from './combine.ts';
import type { ClothFault } from './fault.ts';
import type { Outline, Point, Side } from '../geometry/index.ts';
import type { Ply, Sewn, SewnRound, Work } from './work.ts';
import type { WorkEdge } from './edge.ts';

export type SewUp = {
  /** The edges that are sewn, as they were found in the work. */
  readonly edges: readonly WorkEdge[];
  /** From the raw edges to the stitches, in mm. */
  readonly allowance: number;
  /** As when a pair is sewn round. */
  readonly gap?: { readonly edge: WorkEdge; readonly length: number; readonly begins?: number };
};

/**
 * Sews a folded work together at its own edges. What is neither sewn nor folded stays open: folded once and sewn at the
 * sides it is a bag, sewn opposite the fold alone a tube.
 *
 * Faults: `misses` where the work is not folded, or only one of its walls lies along an edge; those of the stitch line and
 * of the gap.
 *
 * @example
 * sewUp(folded, { edges: edgesOn(folded, ['left', 'right']).value, allowance: 6 })
 */
export function sewUp(work: Work, { edges, allowance, gap }: SewUp): Sewn {
  if (work.stitches.some((one) => one.round !== undefined && laidWith(work, one).length === 0)) {
    const message = 'This work is sewn together at its edges already.';
    return fail({ code: 'sewn-along', message, fix: 'Name all the edges in one step: “at: [left, right]”.' });
  }
  const waits = pipingWaits(work);
  if (waits) return fail(waits);
  const split = splitOf(work);
  if (!split) {
    const message = 'Only a work that is folded in two can be sewn up at its own edges.';
    return fail({ code: 'misses', message, fix: 'Fold it first, or sew two works together.' });
  }
  const { lower, upper, folds } = split;
  const cloth = [lower, upper].map((wall) => outlineOf(wall.filter(({ fusedTo }) => fusedTo === undefined)));
  const [first, second] = cloth;
  if (!first!.ok) return first!;
  if (!second!.ok) return second!;
  // A flap of the one wall goes on beyond the other, and is not sewn.
  const outline = area(first!.value) <= area(second!.value) ? first!.value : second!.value;
  const asked = gap ? [...edges, gap.edge] : edges;
  const folded = edges.find((edge) => sidesOn(outline, edge).some((side) => isFolded(side, folds)));
  if (folded) {
    const message = `The ${folded.name} is folded, and needs no seam.`;
    return fail({ code: 'misses', message, edge: folded.name });
  }
  const inside = edges.find((edge) => sidesOn(outline, edge).length === 0);
  if (inside) {
    const off = Math.min(...outline.map(({ from }) => leftOf(inside.line, from)));
    const message = `At the ${inside.name} the two walls do not end together: one of them lies … further in.`;
    return fail({ code: 'edge-inside', message, edge: inside.name, lengths: [off], amount: off });
  }
  const by = Object.fromEntries(edges.map(({ name }) => [name, allowance]));
  const line = stitchRing(calledSo(outline, asked), { allowance: by });
  if (!line.ok) return line;
  const left = gap && gapIn(line.value, gap);
  if (left && !left.ok) return left;
  const caught = looseBetween(work, line.value);
  const isFold = sides(line.value.ring).map((side, i) => line.value.allowances[i] === 0 && isFolded(side, folds));
  const over = upper.find(({ id }) => !caught.includes(id))!.id;
  const round: SewnRound = { ...line.value, folds: isFold, over, caught, ...(left && { gap: left.value }) };
  const stitch = stitchRound(work, round);
  const single = oneWallAlong(stitch.runs, split);
  if (single) return fail(single);
  const sewn = withPlies({ ...work, stitches: [...work.stitches, stitch] }, heldRound(round, stitch.id));
  const [run] = stitch.runs;
  const together =
    run &&
    facesTogether(
      [
        { ...work, plies: lower },
        { ...work, plies: upper },
      ],
      [run.from, run.to],
    );
  return ok(noted(sewn, { did: 'sew up', stitches: [stitch.id], ...(together && { together }) }));
}

/** How a French seam encloses its edges, in mm. */
export type Enclosed = {
  /** From the raw edges to the first row, sewn wrong sides together. */
  readonly first: number;
  /** What is left of that allowance after trimming. */
  readonly trimTo: number;
  /** From the first row to the second one, sewn right sides together. */
  readonly second: number;
};

/**
 * Sews a folded work up at its own edges with French seams: wrong sides together, trimmed, turned so that right sides come
 * together, and sewn again with the raw edges inside. It takes first and second of each edge, and the work lies wrong side out.
 *
 * Faults: `faces` where right sides come together at first; `too-deep` where the trimmed edges would stick out of the second
 * row; those of sewing up, trimming and turning.
 *
 * @example
 * sewUpFrench(folded, { edges, first: 9, trimTo: 3, second: 6 })
 */
export function sewUpFrench(work: Work, edges: readonly WorkEdge[], { first, trimTo, second }: Enclosed): Sewn {
  if (!(trimTo < second && trimTo <= first && trimTo >= 0) || !Number.isFinite(first + second)) {
    const message = 'The allowance left after trimming must be smaller than the second allowance.';
    return fail({ code: 'too-deep', message, amount: trimTo - second });
  }
  const once = sewUp(work, { edges, allowance: first });
  if (!once.ok) return once;
  if (once.value.done.at(-1)!.together !== 'wrong sides together') {
    const message = 'A French seam is sewn wrong sides together first, and here right sides come together.';
    return fail({
      code: 'faces',
      message,
      field: 'as',
      fix: 'Fold it the other way: “lands: under”, or “lands: over”.',
    });
  }
  const row = once.value.stitches.at(-1)!.id;
  const narrow = grade(once.value, trimTo, row);
  const turned = narrow.ok ? turn(narrow.value, false, row) : narrow;
  if (!turned.ok) return turned;
  const { round } = turned.value.stitches.find(({ id }) => id === row)!;
  const { turned: _, gap: __, ...body } = round!;
  const inside = round!.allowances.reduce(
    (ring, width, i) => (width > 0 ? withEdgeInside(ring, i, second) : ring),
    round!.ring,
  );
  const allowances = round!.allowances.map((width) => (width > 0 ? second : 0));
  const again: SewnRound = { ...body, ring: inside, allowances, caught: [] };
  const stitches = turned.value.stitches.map((one) => (one.id === row ? { ...one, round: undefined } : one));
  const loose = { ...turned.value, stitches };
  const stitch = stitchRound(loose, again);
  const sewn = withPlies({ ...loose, stitches: [...stitches, stitch] }, heldRound(again, stitch.id));
  const cutAway = narrow.ok ? narrow.value.done.at(-1)!.cutAway : undefined;
  const done = { did: 'French seam', stitches: [row, stitch.id], together: 'right sides together' as const };
  return ok(asOneStep(work.done, sewn, { ...done, ...(cutAway !== undefined && { cutAway }) }));
}

/** The two walls of a folded work, and the fold edges between them. */
type Split = { readonly lower: readonly Ply[]; readonly upper: readonly Ply[]; readonly folds: readonly Ends[] };
type Ends = { readonly from: Point; readonly to: Point };

/**
 * The walls on both sides of the largest fold of the work itself, not of what was laid on it. What lies between them belongs to the lower one, unless it is held to the
 * upper; a strap that was folded with the work lies on either side with its parts.
 */
function splitOf({ plies, stitches }: Work): Split | undefined {
  let best: { low: number; high: number; size: number } | undefined;
  for (const [low, one] of plies.entries()) {
    if (!isOwn(one)) continue;
    for (let high = low + 1; high < plies.length; high++) {
      const other = plies[high]!;
      if (!isOwn(other) || foldsBetween(one, other).length === 0) continue;
      const size = Math.min(area(one.outline), area(other.outline));
      if (!best || size > best.size + SAME || (size > best.size - SAME && high - low < best.high - best.low)) {
        best = { low, high, size };
      }
    }
  }
  if (!best) return undefined;
  const main = foldsBetween(plies[best.low]!, plies[best.high]!);
  const isMain = (p: Point) => main.some(({ from, to }) => Math.abs(leftOf(lineThrough(from, to), p)) <= SAME);
  const held = new Set([plies[best.high]!.id]);
  const between = plies.slice(best.low + 1, best.high);
  const known = new Map(plies.slice(best.low + 1).map((ply) => [ply.id, ply]));
  for (let grown = true; grown;) {
    grown = false;
    for (const ply of known.values()) {
      if (held.has(ply.id) || !isHeldTo(ply)) continue;
      held.add(ply.id);
      grown = true;
    }
  }
  const first = between.findIndex(({ id }) => held.has(id));
  const at = first < 0 ? best.high : best.low + 1 + first;
  const [lower, upper] = [plies.slice(0, at), plies.slice(at)];
  const folds = lower.flatMap((ply) =>
    upper.flatMap((other) => foldsBetween(ply, other).filter(({ from, to }) => isMain(from) && isMain(to))),
  );
  return { lower, upper, folds };

  /** Fused, sewn or folded together with something of the upper wall, but for the fold between both walls. */
  function isHeldTo(ply: Ply): boolean {
    if (ply.fusedTo !== undefined && held.has(ply.fusedTo)) return true;
    if (
      stitches.some(({ runs }) =>
        runs.some((run) => run.plies.includes(ply.id) && run.plies.some((id) => held.has(id))),
      )
    )
      return true;
    return [...held].some((id) => {
      const other = known.get(id);
      return other && foldsBetween(ply, other).some(({ from, to }) => !isMain(from) || !isMain(to));
    });
  }
}

const isOwn = ({ fusedTo, laid }: Ply): boolean => fusedTo === undefined && laid === undefined;

/** The edges at which two plies are folded to one another: one fold, and the same place of the cloth. */
export function foldsBetween(one: Ply, other: Ply): Ends[] {
  if (one.piece !== other.piece || one.copy !== other.copy) return [];
  const numbers = new Set(other.outline.flatMap(({ fold }) => fold ?? []));
  return sides(one.outline).filter(({ from, to }, i) => {
    const { fold } = one.outline[i]!;
    if (fold === undefined || !numbers.has(fold)) return false;
    return [from, to].every((p) => distance(placeOn(one, p), placeOn(other, p)) < SAME);
  });
}

const placeOn = ({ transform }: Ply, p: Point): Point => transformPoint(inverse(transform), p);

/** Whether a side lies on a fold for most of its length. */
function isFolded({ from, to }: Ends, folds: readonly Ends[]): boolean {
  const line = lineThrough(from, to);
  const along = folds.filter((fold) => liesOn(line, fold));
  return along.reduce((sum, fold) => sum + distance(fold.from, fold.to), 0) > distance(from, to) / 2;
}

const sidesOn = (outline: Outline, { line }: WorkEdge): Side[] => sides(outline).filter((side) => liesOn(line, side));

/** Why a seam would hold nothing: along some of it only one of the walls lies. */
function oneWallAlong(
  runs: readonly { readonly plies: readonly number[] }[],
  { lower, upper }: Split,
): ClothFault | undefined {
  const isOf = (wall: readonly Ply[], ids: readonly number[]) => wall.some(({ id }) => ids.includes(id));
  const single = runs.find(({ plies }) => !isOf(lower, plies) || !isOf(upper, plies));
  if (!single && runs.length > 0) return undefined;
  const pieces = [
    ...new Set([...lower, ...upper].flatMap(({ id, piece }) => (single?.plies.includes(id) ? piece : []))),
  ];
  const message =
    pieces.length === 0
      ? 'The seam misses the cloth.'
      : `Along the seam only one wall lies there, of ${listed(pieces)}: it would hold nothing.`;
  return { code: 'misses', message };
}
