/** What a drift study starts with. */
import type { Edition } from '../../../src/core/index.ts';
import type { Drifting, AllowancesPerSeam } from './sums.ts';

/** What the author asks: the finished size, how many seams cross it, and how many allowances each takes. */
export type DriftStudyFields = { of: string; seams: number; takes: AllowancesPerSeam };

/** At the start each seam is too wide by this much, and at most by that, in mm. */
export const OFF: Record<Edition, { start: number; most: number; step: number }> = {
  inch: { start: 25.4 / 32, most: 25.4 / 8, step: 25.4 / 32 },
  metric: { start: 1, most: 3, step: 0.5 },
};

/** What a study starts with. */
export const startOf = ({ seams, takes }: DriftStudyFields, edition: Edition): Drifting => ({
  seams,
  takes,
  off: OFF[edition].start,
});
