import { fail, ok } from '../measure/index.ts';
import { layersAt } from './layers.ts';
import { noted } from './work.ts';
import type { Mark, Sewn, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

export type Attach = {
  readonly name: string;
  readonly at: Point;
  /** How many layers it goes through, counted from the side it is set from; all that lie there if left out. */
  readonly through?: number;
  readonly from?: 'over' | 'under';
};

/**
 * Sets hardware, such as a snap, a button or a magnet, at a point of the work.
 *
 * Faults: `not-finite`; `off-the-work` when no cloth lies there.
 *
 * @example
 * attach(flap, { name: 'snap', at: { x: 40, y: 10 }, through: 2 })
 */
export function attach(work: Work, { name, at, through = Infinity, from = 'over' }: Attach): Sewn {
  if (!Number.isFinite(at.x + at.y))
    return fail({ code: 'not-finite', message: `The place of the ${name} is not a number.` });
  const here = layersAt(work, at).map((ply) => ply.id);
  if (here.length === 0) return fail({ code: 'off-the-work', message: `There is no cloth where the ${name} is set.` });
  const plies = from === 'over' ? here.slice(Math.max(0, here.length - through)) : here.slice(0, through);
  const mark: Mark = { kind: 'hardware', name, at, plies };
  return ok(noted({ ...work, marks: [...work.marks, mark] }, { did: 'attach' }));
}
