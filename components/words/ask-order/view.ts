import { inText, randomFrom, shuffled, type Pattern } from '../../../src/core/index.ts';
import { textsIn } from '../given.ts';
import type { AskedInClass, AttributeValues } from '../word.ts';
import type { Attributes } from './word.ts';

export { saves } from '../ask-choice/view.ts';

export type OrderView = { name: string; steps: string[]; mixed: string[]; hint?: string | undefined };

/** The steps in order, and mixed the same for everyone. */
export const view = (_: Pattern | undefined, { id, steps, hint }: Attributes): OrderView =>
  mixAnew({ name: id, steps, mixed: steps, hint }, id);

/** The same question with its steps mixed otherwise, and never in order by chance; the same seed gives the same. */
export function mixAnew(shown: OrderView, seed: string): OrderView {
  const drawn = shuffled(shown.steps, randomFrom(seed));
  const isInOrder = drawn.every((step, i) => step === shown.steps[i]);
  return { ...shown, mixed: isInOrder ? shown.steps.toReversed() : drawn };
}

export const asked = ({ steps }: AttributeValues, pattern: Pattern | undefined): AskedInClass => ({
  kind: 'order',
  picks: textsIn(steps).map((key) => ({ key, words: inText(key, pattern) })),
});
