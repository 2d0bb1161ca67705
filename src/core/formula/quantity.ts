import {
  defaultGrid,
  formatLength,
  minus,
  nearly,
  THIN,
  type Edition,
  type Grid,
  type Style,
} from '../measure/index.ts';
import type { Quantity } from './tree.ts';

export type QuantityOptions = { edition?: Edition; grid?: Grid; style?: Style };

/**
 * Writes a quantity as people read it: a length on the marks of the edition, an area in square inches or square
 * centimetres, a plain number in digits. Rounded to two decimals (areas) or three (numbers); rounding shows as `≈`.
 *
 * @example formatQuantity({ value: 114.3, dimension: 1 }, { edition: 'inch' }) // => '4 1/2 in'
 * @example formatQuantity({ value: 2 / 3, dimension: 0 }) // => '≈ 0.667'
 */
export function formatQuantity(quantity: Quantity, options: QuantityOptions = {}): string {
  const { edition = 'metric', grid = defaultGrid, style = 'plain' } = options;
  const { value, dimension } = quantity;
  if (dimension === 1) return formatLength(value, edition, { grid, style });
  if (dimension === 0) return decimal(value, 3, style);
  const unit = areaUnits[edition];
  const number = decimal(value / unit.mm2, 2, style);
  if (style === 'spoken') return `${number} ${unit.spoken}`;
  return number + (style === 'set' ? THIN : ' ') + unit.sign;
}

const areaUnits = {
  inch: { mm2: 25.4 * 25.4, sign: 'in²', spoken: 'square inches' },
  metric: { mm2: 100, sign: 'cm²', spoken: 'square centimetres' },
};

/** The shortest decimal with at most so many places. */
function decimal(value: number, places: number, style: Style): string {
  if (!Number.isFinite(value)) return '?';
  const scale = 10 ** places;
  const rounded = Math.round(Math.abs(value) * scale) / scale;
  const exact = Math.abs(Math.abs(value) - rounded) <= 1e-9 * Math.max(1, Math.abs(value));
  return (exact ? '' : nearly[style]) + (value < 0 && rounded > 0 ? minus[style] : '') + String(rounded);
}
