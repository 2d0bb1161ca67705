/** What a seam study starts with. */
import type { Edition, Pattern } from '../../../src/core/index.ts';
import { valueOf } from '../../page/quantity.ts';
import type { SeamSizes } from './sums.ts';

/** What an author may say: the widths of the pieces and the allowance of both, as formulas. */
export type SeamStudyFields = { a?: string | undefined; b?: string | undefined; allowance?: string | undefined };

/** Where the author says nothing: sizes that are easy on each ruler, in mm. */
const USUAL: Record<Edition, SeamSizes> = {
  inch: { a: 50.8, b: 76.2, first: 6.35, second: 6.35 },
  metric: { a: 50, b: 80, first: 6, second: 6 },
};

/** The sizes that a study starts with. A formula that names what is left out counts as not written. */
export function startOf({ a, b, allowance }: SeamStudyFields, pattern: Pattern): SeamSizes {
  const usual = USUAL[pattern.edition];
  const length = (text: string | undefined, otherwise: number) => {
    const found = text === undefined ? undefined : valueOf(text, pattern);
    return found?.dimension === 1 && found.value > 0 ? found.value : otherwise;
  };
  const both = length(allowance, usual.first);
  return { a: length(a, usual.a), b: length(b, usual.b), first: both, second: both };
}
