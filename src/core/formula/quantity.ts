import {
  defaultGrid,
  formatLength,
  formatNumber,
  THIN,
  type Edition,
  type Grid,
  type Style,
} from '../measure/index.ts';
import type { Quantity } from './tree.ts';

export type QuantityOptions = { edition?: Edition | undefined; grid?: Grid | undefined; style?: Style };

/**
 * Writes a quantity as people read it: a length on the marks of the edition, an area in square inches or square
 * centimetres to two decimals, a plain number to three. Rounding shows as `≈`.
 *
 * @example formatQuantity({ value: 114.3, dimension: 1 }, { edition: 'inch' }) // => '4 1/2 in'
 * @example formatQuantity({ value: 2 / 3, dimension: 0 }) // => '≈ 0.667'
 */
export function formatQuantity({ value, dimension }: Quantity, options: QuantityOptions = {}): string {
  const { edition = 'metric', grid = defaultGrid, style = 'plain' } = options;
  if (dimension === 0) return formatNumber(value, { style });
  if (dimension === 1) return formatLength(value, edition, { grid, style });
  const unit = areaUnits[edition];
  const number = formatNumber(value / unit.mm2, { places: 2, style });
  if (style === 'spoken') return `${number} ${unit.spoken}`;
  return number + (style === 'set' ? THIN : ' ') + unit.sign;
}

const areaUnits = {
  inch: { mm2: 25.4 * 25.4, sign: 'in²', spoken: 'square inches' },
  metric: { mm2: 100, sign: 'cm²', spoken: 'square centimetres' },
};
