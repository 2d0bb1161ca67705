import { pointAtVisible, sideName, type Pattern, type Pointing } from '../../../src/core/index.ts';
import { stepOf } from '../../compute/draw-step.ts';
import { picksOf, textIn } from '../given.ts';
import type { AskedInClass, AttributeValues, SavedRecord } from '../word.ts';
import { oncePerGiven } from '../once.ts';
import type { Attributes } from './word.ts';

export type SideView = {
  name: string;
  step: string;
  side: 'front' | 'back';
  shows: string;
  built: Pointing | undefined;
  hint?: string | undefined;
};

/** What is asked for, and what there is to point at; `built` is undefined where an option leaves the step out. */
export const view = oncePerGiven(
  (pattern: Pattern, { step, shows, from, hint, id = sideName(step, shows) }: Attributes): SideView => {
    const side = from ?? 'front';
    return { name: id, step, side, shows, built: pointingAfter(pattern, step, side, shows), hint };
  },
);

/** What is visible of the work after a step, to be pointed at. */
export function pointingAfter(
  pattern: Pattern,
  id: string,
  side: 'front' | 'back',
  shows: string,
): Pointing | undefined {
  const step = stepOf(pattern, id);
  return step && pointAtVisible(step.after, side, shows, pattern);
}

export const saves = ({ id, step, shows }: AttributeValues): SavedRecord => ({
  as: 'answer',
  name: textIn(id) ?? sideName(textIn(step) ?? '', textIn(shows) ?? ''),
});

export const asked = (given: AttributeValues, pattern: Pattern | undefined): AskedInClass | undefined =>
  picksOf(pattern && view(pattern, given as Attributes).built);
