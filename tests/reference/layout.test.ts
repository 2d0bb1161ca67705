import { describe, expect, test } from 'vitest';
import { layOut, toBuy } from '../../src/core/layout/index.ts';
import { rectangle } from '../../src/core/geometry/index.ts';
import { cutUp } from '../core/layout/cut-up.ts';
import { faults } from '../core/layout/verify.ts';
import type { Cloth } from '../../src/core/layout/index.ts';

const inch = 25.4;
const cm = 10;

// Yields of a fat quarter of 18 x 22 in as quilting charts print them. Common practice, no source: every number is the
// whole squares across times the whole squares along.
const squaresOfAFatQuarter = [
  [2, 99],
  [2.5, 56],
  [3, 42],
  [3.5, 30],
  [4, 20],
  [4.5, 16],
  [5, 12],
  [6, 9],
] as const;

describe.each(['free', 'straight cuts'] as const)('yields, %s', (manner) => {
  test.each(squaresOfAFatQuarter)('squares of %f in from a fat quarter of 18 x 22 in: %i', (side, count) => {
    // Size: quilterbee.com, "Fat Quarters": 18 x 22 in from a yard of 36 x 44 in.
    const cloths: Cloth[] = [{ name: 'fat quarter', kind: 'pre-cut', width: 18 * inch, length: 22 * inch }];
    const demand = [{ name: 'square', outline: rectangle(side * inch, side * inch), count }];
    const layout = layOut(demand, cloths, { manner });
    expect(layout).toMatchObject({ left: [], preCuts: 1, proven: true });
    expect(faults(layout, demand, cloths, { manner })).toEqual([]);
    // And no more than the chart says: one more takes a second fat quarter.
    expect(layOut([{ ...demand[0]!, count: count + 1 }], cloths, { manner }).preCuts).toBe(2);
  });

  test('56 squares of 5 in from 40 x 36 in', () => {
    // findfulfillflourish.com, "How many square inches are in a yard of fabric".
    const cloths: Cloth[] = [{ name: 'yard', kind: 'pre-cut', width: 40 * inch, length: 36 * inch }];
    const square = { name: 'square', outline: rectangle(5 * inch, 5 * inch) };
    expect(layOut([{ ...square, count: 56 }], cloths, { manner })).toMatchObject({ left: [], preCuts: 1 });
    expect(layOut([{ ...square, count: 57 }], cloths, { manner }).preCuts).toBe(2);
  });

  test('pleats: 236 cm of strips 15 cm deep from cloth 90 cm wide take 45 cm', () => {
    // NIMI (Government of India), CITS Dress Making, Trade Practical, p. 203: 3 strips, each giving 90 - 2 cm of length.
    const strips = Math.ceil(236 / (90 - 2));
    const demand = [{ name: 'strip', outline: rectangle(90 * cm, 15 * cm), count: strips }];
    const layout = layOut(demand, [{ name: 'cloth', kind: 'bolt', width: 90 * cm }], { manner });
    expect(layout.length).toBeCloseTo(45 * cm, 6);
    expect(layout.proven).toBe(true);
  });

  // Published by a yardage calculator for quilters. Common practice, no source kept.
  test.each([
    [300, 3, 2, 40, 48],
    [63, 9.5, 9.5, 42, 152],
  ])('%i pieces of %f x %f in from %i in wide cloth need no more than %i in', (count, width, height, across, most) => {
    const demand = [{ name: 'piece', outline: rectangle(width * inch, height * inch), count, grain: 'any' as const }];
    const cloths: Cloth[] = [{ name: 'bolt', kind: 'bolt', width: across * inch }];
    const layout = layOut(demand, cloths, { manner });
    expect(layout.left).toEqual([]);
    expect(layout.length).toBeLessThanOrEqual(most * inch + 1e-6);
    expect(faults(layout, demand, cloths, { manner })).toEqual([]);
  });
});

