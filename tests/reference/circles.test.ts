/**
 * Round pieces and arcs as an author writes them, against published sizes of round bases, skirts and tablecloths. What
 * the sources round is compared within their rounding; `exact` is their rule worked out without it.
 */
import { describe, expect, test } from 'vitest';
import { resolved } from '../core/project/files.ts';
import type { Pattern } from '../../src/core/index.ts';

const INCH = 25.4;
const value = ({ measures }: Pattern, name: string): number => measures[name]!.value;

const base = (diameter: string, seam: string, edition: 'inch' | 'metric'): Pattern =>
  resolved(
    `
title: Round base
measures: { seam: ${seam} }
pieces:
  base: { circle: ${diameter} }
  side: { finished: [base stitch line, 4 in] }
`,
    { edition },
  );

describe('round bases', () => {
  test.each([
    // Sew4Home, draw and measure a circle (copy): side strip for a round base = 3.14 x diameter.
    ['12 in', 37.68, 37.6991, INCH, 'inch'],
    ['30 cm', 94.2, 94.2478, 10, 'metric'],
  ] as const)('a side round a base of %s is %f long', (diameter, published, exact, unit, edition) => {
    const side = value(base(diameter, '1/2 in', edition), 'side finished width') / unit;
    expect(side).toBeCloseTo(exact, 4);
    expect(Math.abs(side - published)).toBeLessThan(0.06);
  });
  test.each([
    // scpbanks, The Bucket Bag part 2 (2011).
    ['7 in', '1/2 in', 8],
    // Quilt in Corn (2007).
    ['8 in', '1/4 in', 8.5],
  ])('a base of %s with a seam of %s is cut %f in wide', (diameter, seam, published) => {
    expect(value(base(diameter, seam, 'inch'), 'base width') / INCH).toBeCloseTo(published, 9);
  });
  test.each([
    // Linen Hero sizing chart: skirting for a round table, pi d in feet, up to a foot.
    [48, 13],
    [60, 16],
    [72, 19],
  ])('the skirting of a table of %i in is %i ft', (diameter, published) => {
    const feet = value(base(`${diameter} in`, '0 in', 'inch'), 'base stitch line') / INCH / 12;
    expect(Math.ceil(feet)).toBe(published);
  });
  test('a round tablecloth: table + 2 x (drop + 1 1/2) in (Sew4Home / D. Babylon, How to measure a round tablecloth)', () => {
    const cloth = resolved(
      'title: Tablecloth\nmeasures: { table: 48 in, drop: 12 in, seam: 1 1/2 in }\npieces: { cloth: { circle: table + 2 * drop } }',
    );
    expect(value(cloth, 'cloth width') / INCH).toBeCloseTo(48 + 2 * (12 + 1.5), 9);
  });
});

/**
 * A panel of a circle skirt that takes so many degrees of the circle, at most half of it: the waist goes into the panel,
 * the hem out of it.
 */
function panel(radius: string, degrees: number, edition: 'inch' | 'metric'): Pattern {
  const turn = (degrees * Math.PI) / 180;
  const at = (from: string, t: number) =>
    `[${from} * ${Math.cos(t).toFixed(12)}, ${from} * ${Math.sin(t).toFixed(12)}]`;
  return resolved(
    `
title: Circle skirt
grid: { in: 1/32, mm: 0.1 }
measures:
  seam: { in: 1/2, mm: 10 }
  long: { in: 20, mm: 500 }
  waist radius: ${radius}
pieces:
  panel:
    outline:
      - { at: ${at('(waist radius + long)', 0)}, edge: hem, radius: waist radius + long }
      - { at: ${at('(waist radius + long)', turn)}, edge: other side }
      - { at: ${at('waist radius', turn)}, edge: waist, radius: waist radius, bends: in }
      - { at: ${at('waist radius', 0)}, edge: side }
`,
    { edition },
  );
}

describe('circle skirts: the waist of all panels is the waist that was asked for', () => {
  test.each([
    // circle skirt formula page (smartpatternmaking.com): r = k C / 2 pi, 6.28 used for 2 pi.
    ['full, 110 cm', '{ is: 110 cm / (2 * pi) }', 1, 110, 17.52, 0.02],
    ['full, 114 cm', '{ is: 114 cm / (2 * pi) }', 1, 114, 18.15, 0.02],
  ])('%s', (_, radius, turns, waist, published, within) => {
    const pattern = panel(radius, 90, 'metric');
    expect(Math.abs(value(pattern, 'waist radius') / 10 - published)).toBeLessThan(within);
    expect((4 * turns * value(pattern, 'panel waist stitch line')) / 10).toBeCloseTo(waist, 6);
    const hem = 2 * Math.PI * (value(pattern, 'waist radius') + 500);
    expect(4 * turns * value(pattern, 'panel hem stitch line')).toBeCloseTo(hem, 6);
  });
  test.each([
    // circle skirt post 2014 (prettyquirkypants.com), which cuts its decimals off; exact: W / (2 pi share).
    ['full circle', 1, 4.13, 4.138],
    ['half a circle', 1 / 2, 8.2, 8.2761],
    ['a third of a circle', 1 / 3, 12.4, 12.4141],
    ['a quarter of a circle', 1 / 4, 16.56, 16.5521],
  ])('26 in round, %s', (_, share, published, exact) => {
    const pattern = panel(`{ is: 26 in / (2 * pi * ${share}) }`, 60, 'inch');
    const radius = value(pattern, 'waist radius') / INCH;
    expect(radius).toBeCloseTo(exact, 3);
    expect(Math.abs(radius - published)).toBeLessThan(0.1);
    // Panels of 60 degrees: six go into a whole circle.
    expect((6 * share * value(pattern, 'panel waist stitch line')) / INCH).toBeCloseTo(26, 6);
  });
  test('a waist of 30 in has a radius of 4.77 in (Make Thrift Buy 27, which says 4.7)', () => {
    const pattern = panel('{ is: 30 in / (2 * pi) }', 180, 'inch');
    expect(value(pattern, 'waist radius') / INCH).toBeCloseTo(4.7746, 4);
    expect((2 * value(pattern, 'panel waist stitch line')) / INCH).toBeCloseTo(30, 6);
  });
});
