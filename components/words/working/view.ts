import type { Pattern } from '../../../src/core/index.ts';
import { scopeOf } from '../../page/quantity.ts';
import { sumOf } from '../../ui/worked/sum.ts';
import { workedFormula } from '../../ui/worked/worked.ts';
import type { Attributes } from './word.ts';

/** The sum, worked out. */
export const view = (pattern: Pattern, { of }: Attributes) => ({
  sum: sumOf(workedFormula(of, pattern), scopeOf(pattern)),
});
