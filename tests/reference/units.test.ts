/** The sizes of units, as published, against what the kit reads and writes. */
import { describe, expect, it } from 'vitest';
import { formatLength, MM_PER_INCH, parseLength } from '../../src/core/index.ts';

/** The length of a text in mm. */
function mm(text: string): number {
  const read = parseLength(text, 'metric');
  if (!read.ok) throw new Error(`${text}: ${read.fault.message}`);
  return read.value;
}

describe('units', () => {
  // International Yard and Pound Agreement, 1959: the inch is exactly 25.4 mm.
  // Read in an encyclopedia page, https://probsee.com/p/Inch
  it('an inch is exactly 25.4 mm', () => {
    expect(MM_PER_INCH).toBe(25.4);
    expect(mm('1 in')).toBe(25.4);
    expect(formatLength(25.4, 'inch')).toBe('1 in');
  });

  // The international yard is exactly 0.9144 m. Wikipedia, "Yard" (2016 revision),
  // https://en.wikipedia.org/wiki/Yard?oldid=704108643
  it('a yard is exactly 0.9144 m', () => {
    expect(mm('1 yd')).toBe(914.4);
    expect(mm('1 yd')).toBe(mm('0.9144 m'));
  });

  // A foot is 304.8 mm: computed as 12 of the inches above. Its definition as 12 inches, and the yard's as 3 feet,
  // stand in NIST Handbook 44, Appendix C (the table itself was not seen; from memory).
  it('a foot is 12 inches, and a yard is 3 feet', () => {
    expect(mm('1 ft')).toBe(304.8);
    expect(mm('1 ft')).toBe(mm('12 in'));
    expect(mm('1 yd')).toBe(mm('3 ft'));
    expect(mm('1 yd')).toBe(mm('36 in'));
  });

  // The prefixes of the International System of Units: centi is a hundredth, milli a thousandth (from memory).
  it('a metre is 100 cm and 1000 mm', () => {
    expect(mm('1 m')).toBe(1000);
    expect(mm('1 m')).toBe(mm('100 cm'));
    expect(mm('1 cm')).toBe(mm('10 mm'));
  });
});

describe('rounded pairs as the trade prints them', () => {
  // Each pair is printed side by side for precut cloth: a fat quarter of 18 x 22 in is 46 x 56 cm, a long quarter of
  // 9 x 44 in is 23 x 112 cm. quilterbee, http://www.quilterbee.com/shop/Precut-Fabrics/Fat-Quarters.htm
  it.each([
    ['18 in', '46 cm'],
    ['22 in', '56 cm'],
    ['9 in', '23 cm'],
    ['44 in', '112 cm'],
  ])('%s is printed as %s', (inches, centimetres) => {
    // Their rounding is to whole centimetres; ours to millimetres, so ours lies within half a centimetre.
    expect(Math.abs(mm(inches) - mm(centimetres))).toBeLessThanOrEqual(5);
    const shown = formatLength(mm(inches), 'metric', { in: 'cm' });
    expect(Math.round(Number(shown.replace(/[^\d.]/gu, '')))).toBe(mm(centimetres) / 10);
    expect(shown).toMatch(/^≈ /u);
  });
});
