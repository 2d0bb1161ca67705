import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runs } from '../../random.ts';
import {
  addAllowance,
  area,
  bounds,
  length,
  polygon,
  rectangle,
  removeAllowance,
  sides,
  union,
  withCorners,
} from '../../../src/core/geometry/index.ts';
import { simplePolygon, value } from './shapes.ts';
import type { Outline } from '../../../src/core/geometry/index.ts';

const box = rectangle(100, 50);
const names = (outline: Outline) => outline.map((edge) => edge.name);

describe('outer corners', () => {
  test('mitred: the lines are carried on until they meet', () => {
    const cut = value(addAllowance(box, 10));
    expect(names(cut)).toEqual(['bottom', 'right', 'top', 'left']);
    expect(bounds(cut)).toEqual({ x: -10, y: -10, width: 120, height: 70 });
  });
  test('blunted: cut across one allowance from the corner, never nearer', () => {
    const cut = value(addAllowance(box, 10, { shape: 'blunted' }));
    expect(names(cut)).toEqual(
      [
        'bottom-left corner',
        'bottom',
        'bottom-right corner',
        'right',
        'top-right corner',
        'top',
        'top-left corner',
        'left',
      ].sort((a, b) => names(cut).indexOf(a) - names(cut).indexOf(b)),
    );
    // Each corner loses a triangle whose height is (sqrt 2 - 1) times the allowance.
    expect(area(cut)).toBeCloseTo(120 * 70 - 4 * (10 * (Math.SQRT2 - 1)) ** 2, 9);
  });
  test('rounded: a quarter circle with the allowance as radius', () => {
    const cut = value(addAllowance(box, 10, { shape: 'rounded' }));
    expect(area(cut)).toBeCloseTo(5000 + 300 * 10 + Math.PI * 100, 9);
    expect(length(cut, 'top-right corner')).toBeCloseTo(5 * Math.PI, 9);
  });
  test('one corner by name, written either way round, short or long', () => {
    for (const name of ['top-right corner', 'top-right', 'right-top']) {
      const cut = value(addAllowance(box, 10, { [name]: { shape: 'rounded' } }));
      expect(area(cut)).toBeCloseTo(120 * 70 - (4 - Math.PI) * 25, 9);
    }
  });
  test('a long point is blunted when it passes the limit', () => {
    const flag = polygon([
      { x: 0, y: 0 },
      { x: 100, y: -10 },
      { x: 100, y: 10 },
    ]);
    const furthest = (limit?: number) =>
      -bounds(value(addAllowance(flag, 5, limit === undefined ? undefined : { shape: 'mitred', limit }))).x;
    // The point has an angle of 2 atan 0.1; a mitre reaches allowance / sin (half of it) = 50.2 mm.
    expect(furthest(20)).toBeCloseTo(5 / Math.sin(Math.atan(0.1)), 9);
    expect(furthest()).toBeCloseTo(5, 9);
  });
});

