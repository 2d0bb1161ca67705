import type { Pattern } from '../../../src/core/index.ts';
import { scopeOf } from '../../page/quantity.ts';
import { sumOf } from '../../ui/worked/sum.ts';
import { workedFormula } from '../../ui/worked/worked.ts';
import { textIn } from '../given.ts';
import type { AttributeValues, SavedRecord } from '../word.ts';
import type { Attributes } from './word.ts';

/** What is asked for, how answers are judged, and the sum behind it. `name` is the author's own name for it. */
export function view(pattern: Pattern, { id: name, ...asked }: Attributes) {
  return { name, asked, sum: sumOf(workedFormula(asked.of, pattern), scopeOf(pattern)) };
}

export function saves({ id, of }: AttributeValues): SavedRecord | undefined {
  const name = textIn(id) ?? textIn(of);
  return name === undefined ? undefined : { as: 'answer', name };
}
