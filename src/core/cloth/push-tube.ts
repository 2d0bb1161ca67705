/** Pushing the lining into a bag that was sewn as one long tube: outside and lining, joined at their tops, in one seam round. */
import { asOneStep } from './group.ts';
import { cutRound, openingsOf } from './openings.ts';
import { distance } from '../geometry/point.ts';
import { fail, ok, quote, SAME } from '../measure/index.ts';
import { fold } from './fold.ts';
import { laidWith, wallByWall, wallsOf } from './walls.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import { liesOn, reversedEdge } from './edge.ts';
import { middleOfWork } from './place.ts';
import { movedStitch, movedWork } from './move.ts';
import { nextNumber, wasLaidAs } from './work.ts';
import { reflection, rotation } from '../geometry/transform.ts';
import { withPlies } from './combine.ts';
import type { ClothFault } from './fault.ts';
import type { LaidWork, Ply, Run, Sewn, SewnRound, Stitch, Work } from './work.ts';
import type { Line } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';

/** The row that a long tube was sewn round with: turned, and open nowhere but at a gap. */
export const tubeRow = (work: Work): Stitch | undefined =>
  openingsOf(work).length > 0
    ? undefined
    : work.stitches.findLast((one) => one.round?.turned === true && laidWith(work, one).length === 0);

/**
 * Pushes one end of a tube that was sewn round and turned into the other, about the seam that joins its outside and its lining
 * in both walls. That seam is the edge of the opening afterwards.
 *
 * Faults: `not-sewn-round` where it is no such tube; `unknown-piece` where no piece of it is meant; `misses` where no seam goes
 * across both walls between the two, or not in one line; those of folding.
 *
 * @param isMeant tells the pieces of the end that is pushed in
 * @param called what later steps call it
 * @example
 * pushTube(turned, ({ piece }) => piece === 'lining', { work: 'lining', nth: 1 }) // => a bag with its lining inside
 */
export function pushTube(work: Work, isMeant: (ply: Ply) => boolean, called: Pick<LaidWork, 'work' | 'nth'>): Sewn {
  const row = tubeRow(work);
  if (!row) {
    const message = 'Only a tube that is sewn round and turned right side out is pushed into itself.';
    return fail({ code: 'not-sewn-round', message });
  }
  const seam = seamBetween(work, row, isMeant, called.work);
  if (!seam.ok) return seam;
  const line = seam.value;
  const over = reflection(line);
  const tag = (ply: Ply): Ply => ({ ...ply, laid: [...(ply.laid ?? []), { ...called, transform: over }] });
  const folded = wallByWall(work, wallsOf(work, row.id), (wall, level) => {
    const after = fold(wall, { line, lands: level === 'lower' ? 'over' : 'under', name: 'seam' });
    if (!after.ok) return after;
    const { came } = after.value.done.at(-1)!.undo!;
    return ok(withPlies(after.value, (ply) => (came.get(ply.id)?.moved ? tag(ply) : ply)));
  });
  if (!folded.ok) return folded;
  const { work: after, walls } = folded.value;
  const isPut = (ply: Ply) => wasLaidAs(ply, called);
  const parts = partsOf(row, line, over);
  const put = new Set(after.plies.filter(isPut).map(({ id }) => id));
  const ofPut = ({ plies }: Run) => plies.every((id) => put.has(id));
  const id = nextNumber(after);
  const stitches = after.stitches.flatMap((one): Stitch[] => {
    if (one.id !== row.id) return [one];
    const roundOf = (round: SewnRound, isInner: boolean): SewnRound => ({
      ...round,
      over: walls.upper.find((ply) => isPut(ply) === isInner)?.id ?? round.over,
      caught: round.caught.filter((caught) => put.has(caught) === isInner),
    });
    const outer = { ...one, runs: one.runs.filter((run) => !ofPut(run)), round: roundOf(parts.outer, false) };
    const inner = {
      ...one,
      id,
      partOf: row.id,
      runs: one.runs.filter(ofPut),
      round: { ...roundOf(parts.inner, true), put: called },
    };
    return [outer, inner];
  });
  const pushed = withPlies({ ...after, stitches }, (ply) => (put.has(ply.id) ? heldBy(ply, row.id, id) : ply));
  const there = asOneStep(work.done, pushed, { did: 'push in' });
  // The opening lies at the top, as a bag stands.
  return ok(isTopDown(there) ? movedWork(there, rotation(180, middleOfWork(there))) : there);
}

const isTopDown = (work: Work): boolean => openingsOf(work).some(({ name }) => name === 'bottom opening');

const heldBy = (ply: Ply, before: number, now: number): Ply => ({
  ...ply,
  outline: ply.outline.map((edge) => (edge.held === before ? { ...edge, held: now } : edge)),
});

/** What the row was sewn round on either side of the seam between both: of what is outside, and of what is pushed in. */
function partsOf({ round }: Stitch, line: Line, over: Parameters<typeof movedStitch>[1]) {
  const beyond = cutRound(round!, reversedEdge(line), 'seam') ?? round!;
  const inner = movedStitch({ id: 0, kind: 'seam', class: '', runs: [], round: beyond }, over).round!;
  return { outer: cutRound(round!, line, 'seam') ?? round!, inner };
}

/** The line of the seams that join what is meant to the rest, in both walls; what stays lies on its left. */
function seamBetween(work: Work, row: Stitch, isMeant: (ply: Ply) => boolean, name: string): Result<Line, ClothFault> {
  const meant = work.plies.filter((ply) => ply.laid === undefined && isMeant(ply));
  if (meant.length === 0) {
    const message = `Neither end of the tube is called ${quote(name)}, or has a piece of that name.`;
    return fail({ code: 'unknown-piece', message, field: 'push in' });
  }
  const isIn = (ids: readonly number[], plies: readonly Ply[]) => plies.some((ply) => ids.includes(ply.id));
  const others = work.plies.filter((ply) => ply.laid === undefined && !isMeant(ply));
  const runs = work.stitches.flatMap((one) =>
    one.id !== row.id && one.kind === 'seam'
      ? one.runs.filter(({ plies }) => isIn(plies, meant) && isIn(plies, others))
      : [],
  );
  const { lower, upper } = wallsOf(work, row.id);
  const [first] = runs;
  const isBoth = [lower, upper].every((wall) => runs.some(({ plies }) => isIn(plies, wall)));
  const line = first && distance(first.from, first.to) > SAME ? lineThrough(first.from, first.to) : undefined;
  if (!line || !isBoth || !runs.every((run) => liesOn(line, run))) {
    const message = `No seam goes straight across both walls between ${quote(name)} and the rest.`;
    const fix = 'Join outside and lining at their tops, each of the two alike, before they are sewn round.';
    return fail({ code: 'misses', message, field: 'push in', fix });
  }
  const farthest = meant
    .flatMap(({ outline }) => outline.map(({ from }) => leftOf(line, from)))
    .reduce((most, off) => (Math.abs(off) > Math.abs(most) ? off : most), 0);
  return ok(farthest < 0 ? line : reversedEdge(line));
}
