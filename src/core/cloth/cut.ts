import { identity } from '../geometry/transform.ts';
import { areaOf, SCRAP } from './ring.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { crossesOver, straightened } from '../geometry/index.ts';
import type { Outline } from '../geometry/index.ts';
import type { Sewn } from './work.ts';

/** How far the chords of a ply may leave the curves of its piece, in mm: as far as two lengths may differ and be the same. */
export const CHORD = SAME;

/** A piece as it comes from the cutting table. */
export type Cut = {
  readonly piece: string;
  readonly material: string;
  /** Its cut line, in mm. */
  readonly outline: Outline;
  /** The side that is up; the right side if left out. */
  readonly face?: 'right' | 'wrong';
};

/**
 * Cuts one piece: the work begins as a single ply.
 *
 * Faults: `not-finite`, `crosses-itself` and `no-size`.
 *
 * @example
 * cut({ piece: 'flap', material: 'linen', outline: rectangle(80, 60) }).value.plies.length // => 1
 */
export function cut({ piece, material, outline, face = 'right' }: Cut): Sewn {
  if (
    outline.some(({ from, bulge }) => !Number.isFinite(from.x) || !Number.isFinite(from.y) || !Number.isFinite(bulge))
  ) {
    return fail({ code: 'not-finite', message: `The outline of ${piece} has a number that is none.`, piece });
  }
  if (crossesOver(outline)) {
    return fail({ code: 'crosses-itself', message: `The outline of ${piece} crosses itself.`, piece });
  }
  const ring = straightened(outline, CHORD);
  if (!(areaOf(ring) > SCRAP)) return fail({ code: 'no-size', message: `The piece ${piece} has no size.`, piece });
  // A piece lying wrong side up shows the mirror of its pattern; its own coordinates run the other way across.
  const transform = face === 'right' ? identity : { ...identity, a: -1 };
  return ok({
    plies: [{ id: 1, piece, material, outline: ring, face, transform, fullness: 1 }],
    stitches: [],
    marks: [],
    done: [{ did: 'cut' }],
  });
}
