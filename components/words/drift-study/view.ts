import type { Pattern } from '../../../src/core/index.ts';
import { valueOf } from '../../page/quantity.ts';
import { sumOf } from '../../ui/worked/sum.ts';
import { drawDrifted } from './draw.ts';
import { startOf } from './start.ts';
import { drift, likelySum, scopeFor, worstSum } from './sums.ts';
import type { Attributes } from './word.ts';

/** The finished width as meant and as sewn, and both sums; no scene where the project leaves the size out. */
export function view(pattern: Pattern, { of, seams, takes = 2 }: Attributes) {
  const start = startOf({ of, seams, takes }, pattern.edition);
  const scope = scopeFor(start, pattern);
  const meant = valueOf(of, pattern)?.value;
  const { worst, likely } = drift(start);
  return {
    scene:
      meant === undefined
        ? undefined
        : drawDrifted({ meant, likely: Math.max(0, meant - likely), worst: Math.max(0, meant - worst) }, pattern),
    sums: [worstSum(takes), likelySum(takes)].map((work) => sumOf(work, scope)),
  };
}
