/** The sums of the drift study, over names of its own. */
import { parseFormula, type Formula, type Pattern, type Scope } from '../../../src/core/index.ts';
import type { WorkedFormula } from '../../ui/worked/worked.ts';

/** How many allowances of the finished size a seam takes: two where it joins parts side by side, one at its outer edge. */
export type AllowancesPerSeam = 1 | 2;

/** What the study plays with: how many seams, and by how much each is too wide, in mm. */
export type Drifting = { seams: number; off: number; takes: AllowancesPerSeam };

const names = ['seams', 'root of the seams', 'error of each'];

function read(text: string): Formula {
  const formula = parseFormula(text, { names });
  if (!formula.ok) throw new Error(formula.fault.message);
  return formula.value;
}

/** All seams err the same way, as when the guide sits wrong: the errors add up. */
export const worstSum = (takes: AllowancesPerSeam): WorkedFormula => ({
  subject: 'lost at worst',
  formula: read(takes === 2 ? '2 * seams * error of each' : 'seams * error of each'),
});

/**
 * Each seam errs on its own, by about so much either way, as when the hand wavers: errors partly cancel out. The spread
 * of a sum of independent errors is the root of the sum of their squares, a rule of every statistics handbook.
 */
export const likelySum = (takes: AllowancesPerSeam): WorkedFormula => ({
  subject: 'likely spread',
  formula: read(takes === 2 ? '2 * root of the seams * error of each' : 'root of the seams * error of each'),
});

/** What is lost in mm: at worst, and likely. */
export const drift = ({ seams, off, takes }: Drifting): { worst: number; likely: number } => ({
  worst: takes * seams * off,
  likely: takes * Math.sqrt(seams) * off,
});

/** Finer than a project's own marks: seams are off by less than a ruler shows. */
export const FINE = { inch: 32, metric: 0.1 } as const;

/** The numbers as the sums ask for them. */
export function scopeFor({ seams, off }: Drifting, { edition }: Pick<Pattern, 'edition'>): Scope {
  // A root goes on for ever; three places are enough for a sum on paper.
  const root = Math.round(Math.sqrt(seams) * 1000) / 1000;
  return {
    edition,
    grid: FINE,
    known: names,
    get: (name) => {
      if (name === 'error of each') return { ok: true, value: { value: off, dimension: 1 } };
      if (name === 'seams') return { ok: true, value: { value: seams, dimension: 0 } };
      return name === 'root of the seams' ? { ok: true, value: { value: root, dimension: 0 } } : undefined;
    },
  };
}
