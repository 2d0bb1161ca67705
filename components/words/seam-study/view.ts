import type { Pattern } from '../../../src/core/index.ts';
import { sumOf } from '../../ui/worked/sum.ts';
import { drawSeam } from './seam.ts';
import { joinedSum, scopeFor } from './sums.ts';
import { startOf } from './start.ts';
import type { Attributes } from './word.ts';

/** Both pieces before and after the seam, pressed open, and the sum of their widths. */
export function view(pattern: Pattern, asked: Attributes) {
  const sizes = startOf(asked, pattern);
  return { scene: drawSeam(sizes, 'open', pattern), sum: sumOf(joinedSum, scopeFor(sizes, pattern)) };
}
