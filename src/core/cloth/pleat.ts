import { asOneStep, foldInHand } from './group.ts';
import { direction, plus } from '../geometry/point.ts';
import { fail, ok } from '../measure/index.ts';
import { findEdge, lineInside, nameOf, reversedEdge } from './edge.ts';
import { offsets, ON, stretches } from './ring.ts';
import { isReflected, transformPoint } from '../geometry/transform.ts';
import { lineThrough } from '../geometry/index.ts';
import { acrossWork, sewn } from './stitch.ts';
import type { Line } from '../geometry/index.ts';
import type { EdgeReference, WorkEdge } from './edge.ts';
import type { Ply, Sewn, Work } from './work.ts';

/** A fold across a work, so many mm from an edge along the flat cloth, its kind as seen from the upper side. */
export type PleatLine = { readonly at: number; readonly kind: 'mountain' | 'valley' };

/** Folds along parallel lines. */
export type Pleats = {
  /** The edge that the lines are measured from and parallel to. */
  readonly from: EdgeReference;
  readonly folds: readonly PleatLine[];
  /** A row that far from each fold of a kind, through both sides of the pleat, sewn before the next fold is made. */
  readonly row?: { readonly on: PleatLine['kind']; readonly by: number };
};

/**
 * Folds the work along parallel lines, one after another from the edge they are measured from; the cloth beyond each
 * line goes with it. A mountain turns the upper side out, a valley turns it in.
 *
 * Faults: those of finding the edge; `not-finite`; `misses` for a line beyond the cloth; those of folding.
 *
 * @example
 * pleat(strip, { from: 'bottom', folds: [{ at: 50, kind: 'mountain' }, { at: 90, kind: 'valley' }] }) // 80 mm shorter
 */
export function pleat(work: Work, pleats: Pleats): Sewn {
  const folded = pleated(work, pleats);
  if (!folded.ok) return folded;
  const stitches = folded.value.stitches.slice(work.stitches.length).map(({ id }) => id);
  return ok(asOneStep(work.done, folded.value, { did: 'pleat', ...(stitches.length > 0 && { stitches }) }));
}

function pleated(work: Work, { from, folds, row }: Pleats): Sewn {
  const edge = findEdge(work, from);
  if (!edge.ok) return edge;
  const lines = [...folds].sort((a, b) => a.at - b.at);
  if (lines.some(({ at }) => !Number.isFinite(at))) {
    return fail({ code: 'not-finite', message: 'A fold line has a place that is not a number.', edge: nameOf(from) });
  }
  // The pleat goes from its edge to the folds on either side.
  const shallow = lines.some(({ at, kind }, i) => {
    const room = [lines[i - 1]?.at ?? 0, lines[i + 1]?.at ?? Infinity].map((other) => Math.abs(other - at));
    return row?.on === kind && row.by > Math.min(...room) - ON;
  });
  if (shallow) {
    const message = 'The row on the edge of a pleat lies beyond it: the pleat is not so deep.';
    return fail({ code: 'too-deep', message, field: 'topstitch' });
  }
  let now = work;
  let hand: ReadonlySet<number> = new Set(work.plies.map((ply) => ply.id));
  // Where the free end of the cloth lies: its way from the edge, and whether it runs away from the edge or back.
  let [height, reached, away] = [0, 0, true];
  for (const { at, kind } of lines) {
    height += away ? at - reached : reached - at;
    reached = at;
    // The free end lies beyond the line as seen along its own run.
    const inside = lineInside(edge.value, height);
    const line = away ? reversedEdge(inside) : inside;
    const lands = (kind === 'valley') === away ? 'over' : 'under';
    const step = foldInHand({ work: now, hand }, { line, lands, name: 'pleat' });
    if (!step.ok) return step;
    now = step.value.work;
    if (row?.on === kind) {
      const sewnOn = onOwnEdge(now, step.value.hand, lineInside(edge.value, away ? height - row.by : height + row.by));
      if (!sewnOn) {
        const message = 'The row on the edge of a pleat misses one of its sides.';
        return fail({ code: 'misses', message, field: 'topstitch' });
      }
      now = sewnOn;
    }
    hand = step.value.moved;
    away = !away;
  }
  return ok(now);
}

