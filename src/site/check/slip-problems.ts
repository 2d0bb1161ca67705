import { quote } from '../../core/measure/index.ts';
import type { Pattern } from '../../core/project/index.ts';
import { slipKinds, sumFor } from '../../core/questions/index.ts';
import type { WrittenAttribute } from '../content/lesson-text.ts';
import type { Said } from '../content/problem.ts';
import { didYouMean } from '../content/wording.ts';

/** Sums of an author's own slips that cannot be worked out, and names of slips that there are not. */
export function slipProblems(attributes: readonly WrittenAttribute[], patterns: readonly Pattern[]): Said[] {
  return attributes.flatMap(({ name, value, at }): Said[] => {
    if (typeof value !== 'object' || value === null) return [];
    const error = (message: string, mend?: string): Said => ({ at, severity: 'error', message, mend });
    if (name === 'slips') {
      return Object.keys(value).flatMap((sum) => {
        const read = patterns.map((pattern) => sumFor(sum, pattern)).find(({ ok }) => !ok);
        return read && !read.ok ? [error(`slips: ${read.fault.message}`, read.fault.mend)] : [];
      });
    }
    if (name !== 'reword' && name !== 'forbid') return [];
    const named = Array.isArray(value) ? value.map(String) : Object.keys(value);
    return named.flatMap((key) => {
      const [kind = ''] = key.split(' ');
      if (slipKinds.some((one) => one === kind) || kind === 'own') return [];
      return [error(`${name}: there is no slip ${quote(kind)}.`, didYouMean(kind, slipKinds))];
    });
  });
}
