import { greatestCommon } from './amount.ts';
import { defaultGrid, isOnGrid, marks, type Edition, type Grid } from './edition.ts';

/**
 * `plain`: for text files, tables of figures and input fields. `set`: for the page, with real fractions and blanks that
 * never break. `spoken`: for a screen reader.
 */
export type Style = 'plain' | 'set' | 'spoken';

export type LengthOptions = { grid?: Grid | undefined; style?: Style; unit?: boolean; in?: 'mm' | 'cm' };

/** The narrow no-break space, which stands before a unit. */
export const THIN = '\u202f';

/** The sign that stands before a value that was rounded, with its blank. */
const nearly: Record<Style, string> = { plain: '≈ ', set: `≈${THIN}`, spoken: 'about ' };

/** The sign of a value below zero. */
const minus: Record<Style, string> = { plain: '-', set: '−', spoken: 'minus ' };

/**
 * Writes a length in mm as people read it, on the marks of the edition. A length off the marks is shown as the nearest
 * one with `≈` before it, so that a rounded value never looks exact: `≈ 0 in` is a little, not nothing. What is not a
 * finite number is shown as `?`.
 *
 * @example formatLength(114.3, 'inch') // => '4 1/2 in'
 * @example formatLength(114.3, 'metric', { in: 'cm' }) // => '≈ 11.4 cm'
 */
export function formatLength(mm: number, edition: Edition, options: LengthOptions = {}): string {
  const { grid = defaultGrid, style = 'plain', unit = true } = options;
  if (!Number.isFinite(mm)) return style === 'spoken' ? 'an unknown length' : '?';
  const count = marks(mm, edition, grid);
  const size = Math.abs(count);
  const sign = count < 0 ? minus[style] : '';
  const about = isOnGrid(mm, edition, grid) ? '' : nearly[style];
  const inCm = options.in === 'cm';
  const body =
    edition === 'inch'
      ? inches(size, grid.inch, style, unit)
      : metric(size * grid.metric * (inCm ? 10 : 100), inCm ? 'cm' : 'mm', style, unit);
  return about + sign + body;
}

/**
 * Writes a plain number as the shortest decimal with at most so many places, with `≈` before it where that rounds.
 *
 * @example formatNumber(2.5) // => '2.5'
 * @example formatNumber(2 / 3) // => '≈ 0.667'
 */
export function formatNumber(value: number, options: { places?: number; style?: Style } = {}): string {
  const { places = 3, style = 'plain' } = options;
  if (!Number.isFinite(value)) return style === 'spoken' ? 'an unknown number' : '?';
  const size = Math.abs(value);
  const rounded = Math.round(size * 10 ** places) / 10 ** places;
  const about = Math.abs(size - rounded) <= 1e-9 * Math.max(1, size) ? '' : nearly[style];
  return about + (value < 0 && rounded > 0 ? minus[style] : '') + decimal(rounded);
}

/** A number in digits alone: nobody reads an exponent off a ruler. */
const decimal = (value: number): string => {
  const text = String(value);
  return text.includes('e') ? value.toLocaleString('en', { useGrouping: false, maximumFractionDigits: 20 }) : text;
};

/** `hundredths` of the unit, as the shortest decimal. */
function metric(hundredths: number, unit: 'mm' | 'cm', style: Style, withUnit: boolean): string {
  const number = decimal(Math.round(hundredths) / 100);
  if (!withUnit) return number;
  if (style === 'spoken') return `${number} ${unit === 'cm' ? 'centimetre' : 'millimetre'}${number === '1' ? '' : 's'}`;
  return number + (style === 'set' ? THIN : ' ') + unit;
}

function inches(count: number, under: number, style: Style, withUnit: boolean): string {
  const mixed = formatMixed(count, under, style);
  if (!withUnit) return mixed;
  if (style === 'plain') return `${mixed} in`;
  if (style === 'set') return `${mixed}${THIN}in`;
  if (count >= under || count === 0) return `${mixed} inch${count === under ? '' : 'es'}`;
  return count * 2 === under ? 'half an inch' : `${mixed} of an inch`;
}

/**
 * Writes `count / under` as a mixed number in lowest terms.
 *
 * @example formatMixed(72, 16, 'plain') // => '4 1/2'
 * @example formatMixed(67, 16, 'spoken') // => '4 and 3 sixteenths'
 */
export function formatMixed(count: number, under: number, style: Style): string {
  const whole = Math.floor(count / under);
  const rest = count - whole * under;
  if (rest === 0) return decimal(whole);
  const shared = greatestCommon(rest, under);
  const [over, below] = [rest / shared, under / shared];
  if (style === 'spoken') return (whole ? `${whole} and ` : '') + spokenPart(over, below);
  if (style === 'plain') return (whole ? `${whole} ` : '') + `${over}/${below}`;
  const glyph = glyphs[`${over}/${below}`];
  // Unicode has no sign for sixteenths: digits round a fraction slash, which the font's `frac` feature draws. The blank
  // keeps the whole number out of the fraction.
  if (glyph === undefined) return (whole ? whole + THIN : '') + `${over}⁄${below}`;
  return (whole ? String(whole) : '') + glyph;
}

const glyphs: Record<string, string> = {
  ...{ '1/2': '½', '1/4': '¼', '3/4': '¾', '1/8': '⅛', '3/8': '⅜', '5/8': '⅝', '7/8': '⅞' },
  ...{ '1/3': '⅓', '2/3': '⅔', '1/5': '⅕', '2/5': '⅖', '3/5': '⅗', '4/5': '⅘', '1/6': '⅙', '5/6': '⅚' },
};

const parts: Record<number, string> = {
  ...{ 2: 'half', 3: 'third', 4: 'quarter', 5: 'fifth', 6: 'sixth' },
  ...{ 8: 'eighth', 16: 'sixteenth', 32: 'thirty-second' },
};

function spokenPart(over: number, under: number): string {
  const part = parts[under];
  if (part === undefined) return `${over} over ${under}`;
  if (over > 1) return `${over} ${part}s`;
  return `${under === 8 ? 'an' : 'a'} ${part}`;
}