describe('allowances that differ', () => {
  test('an edge without an allowance stays where it is, beside one with', () => {
    const cut = value(addAllowance(box, { top: 25, left: 5, right: 0 }));
    expect(bounds(cut)).toEqual({ x: -5, y: 0, width: 105, height: 75 });
  });
  test('a rounded corner between them keeps the larger everywhere round the corner', () => {
    const cut = value(addAllowance(box, { top: 20, right: 10 }, { 'top-right': { shape: 'rounded' } }));
    expect(bounds(cut)).toEqual({ x: 0, y: 0, width: 110, height: 70 });
    expect(length(cut, 'top-right corner')).toBeCloseTo(20 * Math.asin(0.5), 9);
  });
  test('edges in one line get a step, named after their corner', () => {
    const vent = polygon(
      [
        { x: 0, y: 0 },
        { x: 40, y: 0 },
        { x: 100, y: 0 },
        { x: 100, y: 50 },
        { x: 0, y: 50 },
      ],
      ['vent', 'seam', 'right', 'top', 'left'],
    );
    const cut = value(addAllowance(vent, { vent: 30, seam: 10 }));
    expect(names(cut)).toEqual(['vent', 'vent-seam corner', 'seam', 'right', 'top', 'left']);
    expect(length(cut, 'vent-seam corner')).toBe(20);
    expect(area(cut)).toBe(5000 + 40 * 30 + 60 * 10);
  });
  test('edges nearly in one line step too, instead of eating the neighbour', () => {
    const nearly = polygon(
      [
        { x: 0, y: 0 },
        { x: 50, y: -2 },
        { x: 100, y: 0 },
        { x: 50, y: 60 },
      ],
      ['fold', 'seam', 'right', 'left'],
    );
    const cut = value(addAllowance(nearly, { seam: 10 }));
    expect(length(cut, 'fold-seam corner')).toBeCloseTo(10, 9);
    expect(length(cut, 'fold')).toBeCloseTo(length(nearly, 'fold'), 9);
  });
  test('each edge of the result lies its own allowance from the edge it came from', () => {
    let held = 0;
    fc.assert(
      fc.property(
        simplePolygon({ min: 3, max: 8 }),
        fc.array(fc.integer({ min: -150, max: 250 }), { minLength: 8, maxLength: 8 }),
        fc.constantFrom('mitred' as const, 'blunted' as const, 'rounded' as const),
        (outline, amounts, shape) => {
          const given = Object.fromEntries(outline.map((edge, i) => [edge.name, amounts[i]! / 10]));
          const cut = addAllowance(outline, given, { shape });
          if (!cut.ok) return;
          held++;
          expect(area(cut.value)).toBeGreaterThan(0);
          for (const side of sides(cut.value)) {
            const was = sides(outline).find((one) => one.name === side.name);
            if (!was) continue;
            const [dx, dy] = [was.to.x - was.from.x, was.to.y - was.from.y];
            const out = (p: { x: number; y: number }) =>
              ((p.x - was.from.x) * dy - (p.y - was.from.y) * dx) / Math.hypot(dx, dy);
            const by = given[side.name]!;
            // Lying on its own moved line, or (where allowances differ much) on the way back to the corner between.
            const ends = [out(side.from), out(side.to)];
            if (ends.every((end) => Math.abs(end - by) < 1e-6)) continue;
            // Where features smaller than 0.002 mm were left out, ends may sit up to 0.01 mm off.
            expect(Math.min(...ends)).toBeGreaterThan(Math.min(0, by) - 0.01);
            expect(Math.max(...ends)).toBeLessThan(Math.max(0, by) + 0.01);
          }
          // No place twice: the clipping library finds the same area when it unites the ring with itself.
          const whole = union([cut.value]).reduce((sum, ring) => sum + area(ring), 0);
          expect(Math.abs(whole - area(cut.value))).toBeLessThan(0.02 * length(cut.value));
        },
      ),
      runs(3000),
    );
    expect(held).toBeGreaterThan(1500);
  });
});

