/** Binding an opening all round with a strip that is joined into a ring. */
import { asEdge, atOpening, rowInside, standsOut } from './openings.ts';
import { boxesStand } from './box.ts';
import { boxOf } from './size.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { fold } from './fold.ts';
import { foldInHand } from './group.ts';
import { heldBeyond } from './seam.ts';
import { identity, rotation } from '../geometry/transform.ts';
import { leftOf, lineThrough, sides } from '../geometry/index.ts';
import { lineLeft, reversedEdge } from './edge.ts';
import { middleOfWork, onto } from './place.ts';
import { movedWork } from './move.ts';
import { nextNumber } from './work.ts';
import { ON } from './ring.ts';
import { sewn, stitchClass } from './stitch.ts';
import { stackUp, withPlies } from './combine.ts';
import { stripLaid } from './bind-round.ts';
import type { AtWall, Opening } from './openings.ts';
import type { ClothFault } from './fault.ts';
import type { InHand } from './group.ts';
import type { Ply, Sewn, Work } from './work.ts';
import type { WorkEdge } from './edge.ts';

export type BindOpening = {
  /** Finished width, in mm. The strip is four times as wide, or a little less. */
  readonly width: number;
  /** Allowance of the seam that joins the strip into a ring, in mm. */
  readonly seam: number;
  /** How far inside the binding's inner fold the last row runs, in mm; 1.5 is common practice, no source. */
  readonly inside?: number;
};

/**
 * Binds an opening all round with one strip. Its ends are joined, in the middle of the upper wall, so that it is a ring; this is
 * sewn to the outside of each wall at the finished width, folded round the raw edge, and sewn down, through one wall at a time. The
 * work keeps its size.
 *
 * Faults: `not-finite`; `held` for a strip that is folded or joined, and for a work that is not turned; `too-deep` for one that is too narrow or too wide, and
 * for an opening that is too short; `strip-length` for a strip of another length; `edge-inside` where something stands out of
 * the opening; those of what is done at an opening.
 *
 * @example
 * bindOpening(bag, strip, openingsOf(bag)[0], { width: 10, seam: 6 }) // a strip as long as the opening is round and 12 mm more
 */
export function bindOpening(
  work: Work,
  strip: Work,
  opening: Opening,
  { width, seam, inside = 1.5 }: BindOpening,
): Sewn {
  const { name, line, round } = opening;
  if (!Number.isFinite(width + inside + seam) || width <= 0) {
    return fail({ code: 'not-finite', message: 'The finished width of the binding is not a length.', edge: name });
  }
  const flat = stripLaid(strip);
  if (!flat.ok) return flat;
  const wrong = wrongStrip(flat.value, opening, width, seam) ?? standsOut(work, opening);
  if (wrong) return fail(wrong);
  const beyond = work.plies.find(({ outline }) => outline.some(({ from }) => leftOf(line, from) < -SAME));
  if (beyond) {
    const message = `${beyond.piece} stands out of the ${name}: a binding folds round an edge that nothing sticks out of.`;
    return fail({ code: 'edge-inside', message, edge: name, piece: beyond.piece });
  }
  const ring = ringOf(strip, flat.value.long, seam);
  if (!ring.ok) return ring;
  const { work: both, of } = stackUp([
    work,
    movedWork(ring.value, onto(asEdge(opening), topOf(ring.value), 0, 'middle')),
  ]);
  const isStrip = ({ id }: Ply) => of[1]!.has(id);
  const [outermost, ...others] = both.plies.filter(isStrip);
  const stacked = { ...both, plies: [outermost!, ...both.plies.filter((ply) => !isStrip(ply)), ...others] };

  const [seamLine, rowLine] = [width, width - inside].map((by) => rowInside(work, opening, by));
  const act: AtWall = (wall, _, __, which) => {
    const [over, under] = which === 'upper' ? (['over', 'under'] as const) : (['under', 'over'] as const);
    const row = sewn(wall, 'seam', seamLine!);
    const { id } = row.stitches.at(-1)!;
    const held = withPlies(row, (ply) => heldBeyond(ply, lineLeft(line, width), seamLine!, id, width));
    const hand = new Set(wall.plies.filter(isStrip).map((ply) => ply.id));
    let now: InHand = { work: held, hand };
    // The strip is opened over its seam; then its last part is turned in, and all of it is folded round the raw edge.
    for (const [at, lands] of [
      [reversedEdge(lineLeft(line, width)), over],
      [lineLeft(line, -width), under],
      [line, under],
    ] as const) {
      const folded = foldInHand(now, { line: at, lands, name });
      if (!folded.ok) return folded;
      now = folded.value;
    }
    const down = sewn(now.work, 'edgestitch', rowLine!);
    const last = down.stitches.at(-1)!.id;
    const isTurnedIn = (ply: Ply, i: number) =>
      now.hand.has(ply.id) && ply.outline[i]!.fold === undefined && ply.outline[i]!.held === undefined;
    return ok(
      withPlies(down, (ply) => ({
        ...ply,
        outline: ply.outline.map((edge, i) => (isTurnedIn(ply, i) ? { ...edge, held: last } : edge)),
      })),
    );
  };
  const bound = boxesStand(stacked, atOpening(stacked, opening, act, { did: 'bind' }));
  if (!bound.ok) return bound;
  const rows = bound.value.done.at(-1)!.stitches ?? [];
  const join = stacked.stitches.at(-1)!.id;
  const met = [work.plies.find((ply) => ply.laid === undefined)?.piece ?? name, flat.value.ply.piece].map((piece) => ({
    edge: name,
    piece,
    length: round,
    allowance: width,
  }));
  return ok({ ...bound.value, done: [...both.done, { did: 'bind', stitches: [join, ...rows], met }] });
}

