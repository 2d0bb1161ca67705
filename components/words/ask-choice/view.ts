import { inText, randomFrom, shuffled, type Pattern } from '../../../src/core/index.ts';
import { textIn, textsIn, textsOf } from '../given.ts';
import type { AskedInClass, AttributeValues, SavedRecord } from '../word.ts';
import type { Attributes } from './word.ts';

export type Choice = { text: string; right: boolean; say?: string };
export type ChoiceView = { name: string; choices: Choice[]; hint?: string | undefined };

/** The answers, mixed the same for everyone. */
export function view(_: Pattern | undefined, { id, right, wrong, hint }: Attributes): ChoiceView {
  const others: Choice[] = Array.isArray(wrong)
    ? wrong.map((text) => ({ text, right: false }))
    : Object.entries(wrong).map(([text, say]) => ({ text, right: false, say }));
  const choices = [...right.map((text) => ({ text, right: true })), ...others];
  return mixAnew({ name: id, choices, hint }, id);
}

/** The same question with its answers in another order; the same seed gives the same. */
export const mixAnew = (shown: ChoiceView, seed: string): ChoiceView => ({
  ...shown,
  choices: shuffled(shown.choices, randomFrom(seed)),
});

export function saves({ id }: AttributeValues): SavedRecord | undefined {
  const name = textIn(id);
  return name === undefined ? undefined : { as: 'answer', name };
}

/** The answers, the right ones first. */
export function asked({ right, wrong }: AttributeValues, pattern: Pattern | undefined): AskedInClass {
  const said = Array.isArray(wrong) ? {} : textsOf(wrong);
  const words = (text: string) => inText(text, pattern);
  return {
    kind: 'choose',
    picks: [
      ...textsIn(right).map((key) => ({ key, words: words(key), right: true as const })),
      ...textsIn(wrong).map((key) => ({
        ...{ key, words: words(key) },
        ...(said[key] !== undefined && { say: words(said[key]) }),
      })),
    ],
  };
}