test('a fat quarter without its selvage is 18 x 21 in', () => {
  // narniesquilts.com, "Fat Quarter Bundles". Across the 21 in go ten 2 in strips and no eleventh.
  const cloths: Cloth[] = [{ name: 'fat quarter', kind: 'pre-cut', width: 21 * inch, length: 18 * inch }];
  const strip = { name: 'strip', outline: rectangle(2 * inch, 18 * inch) };
  expect(layOut([{ ...strip, count: 10 }], cloths).preCuts).toBe(1);
  expect(layOut([{ ...strip, count: 11 }], cloths).preCuts).toBe(2);
});

// Yards of cloth that make the same garment, by width of the cloth: the fabric width substitution table of
// greenspun.com, bboard q-and-a 008fgB, the same in a second copy. Widths in inches, the middle of each range.
const widths = [35.5, 39, 41.5, 44.5, 50, 53, 59, 65.5];
const yards = [
  [1.75, 1.5, 1.5, 1.375, 1.25, 1.125, 1, 0.875],
  [2, 1.75, 1.75, 1.625, 1.5, 1.375, 1.25, 1.125],
  [2.25, 2, 2, 1.75, 1.625, 1.5, 1.375, 1.25],
  [2.5, 2.25, 2.25, 2.125, 1.75, 1.75, 1.625, 1.5],
  [2.875, 2.5, 2.5, 2.25, 2, 1.875, 1.75, 1.625],
  [3.125, 2.75, 2.75, 2.5, 2.25, 2, 1.875, 1.75],
  [3.375, 3, 2.875, 2.75, 2.375, 2.25, 2, 1.875],
  [3.75, 3.25, 3.125, 2.875, 2.625, 2.375, 2.25, 2.125],
  [4.25, 3.5, 3.375, 3.125, 2.75, 2.625, 2.375, 2.25],
  [4.5, 3.75, 3.625, 3.375, 3, 2.75, 2.625, 2.5],
  [4.75, 4, 3.875, 3.625, 3.25, 2.875, 2.75, 2.625],
  [5, 4.25, 4.125, 3.875, 3.375, 3.125, 2.875, 2.75],
];

test.each(yards.map((row, i) => [i, row] as const))(
  'the yardage conversion chart, row %i, within its own scatter',
  (i, row) => {
    // A garment that fills the chart's yardage of 44.5 in cloth to the last inch, laid on each of the other widths. What
    // the chart gives for one garment differs in area from width to width; by that much its word is uncertain.
    const length = row[3]! * 36;
    const parts = cutUp(i + 1, 44, Math.floor(length), 36);
    const demand = parts.map(({ width, height }, k) => ({
      name: `${k}`,
      outline: rectangle(width * inch, height * inch),
      count: 1,
      grain: 'any' as const,
    }));
    const areas = row.map((yard, k) => yard * 36 * widths[k]!);
    const scatter = Math.max(...areas) - Math.min(...areas);
    for (const [k, width] of widths.entries()) {
      const cloths: Cloth[] = [{ name: 'bolt', kind: 'bolt', width: width * inch }];
      const layout = layOut(demand, cloths, { tries: 300, selling: { step: 4.5 * inch } });
      expect(layout.left).toEqual([]);
      expect(layout.buy.total / inch).toBeLessThanOrEqual(row[k]! * 36 + scatter / width + 4.5 + 1e-6);
    }
  },
);

test('cloth that shrinks by s % is bought length / (1 - s / 100) long', () => {
  // foralltex.com, "Shrinkage math for pattern makers". Linen, 4 % (kembrel.com, "How do you calculate shrinkage of fabric").
  const buy = toBuy(1200, { shrinkage: 4 });
  expect(buy.total).toBeCloseTo(1250, 9);
  // The same pages define shrinkage as (before - after) / before x 100.
  expect(((buy.total - buy.laid) / buy.total) * 100).toBeCloseTo(4, 9);
});
