import { inText, randomFrom, shuffled, type Pattern } from '../../../src/core/index.ts';
import type { AskedInClass, AttributeValues, ViewContext } from '../word.ts';
import type { Attributes } from './word.ts';

export { saves } from '../ask-choice/view.ts';

export type PairsView = { name: string; pairs: Record<string, string>; meanings: string[]; hint?: string | undefined };

/** Terms with their meanings: the glossary's, then the author's own. Meanings are mixed the same for everyone. */
export function view(
  _: Pattern | undefined,
  { id, terms = [], pairs: own = {}, hint }: Attributes,
  { glossary = {} }: ViewContext,
): PairsView {
  const defined = terms.flatMap((term) => (glossary[term] === undefined ? [] : [[term, glossary[term]] as const]));
  const pairs: Record<string, string> = { ...Object.fromEntries(defined), ...own };
  return mixAnew({ name: id, pairs, meanings: [...new Set(Object.values(pairs))], hint }, id);
}

/** The same question with its meanings in another order; the same seed gives the same. */
export const mixAnew = (shown: PairsView, seed: string): PairsView => ({
  ...shown,
  meanings: shuffled([...new Set(Object.values(shown.pairs))], randomFrom(seed)),
});

/** The terms, and the meanings in the order of the terms. */
export function asked(given: AttributeValues, pattern: Pattern | undefined, context: ViewContext): AskedInClass {
  const { pairs } = view(pattern, given as Attributes, context);
  const keys = [...new Set(Object.values(pairs))];
  return {
    kind: 'pairs',
    picks: Object.entries(pairs).map(([key, meaning]) => ({
      ...{ key, words: inText(key, pattern), means: keys.indexOf(meaning) },
    })),
    meanings: keys,
  };
}
