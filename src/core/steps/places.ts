/** Where something is set on a work: measured from its sides or from its middle, as it lies. */
import { boxOf } from '../cloth/size.ts';
import { fail, listed, ok, quote } from '../measure/index.ts';
import { length, optional } from './fields.ts';
import { middleOfWork, ownPlies } from '../cloth/place.ts';
import { outermost } from '../cloth/lay.ts';
import type { ClothFault, Work } from '../cloth/index.ts';
import type { Measured } from './verb.ts';
import type { Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';

const fromSide = (side: string) =>
  optional(length(`from the ${side} of the work. Where neither side is named, it lies in the middle that way.`));

/** The fields of a verb that sets something at a place of a work. */
export const placeFields = {
  'from left': fromSide('left'),
  'from right': fromSide('right'),
  'from top': fromSide('top'),
  'from bottom': fromSide('bottom'),
} as const;

/** What a step says of a place. */
export type Placed = { readonly at?: Point } & Partial<Record<keyof typeof placeFields, number>>;

const ACROSS = ['from left', 'from right'] as const;
const UP = ['from top', 'from bottom'] as const;

/** The fields by which a step says where: `at`, `from top`. */
export const fieldsOfPlace = (step: Placed): string[] => [...(step.at === undefined ? [] : ['at']), ...said(step)];

/** Those of the distances that a step says. */
const said = (step: Placed) => [...UP, ...ACROSS].filter((name) => step[name] !== undefined);

/** Whether a step says where, one way or another. */
export const saysWhere = (step: Placed): boolean => step.at !== undefined || said(step).length > 0;

/** `, measured from the top and the left`; nothing where no side is named. */
export function measuredFrom(step: Placed): string {
  const sides = said(step).map((name) => name.replace('from', 'the'));
  return sides.length === 0 ? '' : `, measured from ${listed(sides)}`;
}

/** The distances in sentences; `what` begins them: `Its middle lies`. */
export const placeMeasured = (step: Placed, what: string): Measured[] =>
  said(step).map((name) => ({ says: `${what} … ${name.replace('from', 'from the')}.`, length: step[name]! }));

/** Two fields that both say where it lies the same way. */
export function placedTwice(step: Placed): ClothFault | undefined {
  const both = (one: string, other: string): ClothFault => ({
    code: 'two-places',
    message: `${quote(one)} and ${quote(other)} both say where it lies.`,
    field: other,
  });
  const [first] = said(step);
  if (step.at && first !== undefined) return both('at', first);
  for (const [one, other] of [ACROSS, UP]) {
    if (step[one] !== undefined && step[other] !== undefined) return both(one, other);
  }
  return undefined;
}

/**
 * The point of a work that a step names: from the left and from the bottom of the box round it, so far from its sides, or
 * in its middle where nothing is said. What was laid on it and hangs out does not count. Faults: `two-places`; those of finding a side; `off-the-work` beyond the other side.
 */
export function placeOn(work: Work, step: Placed): Result<Point, ClothFault> {
  const twice = placedTwice(step);
  if (twice) return fail(twice);
  if (step.at) {
    const { x, y } = boxOf(ownPlies(work));
    return ok({ x: x + step.at.x, y: y + step.at.y });
  }
  const place = { ...middleOfWork({ plies: ownPlies(work) }) };
  for (const name of said(step)) {
    const side = name.slice('from '.length) as 'left' | 'right' | 'top' | 'bottom';
    const begins = outermost(work, side);
    if (!begins.ok) {
      const fix = 'Give its place from the left and from the bottom: “at: [2, 1]”.';
      return begins.fault.code === 'not-straight' ? fail({ ...begins.fault, fix }) : begins;
    }
    const way = side === 'left' || side === 'bottom' ? 1 : -1;
    place[side === 'left' || side === 'right' ? 'x' : 'y'] = begins.value + way * step[name]!;
  }
  return ok(place);
}