/** Why a strip does not go round an opening. */
function wrongStrip(
  { long, wide }: { long: number; wide: number },
  { name, round }: Opening,
  width: number,
  seam: number,
): ClothFault | undefined {
  const turn = wide - 3 * width;
  if (turn <= ON || turn > width + SAME) {
    const message = `A binding ${turn <= ON ? 'has nothing to turn in' : 'reaches too far'}: its strip should be four times its width.`;
    return { code: 'too-deep', message, edge: name, amount: wide - 4 * width };
  }
  if (!(seam > ON)) {
    const message = 'The ends of the strip are joined by a seam, and its allowance is nothing.';
    return { code: 'too-deep', message, edge: name };
  }
  if (seam > round / 4 - SAME) {
    const message = `The ${name} is … round: the seam that joins the strip, of …, does not lie flat in a ring so short.`;
    return { code: 'too-deep', message, edge: name, lengths: [round, seam] };
  }
  const off = long - round - 2 * seam;
  if (Math.abs(off) <= SAME) return undefined;
  const message = `The strip is … long, and the ${name} is … round: with a seam of … at both of its ends it is cut … long.`;
  const fix = 'Cut it as long as that, or trim it in a step before.';
  return {
    code: 'strip-length',
    message,
    lengths: [long, round, seam, round + 2 * seam],
    fix,
    edge: name,
    amount: off,
  };
}

/** A strip that lies across, whichever way it lay. */
export function lyingAcross(strip: Work, long: number): Work {
  const isAcross = boxOf(strip.plies).width >= long - SAME;
  return movedWork(strip, isAcross ? identity : rotation(90, middleOfWork(strip)));
}

/**
 * A strip as a ring that lies flat, its upper side inside: one half below, and over it both ends, joined in the middle by a
 * seam that is pressed open.
 */
function ringOf(strip: Work, long: number, seam: number): Sewn {
  const lying = lyingAcross(strip, long);
  const { x, y, width, height } = boxOf(lying.plies);
  const join = nextNumber(lying);
  const isEnd = (a: number, b: number) => [x, x + width].some((end) => Math.abs(a - end) + Math.abs(b - end) < SAME);
  const held = withPlies(lying, (ply) => ({
    ...ply,
    outline: sides(ply.outline).map(({ from, to }, i) => ({
      ...ply.outline[i]!,
      ...(isEnd(from.x, to.x) && { held: join }),
    })),
  }));
  const quarter = (width - 2 * seam) / 4;
  let now: Work = {
    ...held,
    stitches: [...held.stitches, { id: join, kind: 'seam', class: stitchClass.seam, runs: [] }],
  };
  for (const [by, lands] of [
    [seam, 'under'],
    [seam + quarter, 'over'],
  ] as const) {
    for (const line of [
      { at: { x: x + by, y }, angle: 270 },
      { at: { x: x + width - by, y }, angle: 90 },
    ]) {
      const folded = fold(now, { line, lands, name: lands === 'under' ? 'seam' : 'fold' });
      if (!folded.ok) return folded;
      now = folded.value;
    }
  }
  const middle = x + width / 2;
  const ends = now.plies
    .slice(1)
    .filter(({ outline }) => outline.some(({ from }) => Math.abs(from.x - middle) > seam + SAME));
  const run = { from: { x: middle, y }, to: { x: middle, y: y + height }, plies: ends.map(({ id }) => id) };
  return ok({
    ...now,
    stitches: now.stitches.map((one) => (one.id === join ? { ...one, runs: [run] } : one)),
    done: strip.done,
  });
}

/** The upper edge of a work that lies across, walked with the cloth on its left. */
export function topOf({ plies }: Work): WorkEdge {
  const { x, y, width, height } = boxOf(plies);
  const [from, to] = [
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return { name: 'top', own: 'top', pieces: [], line: lineThrough(from, to), from, to, length: width };
}
