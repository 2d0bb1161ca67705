import { sideName, type Pattern, type Pointing } from '../../../src/core/index.ts';
import { tellShowing } from '../../compute/telling.ts';
import { textIn } from '../given.ts';
import type { Given, Kept } from '../word.ts';
import { oncePerGiven } from '../once.ts';
import type { Attributes } from './word.ts';

export type Shown = {
  name: string;
  step: string;
  side: 'front' | 'back';
  shows: string;
  built: Pointing | undefined;
  hint?: string | undefined;
};

/** What is asked for, and what there is to point at; `built` is undefined where an option leaves the step out. */
export const view = oncePerGiven(
  (pattern: Pattern, { step, shows, from, hint, id = sideName(step, shows) }: Attributes): Shown => {
    const side = from ?? 'front';
    return { name: id, step, side, shows, built: tellShowing(pattern, step, side, shows), hint };
  },
);

export const kept = ({ id, step, shows }: Given): Kept => ({
  as: 'answer',
  name: textIn(id) ?? sideName(textIn(step) ?? '', textIn(shows) ?? ''),
});
