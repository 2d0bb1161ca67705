/** Lengths as a shop says them: yards in eighths, or metres. */
import { formatMixed, formatNumber, ON_MARK, THIN } from '../measure/index.ts';
import type { Edition, Style } from '../measure/index.ts';

const YARD = 914.4;
const EIGHTH = YARD / 8;

/**
 * A length as it is asked for in the shop. What is not on the shop's marks is shown as the nearest one with `≈`.
 *
 * @param mm not below 0
 * @example
 * shopLength(1257.3, 'inch') // => '1 3/8 yd'
 * shopLength(1300, 'metric') // => '1.3 m'
 * shopLength(60, 'metric') // => '6 cm'
 */
export function shopLength(mm: number, edition: Edition, style: Style = 'plain'): string {
  if (!Number.isFinite(mm)) return '?';
  const blank = style === 'set' ? THIN : ' ';
  if (edition === 'metric') {
    const inMetres = mm >= 1000;
    const size = formatNumber(mm / (inMetres ? 1000 : 10), { places: inMetres ? 2 : 1, style });
    if (style !== 'spoken') return `${size}${blank}${inMetres ? 'm' : 'cm'}`;
    return `${size} ${inMetres ? 'metre' : 'centimetre'}${size === '1' ? '' : 's'}`;
  }
  const eighths = Math.round(mm / EIGHTH);
  const isExact = Math.abs(mm - eighths * EIGHTH) <= ON_MARK;
  const about = isExact ? '' : style === 'spoken' ? 'about ' : `≈${blank}`;
  const size = formatMixed(eighths, 8, style);
  if (style !== 'spoken') return `${about}${size}${blank}yd`;
  return `${about}${size} ${eighths > 8 ? 'yards' : eighths === 8 ? 'yard' : 'of a yard'}`;
}

/** The same as a number and its unit, for a spreadsheet. */
export const shopAmount = (mm: number, edition: Edition): { amount: number; unit: string } =>
  edition === 'inch' ? { amount: rounded(mm / YARD), unit: 'yd' } : { amount: rounded(mm / 1000), unit: 'm' };

const rounded = (amount: number): number => Math.round(amount * 1000) / 1000;
