import type { Pattern } from '../../../src/core/index.ts';
import { sumOf } from '../../ui/worked/sum.ts';
import { heightSum, scopeFor, sizesOf, widthSum } from './sums.ts';
import type { Attributes } from './word.ts';

/** A piece that is left out at first still has its sums, to be filled in when it is taken in. */
const NONE = { width: NaN, height: NaN, top: NaN, right: NaN, bottom: NaN, left: NaN };

/** From the finished size to the cut size: across, then up. */
export function view(pattern: Pattern, { piece }: Attributes) {
  const found = pattern.pieces[piece];
  const scope = scopeFor(found ? sizesOf(found) : NONE, pattern);
  return { sums: [widthSum, heightSum].map((work) => sumOf(work, scope)) };
}
