import type { Pattern } from '../../../src/core/index.ts';
import { scopeOf } from '../../page/quantity.ts';
import { sumOf } from '../../ui/worked/sum.ts';
import { workedFormula } from '../../ui/worked/worked.ts';
import { textIn, textsOf } from '../given.ts';
import type { AskedInClass, AttributeValues, SavedRecord } from '../word.ts';
import type { Attributes } from './word.ts';

/** What is asked for, how answers are judged, and the sum behind it. `name` is the author's own name for it. */
export function view(pattern: Pattern, { id: name, ...asked }: Attributes) {
  return { name, asked, sum: sumOf(workedFormula(asked.of, pattern), scopeOf(pattern)) };
}

export function saves({ id, of }: AttributeValues): SavedRecord | undefined {
  const name = textIn(id) ?? textIn(of);
  return name === undefined ? undefined : { as: 'answer', name };
}

/** The sum, and what its author says to wrong ones. */
export function asked({ of, tolerance, slips, reword, forbid }: AttributeValues): AskedInClass | undefined {
  if (typeof of !== 'string') return undefined;
  const own = { slips: textsOf(slips), reword: textsOf(reword) };
  return {
    kind: 'sum',
    of: [of],
    ...(typeof tolerance === 'string' && { tolerance }),
    ...(slips !== undefined && { slips: own.slips }),
    ...(reword !== undefined && { reword: own.reword }),
    ...(Array.isArray(forbid) && { forbid: forbid.map(String) }),
  };
}
