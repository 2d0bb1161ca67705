/** Machine needles by what they have to go through. */
import { makeUp } from '../project/steps/make-up.ts';
import { suits } from '../project/needle.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Suits } from '../project/needle.ts';
import type { Group } from './group.ts';

export type NeedleNeed = {
  suits: Suits;
  /** How many: a new one for each machine. Common practice, no source. */
  count: number;
  /** The thickest stack it sews, in mm. */
  thickness: number;
  /** The steps it is for, by their titles. */
  steps: string[];
};

/** Needles from the lightest to the heaviest that the rows ask for; none where nothing is sewn by machine. */
export function needlesNeed(pattern: Pattern, group: Group): NeedleNeed[] {
  const found = new Map<string, NeedleNeed>();
  for (const { stitches, title } of makeUp(pattern)) {
    const rows = stitches.filter((row) => !row.class.startsWith('2'));
    if (rows.length === 0) continue;
    const thickness = Math.max(...rows.map((row) => row.thickness));
    const fit = suits(thickness);
    const known = found.get(fit.weight);
    if (known) {
      known.thickness = Math.max(known.thickness, thickness);
      known.steps.push(title);
    } else {
      found.set(fit.weight, { suits: fit, count: group.machines ?? group.makers, thickness, steps: [title] });
    }
  }
  return [...found.values()].sort((a, b) => a.suits.nm[0] - b.suits.nm[0]);
}
