/** Two pieces and one seam, sewn as the cloth does it. */
import { cut, join, type Work } from '../../../src/core/cloth/index.ts';
import { drawStep, rectangle, type Pattern, type Scene } from '../../../src/core/index.ts';
import { low } from '../../compute/fit.ts';
import type { SeamSizes } from './sums.ts';

/** The names of the two pieces. */
const [LEFT, RIGHT] = ['left piece', 'right piece'];

/** The second piece lines the first, so that the two are told apart. */
const materials: Pattern['materials'] = {
  lining: { role: 'lining', label: 'lining', use: 'lining', lining: true },
};

type Sewn = { before: Record<string, Work>; after: Work };

/**
 * Cuts two pieces of one height and joins them on their inner edges. Undefined where an allowance takes a whole piece.
 *
 * @param tall their height in mm
 */
export function sewSeam(
  { a, b, first, second }: SeamSizes,
  press: 'open' | 'to second',
  tall: number,
): Sewn | undefined {
  const [left, right] = [a, b].map((width, i) =>
    cut({ piece: i === 0 ? LEFT : RIGHT, material: i === 0 ? 'outer' : 'lining', outline: rectangle(width, tall) }),
  );
  if (!left?.ok || !right?.ok) return undefined;
  const layers = [
    { work: left.value, edge: 'right', allowance: first },
    { work: right.value, edge: 'left', allowance: second },
  ];
  const sewn = join(layers, { allowance: first, press });
  return sewn.ok ? { before: { [LEFT]: left.value, [RIGHT]: right.value }, after: sewn.value } : undefined;
}

/** Before and after the seam. */
export function drawSeam(
  sizes: SeamSizes,
  press: 'open' | 'to second',
  { edition, grid }: Pick<Pattern, 'edition' | 'grid'>,
): Scene | undefined {
  const sewn = sewSeam(sizes, press, Math.max(sizes.a, sizes.b) * 0.75);
  if (!sewn) return undefined;
  const { before, after } = sewn;
  const title = 'Join the left piece and the right piece';
  return drawStep(
    { title, verb: 'join', before, after, makes: 'both', takes: [LEFT, RIGHT], stitches: after.stitches },
    { edition, grid, materials, fit: low(80) },
  );
}