/** A row on the edge of a pleat that was just folded, through its two sides alone; undefined where it misses one of them. */
function onOwnEdge(work: Work, sides: ReadonlySet<number>, line: Line): Work | undefined {
  const rowed = sewn(work, 'topstitch', acrossWork(work, line));
  const row = rowed.stitches.at(-1)!;
  const runs = row.runs
    .map((run) => ({ ...run, plies: run.plies.filter((id) => sides.has(id)) }))
    .filter(({ plies }) => plies.length > 0);
  const isHeld = runs.length > 0 && runs.every(({ plies }) => plies.length > 1);
  return isHeld ? { ...rowed, stitches: [...rowed.stitches.slice(0, -1), { ...row, runs }] } : undefined;
}

/**
 * The left or the lower side of the box round a piece as it was cut, where it lies now, as an edge to measure marks from:
 * also where the cloth there was hemmed or cut away since.
 */
export function cutEdge({ piece, transform }: Ply, side: 'left' | 'bottom'): WorkEdge {
  // The piece lies left of it, and right of it once it was turned over.
  const ends = [{ x: 0, y: 0 }, side === 'left' ? { x: 0, y: -1 } : { x: 1, y: 0 }].map((p) =>
    transformPoint(transform, p),
  );
  const [from, to] = isReflected(transform) ? ends.reverse() : ends;
  const line = lineThrough(from!, to!);
  return { name: side, own: side, pieces: [piece], line, from: from!, to: to!, length: 1 };
}

/** Whether a line so far inside an edge goes through a ply. */
export function crossing({ outline }: Ply, edge: WorkEdge, at: number): boolean {
  const line = lineInside(edge, at);
  return stretches(outline, line.at, plus(line.at, direction(line.angle))).length > 0;
}

/** A tuck: a fold of cloth that a row of stitches holds. */
export type Tuck = {
  /** The edge that it is measured from and parallel to. */
  readonly from: EdgeReference;
  /** From that edge to the fold of the tuck, along the flat cloth, in mm. */
  readonly at: number;
  /** From its fold to its stitches, in mm. The work becomes twice this shorter. */
  readonly depth: number;
};

/**
 * Sews a tuck on the upper side and presses it toward the edge it is measured from.
 *
 * Source of the take-up of twice the depth: NIMI (Government of India), CITS Dress Making Trade Practical, p. 209.
 *
 * Faults: as for pleats; `too-deep` when the tuck reaches beyond the edge.
 *
 * @example
 * size(tuck(yoke, { from: 'top', at: 50, depth: 6 }).value).height // => 12 mm less
 */
export function tuck(work: Work, { from, at, depth }: Tuck): Sewn {
  if (!Number.isFinite(at + depth) || depth <= 0) {
    return fail({ code: 'not-finite', message: 'A tuck needs a place and a depth.', edge: nameOf(from) });
  }
  if (at - 2 * depth < -ON) {
    const message = `The tuck, pressed down, reaches beyond the edge ${nameOf(from)}.`;
    return fail({ code: 'too-deep', message, edge: nameOf(from), amount: 2 * depth - at });
  }
  const edge = findEdge(work, from);
  if (!edge.ok) return edge;
  const folds: PleatLine[] = [
    { at: at - depth, kind: 'valley' },
    { at, kind: 'mountain' },
  ];
  const far = Math.max(...work.plies.flatMap((ply) => offsets(ply.outline, edge.value.line)));
  if (at + depth >= far - ON) {
    return fail({
      code: 'too-deep',
      message: 'The tuck takes more cloth than there is.',
      edge: nameOf(from),
      amount: at + depth - far,
    });
  }
  const folded = pleated(work, { from, folds });
  if (!folded.ok) return folded;
  // The row lies at the foot of the tuck, through its two sides and not through what they were pressed onto.
  const tuckPlies = tuckSides(folded.value, work);
  const stitched = sewn(folded.value, 'seam', acrossWork(folded.value, lineInside(edge.value, at - depth)));
  const row = stitched.stitches.at(-1)!;
  const runs = row.runs.map((run) => ({ ...run, plies: run.plies.filter((id) => tuckPlies.has(id)) }));
  const stitches = [...stitched.stitches.slice(0, -1), { ...row, runs: runs.filter((run) => run.plies.length > 0) }];
  return ok(asOneStep(work.done, { ...stitched, stitches }, { did: 'tuck', stitches: [row.id] }));
}

/** The plies that the tuck made, those before and after it left out. */
function tuckSides(after: Work, before: Work): ReadonlySet<number> {
  const old = new Set(before.plies.map((ply) => ply.id));
  return new Set(after.plies.filter((ply) => !old.has(ply.id)).map((ply) => ply.id));
}
