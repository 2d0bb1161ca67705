import { fail, ok } from '../measure/index.ts';
import { transformPoint, translation, followedBy, rotation, reflection, isReflected } from '../geometry/transform.ts';
import { moved } from './ring.ts';
import { boxOf } from './size.ts';
import { noted, putsIn, wasLaidAs } from './work.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Mark, Ply, Run, Sewn, SewnRound, Stitch, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** A ply where it comes to lie; turned over, its other face is up. */
export function movedPly(ply: Ply, transform: Transform): Ply {
  const over = isReflected(transform);
  return {
    ...ply,
    outline: moved(ply.outline, transform),
    face: over ? (ply.face === 'right' ? 'wrong' : 'right') : ply.face,
    transform: followedBy(ply.transform, transform),
    ...(ply.laid && { laid: ply.laid.map((one) => ({ ...one, transform: followedBy(one.transform, transform) })) }),
  };
}

export const movedRun = (run: Run, transform: Transform): Run => ({
  ...run,
  from: transformPoint(transform, run.from),
  to: transformPoint(transform, run.to),
});

export function movedStitch(stitch: Stitch, transform: Transform): Stitch {
  const runs = stitch.runs.map((run) => movedRun(run, transform));
  if (!stitch.round) return { ...stitch, runs };
  const { ring, allowances, folds, gap } = stitch.round;
  const there = moved(ring, transform);
  // Turned over, a ring is walked the other way, and so is the gap in it.
  const over = isReflected(transform);
  const [from, to] = over ? [gap?.to, gap?.from] : [gap?.from, gap?.to];
  return {
    ...stitch,
    runs,
    round: {
      ...stitch.round,
      ring: there,
      allowances: over ? [...allowances].reverse() : allowances,
      ...(folds && { folds: over ? [...folds].reverse() : folds }),
      ...(gap && { gap: { ...gap, from: transformPoint(transform, from!), to: transformPoint(transform, to!) } }),
    },
  };
}

export const movedMark = (mark: Mark, transform: Transform): Mark => ({
  ...mark,
  at: transformPoint(transform, mark.at),
  ...(mark.corner && { corner: transformPoint(transform, mark.corner) }),
});

/** The whole work where it comes to lie. Turned over, its order is turned round too. */
export function movedWork(work: Work, transform: Transform): Work {
  const plies = work.plies.map((ply) => movedPly(ply, transform));
  const over = isReflected(transform);
  return {
    ...work,
    plies: over ? plies.reverse() : plies,
    stitches: work.stitches.map((stitch) => {
      const there = movedStitch(stitch, transform);
      return over && there.round
        ? { ...there, round: { ...there.round, over: belowHollow(work, there.round) } }
        : there;
    }),
    marks: work.marks.map((mark) => movedMark(mark, transform)),
  };
}

/** The highest ply of the lower wall: once the work is turned over, the lowest of the upper one. */
function belowHollow({ plies, stitches }: Work, { over, caught, put }: SewnRound): number {
  const at = plies.findIndex(({ id }) => id === over);
  // What was put in lies inside, and is none of its walls.
  const others = putsIn({ stitches }, put);
  const isInside = (ply: Ply) => caught.includes(ply.id) || others.some((one) => wasLaidAs(ply, one));
  return plies.slice(0, Math.max(at, 0)).findLast((ply) => !isInside(ply))?.id ?? over;
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
  return ok(noted(movedWork(work, reflection({ at: middle, angle: about === 'upright' ? 90 : 0 })), { did: 'flip' }));
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
  return ok(noted(movedWork(work, rotation(degrees, middle)), { did: 'rotate' }));
}

/** Slides the work by so many mm. Faults: `not-finite`. */
export function slide(work: Work, by: Point): Sewn {
  if (!Number.isFinite(by.x + by.y)) return fail({ code: 'not-finite', message: 'The way to slide is not a number.' });
  return ok(movedWork(work, translation(by)));
}