describe('curves', () => {
  const rounded = value(withCorners(box, { rounded: 10 }));
  test('arcs stay concentric, and come back to what they were', () => {
    const cut = value(addAllowance(rounded, 6));
    expect(length(cut, 'top-left corner')).toBeCloseTo((16 * Math.PI) / 2, 9);
    const back = value(removeAllowance(cut, 6));
    expect(area(back)).toBeCloseTo(area(rounded), 9);
    expect(names(back)).toEqual(names(rounded));
  });
  test('an inset larger than the radius makes the corner sharp again', () => {
    const small = value(removeAllowance(rounded, 15));
    expect(bounds(small)).toEqual({ x: 15, y: 15, width: 70, height: 20 });
    expect(area(small)).toBeCloseTo(70 * 20, 6);
  });
  test('a hollow narrower than two allowances fills up', () => {
    // A half-round bite of radius 6 in the top edge; an allowance of 8 leaves a straight top.
    const bitten: Outline = [
      { name: 'bottom', from: { x: 0, y: 0 }, bulge: 0 },
      { name: 'right', from: { x: 100, y: 0 }, bulge: 0 },
      { name: 'top', from: { x: 100, y: 50 }, bulge: 0 },
      { name: 'bite', from: { x: 56, y: 50 }, bulge: -1 },
      { name: 'top', from: { x: 44, y: 50 }, bulge: 0 },
      { name: 'left', from: { x: 0, y: 50 }, bulge: 0 },
    ];
    const shallow = value(addAllowance(bitten, 4));
    // What is left of the bite: a half circle of radius 2 and, above it, the way out between two mitred corners.
    expect(area(shallow)).toBeCloseTo(108 * 58 - (4 * 4 + Math.PI * 2), 6);
    const filled = value(addAllowance(bitten, 8));
    expect(area(filled)).toBeCloseTo(116 * 66, 6);
    expect(names(filled)).not.toContain('bite');
  });
  test('a seam allowance meets a curve where the two cut lines cross', () => {
    // A half circle on a straight base: base 0, curve 10. The grown circle has radius 60.
    const half: Outline = [
      { name: 'base', from: { x: -50, y: 0 }, bulge: 0 },
      { name: 'curve', from: { x: 50, y: 0 }, bulge: 1 },
    ];
    const cut = value(addAllowance(half, { curve: 10 }));
    expect(length(cut, 'base')).toBeCloseTo(120, 9);
    expect(bounds(cut).height).toBeCloseTo(60, 9);
    const both = value(addAllowance(half, 10));
    // The base line 10 below meets the circle of radius 60 at x = sqrt(60² - 10²).
    expect(length(both, 'base')).toBeCloseTo(2 * Math.sqrt(3500), 9);
  });
});

describe('faults', () => {
  const fault = (result: ReturnType<typeof addAllowance>) => (result.ok ? undefined : result.fault);
  test('a name that is not there', () => {
    expect(fault(addAllowance(box, { tpo: 5 }))).toEqual({
      code: 'unknown-edge',
      message: 'There is no edge tpo. The edges are bottom, right, top, left.',
      edge: 'tpo',
    });
    expect(fault(addAllowance(box, 5, { 'top-middle': { shape: 'rounded' } }))?.code).toBe('unknown-corner');
  });
  test('an inset that uses the shape up, or leaves two parts', () => {
    expect(fault(removeAllowance(box, 25))?.code).toBe('nothing-left');
    expect(fault(removeAllowance(box, 40))?.code).toBe('nothing-left');
    const waisted = polygon([
      { x: 0, y: 0 },
      { x: 50, y: 22 },
      { x: 100, y: 0 },
      { x: 100, y: 50 },
      { x: 50, y: 28 },
      { x: 0, y: 50 },
    ]);
    expect(fault(removeAllowance(waisted, 5))).toEqual({
      code: 'falls-apart',
      message: 'The inset leaves 2 separate parts.',
    });
  });
  test('allowances that close an opening', () => {
    const hook = polygon([
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 100 },
      { x: 40, y: 100 },
      { x: 40, y: 46 },
      { x: 45, y: 46 },
      { x: 45, y: 80 },
      { x: 80, y: 80 },
      { x: 80, y: 20 },
      { x: 20, y: 20 },
      { x: 20, y: 40 },
      { x: 38, y: 40 },
      { x: 38, y: 42 },
      { x: 0, y: 42 },
    ]);
    expect(fault(addAllowance(hook, 3))?.code).toBe('closes-up');
  });
  test('an outline that crosses itself', () => {
    const bow = polygon([
      { x: 0, y: 0 },
      { x: 100, y: 80 },
      { x: 100, y: 0 },
      { x: 0, y: 60 },
    ]);
    for (const made of [addAllowance(bow, 5), removeAllowance(bow, 5)])
      expect(made).toMatchObject({ ok: false, fault: { code: 'crosses-itself' } });
  });
  test('numbers that are none, outlines without size', () => {
    expect(fault(addAllowance(box, Number.NaN))?.code).toBe('not-finite');
    expect(fault(addAllowance([], 5))?.code).toBe('no-size');
    expect(fault(addAllowance(rectangle(0, 0), 5))?.code).toBe('no-size');
  });
});
