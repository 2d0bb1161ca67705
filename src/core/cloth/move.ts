import { fail, ok } from '../measure/index.ts';
import { lies, slid, followedBy, turned, turnedOver, turnsOver } from './lie.ts';
import { moved } from './ring.ts';
import { boxOf } from './size.ts';
import { noted } from './work.ts';
import type { Lie } from './lie.ts';
import type { Mark, Ply, Run, Sewn, Stitch, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** A ply where it comes to lie; turned over, its other face is up. */
export function movedPly(ply: Ply, lie: Lie): Ply {
  const over = turnsOver(lie);
  return {
    ...ply,
    outline: moved(ply.outline, lie),
    face: over ? (ply.face === 'right' ? 'wrong' : 'right') : ply.face,
    lie: followedBy(ply.lie, lie),
    ...(ply.laid && { laid: ply.laid.map((one) => ({ ...one, lie: followedBy(one.lie, lie) })) }),
  };
}

export const movedRun = (run: Run, lie: Lie): Run => ({ ...run, from: lies(lie, run.from), to: lies(lie, run.to) });

export function movedStitch(stitch: Stitch, lie: Lie): Stitch {
  const runs = stitch.runs.map((run) => movedRun(run, lie));
  if (!stitch.round) return { ...stitch, runs };
  const { ring, allowances, gap } = stitch.round;
  const there = moved(ring, lie);
  return {
    ...stitch,
    runs,
    round: {
      ...stitch.round,
      ring: there,
      allowances: turnsOver(lie) ? [...allowances].reverse() : allowances,
      ...(gap && { gap: { ...gap, from: lies(lie, gap.from), to: lies(lie, gap.to) } }),
    },
  };
}

export const movedMark = (mark: Mark, lie: Lie): Mark => ({ ...mark, at: lies(lie, mark.at) });

/** The whole work where it comes to lie. Turned over, its order is turned round too. */
export function movedWork(work: Work, lie: Lie): Work {
  const plies = work.plies.map((ply) => movedPly(ply, lie));
  return {
    ...work,
    plies: turnsOver(lie) ? plies.reverse() : plies,
    stitches: work.stitches.map((stitch) => movedStitch(stitch, lie)),
    marks: work.marks.map((mark) => movedMark(mark, lie)),
  };
}

/**
 * Turns the work over in its place, like a page (left and right change) or like a pancake (top and bottom change).
 *
 * @example
 * flip(flip(work).value).value // => the same work
 */
export function flip(work: Work, about: 'upright' | 'level' = 'upright'): Sewn {
  const box = boxOf(work.plies);
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  return ok(noted(movedWork(work, turnedOver({ at: middle, angle: about === 'upright' ? 90 : 0 })), { did: 'flip' }));
}

/**
 * Turns the work counter-clockwise by degrees about the middle of the box round it, or about a point.
 *
 * Faults: `not-finite`.
 *
 * @example
 * size(rotate(work, 90).value) // => width and height have changed places
 */
export function rotate(work: Work, degrees: number, about?: Point): Sewn {
  if (!Number.isFinite(degrees)) return fail({ code: 'not-finite', message: 'The angle to turn by is not a number.' });
  const box = boxOf(work.plies);
  const middle = about ?? { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  return ok(noted(movedWork(work, turned(degrees, middle)), { did: 'rotate' }));
}

/** Slides the work by so many mm. Faults: `not-finite`. */
export function slide(work: Work, by: Point): Sewn {
  if (!Number.isFinite(by.x + by.y)) return fail({ code: 'not-finite', message: 'The way to slide is not a number.' });
  return ok(movedWork(work, slid(by)));
}
