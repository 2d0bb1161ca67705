import { boxOf } from './size.ts';
import { fail, ok } from '../measure/index.ts';
import { layersAt } from './layers.ts';
import { noted } from './work.ts';
import type { ClothFault } from './fault.ts';
import type { Mark, Sewn, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** Why something does not go through so many layers: fewer lie there. */
export function tooFew(there: number, through: number): ClothFault | undefined {
  if (through === Infinity || through <= there) return undefined;
  const message = `Only ${there === 1 ? 'one layer lies' : `${there} layers lie`} there.`;
  const fix = 'Leave “through” out, and it goes through all.';
  return { code: 'too-many', message, field: 'through', fix };
}

export type Attach = {
  readonly name: string;
  /** What it is: snap, button, ring. */
  readonly what?: string;
  /** The cloth runs through it. */
  readonly slides?: true;
  readonly at: Point;
  /** How many layers it goes through, counted from the side it is set from; all that lie there if left out. */
  readonly through?: number;
  readonly from?: 'over' | 'under';
};

/**
 * Sets hardware, such as a snap, a button or a magnet, at a point of the work.
 *
 * Faults: `not-finite`; `too-many` layers; `off-the-work` when no cloth lies there.
 *
 * @example
 * attach(flap, { name: 'snap', at: { x: 40, y: 10 }, through: 2 })
 */
export function attach(work: Work, { name, what, slides, at, through = Infinity, from = 'over' }: Attach): Sewn {
  if (!Number.isFinite(at.x + at.y))
    return fail({ code: 'not-finite', message: `The place of the ${name} is not a number.` });
  const here = layersAt(work, at).map((ply) => ply.id);
  if (here.length === 0) {
    const { width, height } = boxOf(work.plies);
    const message = `There is no cloth where the ${name} is set: the work is … wide and … high.`;
    return fail({ code: 'off-the-work', message, lengths: [width, height] });
  }
  const few = tooFew(here.length, through);
  if (few) return fail(few);
  const plies = from === 'over' ? here.slice(Math.max(0, here.length - through)) : here.slice(0, through);
  const mark: Mark = {
    kind: 'hardware',
    name,
    at,
    plies,
    ...(what !== undefined && { what }),
    ...(slides && { slides }),
  };
  return ok(noted({ ...work, marks: [...work.marks, mark] }, { did: 'attach' }));
}
