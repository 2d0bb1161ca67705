import type { Pattern } from '../../../src/core/index.ts';
import { scopeOf } from '../../page/quantity.ts';
import { sumOf } from '../../ui/worked/sum.ts';
import { workOf } from '../../ui/worked/worked.ts';
import type { Attributes } from './word.ts';

/** The sum, worked out. */
export const view = (pattern: Pattern, { of }: Attributes) => ({ sum: sumOf(workOf(of, pattern), scopeOf(pattern)) });
