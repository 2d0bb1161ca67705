/** The sum of the seam study, over names of its own. */
import { parseFormula, type Formula, type Pattern, type Scope } from '../../../src/core/index.ts';
import type { WorkedFormula } from '../../ui/worked/worked.ts';

/** Two pieces and the allowance of each at the edge they meet on, in mm. */
export type SeamSizes = { a: number; b: number; first: number; second: number };

const names = ['left width', 'right width', 'left allowance', 'right allowance'];

function read(text: string): Formula {
  const formula = parseFormula(text, { names });
  if (!formula.ok) throw new Error(formula.fault.message);
  return formula.value;
}

export const joinedSum: WorkedFormula = {
  subject: 'joined width',
  formula: read('left width + right width - left allowance - right allowance'),
};

/** What two joined pieces come to. */
export const joined = ({ a, b, first, second }: SeamSizes): number => a + b - first - second;

/** The sizes as the sum asks for them. */
export function scopeFor(
  { a, b, first, second }: SeamSizes,
  { edition, grid }: Pick<Pattern, 'edition' | 'grid'>,
): Scope {
  const values = new Map([a, b, first, second].map((value, i) => [names[i]!, value] as const));
  return {
    edition,
    grid,
    known: names,
    get: (name) => {
      const value = values.get(name);
      return value === undefined ? undefined : { ok: true, value: { value, dimension: 1 } };
    },
  };
}
