import { describe, expect, test } from 'vitest';
import { layOut, toBuy } from '../../src/core/layout/index.ts';
import { rectangle } from '../../src/core/geometry/index.ts';
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

test('cloth that shrinks by s % is bought length / (1 - s / 100) long', () => {
  // foralltex.com, "Shrinkage math for pattern makers". Linen, 4 % (kembrel.com, "How do you calculate shrinkage of fabric").
  const buy = toBuy(1200, { shrinkage: 4 });
  expect(buy.total).toBeCloseTo(1250, 9);
  // The same pages define shrinkage as (before - after) / before x 100.
  expect(((buy.total - buy.laid) / buy.total) * 100).toBeCloseTo(4, 9);
});
