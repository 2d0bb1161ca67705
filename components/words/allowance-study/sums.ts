/** The two sums of the allowance study, over names of its own. */
import { parseFormula, type Formula, type Pattern, type Scope } from '../../../src/core/index.ts';
import type { WorkedFormula } from '../../ui/worked/worked.ts';

export const SIDES = ['top', 'right', 'bottom', 'left'] as const;
export type SideName = (typeof SIDES)[number];

/** What the study plays with, in mm. */
export type Sizes = { width: number; height: number } & Record<SideName, number>;

const names = ['finished width', 'finished height', ...SIDES.map((side) => `${side} allowance`)];

function read(text: string): Formula {
  const formula = parseFormula(text, { names });
  if (!formula.ok) throw new Error(formula.fault.message);
  return formula.value;
}

export const widthSum: WorkedFormula = {
  subject: 'cut width',
  formula: read('left allowance + finished width + right allowance'),
};
export const heightSum: WorkedFormula = {
  subject: 'cut height',
  formula: read('bottom allowance + finished height + top allowance'),
};

/** The sizes as the sums ask for them. */
export function scopeFor(sizes: Sizes, { edition, grid }: Pick<Pattern, 'edition' | 'grid'>): Scope {
  const values = new Map<string, number>([
    ['finished width', sizes.width],
    ['finished height', sizes.height],
    ...SIDES.map((side): [string, number] => [`${side} allowance`, sizes[side]]),
  ]);
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

/** The numbers of a piece as the study starts with them. */
export function sizesOf(piece: Pattern['pieces'][string]): Sizes {
  const at = (side: SideName) => piece.allowance[side] ?? 0;
  return {
    ...{ top: at('top'), right: at('right'), bottom: at('bottom'), left: at('left') },
    ...{ width: piece.size.width - at('left') - at('right'), height: piece.size.height - at('top') - at('bottom') },
  };
}
