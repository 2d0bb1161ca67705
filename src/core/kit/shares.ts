/** How many sets of which size a group gets ready. */
import { inSize } from '../project/in-size.ts';
import { quote } from '../measure/index.ts';
import { setsFor } from './group.ts';
import type { Diagnostic } from '../measure/index.ts';
import type { Group } from './group.ts';
import type { Pattern } from '../project/pattern.ts';

/** So many sets of a pattern; `size` where the group makes several. */
export type Share = { pattern: Pattern; sets: number; size?: string };

/**
 * The sets of a group by size. Who is not counted among the sizes makes the pattern’s own, and spares are of that, too.
 *
 * @example
 * sharesOf(pattern, { makers: 8, spares: 1, sizes: { small: 3, large: 2 } }) // => 3 small, 4 medium, 2 large
 */
export function sharesOf(pattern: Pattern, group: Group): { shares: Share[]; findings: Diagnostic[] } {
  const all = setsFor(group);
  const { sizes } = pattern;
  const asked = Object.entries(group.sizes ?? {}).filter(([, makers]) => makers !== 0);
  const findings: Diagnostic[] = [];
  const refuse = (code: string, message: string) =>
    findings.push({ severity: 'error', place: ['class', 'sizes'], code, message });
  if (!sizes || asked.length === 0) return { shares: [{ pattern, sets: all }], findings };
  const wanted = new Map<string, number>();
  let left = group.makers;
  for (const [size, makers] of asked) {
    if (!sizes.of.includes(size))
      refuse('unknown-size', `There is no size ${quote(size)}; its makers are counted to the size of the page.`);
    else if (!Number.isInteger(makers) || makers < 0)
      refuse('bad-size', `How many make ${quote(size)} is a whole number from 0 up.`);
    else {
      if (makers > left) {
        refuse(
          'too-many-sizes',
          `The sizes are for more than the ${group.makers} makers: of ${quote(size)} ${left} are taken.`,
        );
      }
      wanted.set(size, Math.min(makers, left));
      left -= Math.min(makers, left);
    }
  }
  const own = (wanted.get(sizes.chosen) ?? 0) + left + group.spares;
  const shares = sizes.of.flatMap((size): Share[] => {
    const sets = size === sizes.chosen ? own : (wanted.get(size) ?? 0);
    return sets === 0 ? [] : [{ pattern: inSize(pattern, size), sets, size }];
  });
  return { shares, findings };
}

/** A piece as a list of several sizes calls it. */
export const inSizeWords = (label: string, size: string | undefined): string =>
  size === undefined ? label : `${label}, ${size}`;
