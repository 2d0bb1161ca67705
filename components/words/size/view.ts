import type { Pattern } from '../../../src/core/index.ts';
import { showQuantity, valueOf } from '../../page/quantity.ts';
import type { Attributes } from './word.ts';

/** The size as a sentence shows it. */
export const view = (pattern: Pattern, { of }: Attributes) => ({ text: showQuantity(valueOf(of, pattern), pattern) });
