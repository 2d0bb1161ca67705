import type { Pattern } from '../../../src/core/index.ts';
import { textIn } from '../given.ts';
import type { AttributeValues, SavedRecord } from '../word.ts';
import type { Attributes } from './word.ts';

/** The guesses, and what really happens. */
export const view = (_: Pattern | undefined, { id, guesses, shows }: Attributes) => ({ name: id, guesses, shows });

export function saves({ id }: AttributeValues): SavedRecord | undefined {
  const name = textIn(id);
  return name === undefined ? undefined : { as: 'guess', name };
}
