/** Machine needles by what they have to go through. */
import { makeUp } from '../project/steps/make-up.ts';
import { needleWords, suits } from '../project/needle.ts';
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
    for (const row of rows) {
      const { thickness } = row;
      const fit = suits(row);
      const key = needleWords(fit);
      const known = found.get(key);
      if (!known) found.set(key, { suits: fit, count: group.machines ?? group.makers, thickness, steps: [title] });
      else {
        known.thickness = Math.max(known.thickness, thickness);
        if (known.steps.at(-1) !== title) known.steps.push(title);
      }
    }
  }
  return [...found.values()].sort((a, b) => a.suits.nm - b.suits.nm);
}
