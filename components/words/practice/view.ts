import { fromEasyToHard, ROUNDS, type Pattern } from '../../../src/core/index.ts';
import { scopeOf } from '../../page/quantity.ts';
import { sumOf } from '../../ui/worked/sum.ts';
import { workedFormula } from '../../ui/worked/worked.ts';
import { asked as askedSum } from '../ask-size/view.ts';
import { namesIn, textIn } from '../given.ts';
import type { AskedInClass, AttributeValues, SavedRecord, ViewContext } from '../word.ts';
import type { Level } from './levels.ts';
import type { Attributes } from './word.ts';

const levels = { rising: 'rising', easy: 1, finer: 2, 'every mark': 3 } as const satisfies Record<string, Level>;

/** The sums of the set, from the fewest steps to the most, and the other questions that come up between them. */
export function view(
  pattern: Pattern,
  { of, asks: asked = {}, also = [], numbers = 'rising', rounds = ROUNDS, id, ...judged }: Attributes,
  { questions = [] }: ViewContext,
) {
  const all: { of: string; words?: string }[] =
    of === undefined ? Object.entries(asked).map(([of, words]) => ({ of, words })) : [{ of }];
  const asks = fromEasyToHard(all, pattern);
  return {
    name: id ?? of ?? '',
    set: {
      ...judged,
      asks,
      others: questions.filter(({ view: shown }) => also.includes(shown.name)),
      level: levels[numbers],
      rounds,
    },
    sums: asks.map(({ of }) => ({ of, sum: sumOf(workedFormula(of, pattern), scopeOf(pattern)) })),
  };
}

export function saves({ id, of, rounds }: AttributeValues): SavedRecord | undefined {
  const name = textIn(id) ?? textIn(of);
  if (name === undefined) return undefined;
  return { as: 'practice', name, rounds: typeof rounds === 'number' ? rounds : ROUNDS };
}

/** All sums of the set. */
export function asked({ of, asks, ...judged }: AttributeValues): AskedInClass | undefined {
  const all = typeof of === 'string' ? [of] : namesIn(asks);
  const [first] = all;
  const one = askedSum({ ...judged, of: first });
  return one?.kind === 'sum' ? { ...one, of: all } : undefined;
}
