import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { pathText, polygon, rectangle, sample, withCorners } from '../../../src/core/index.ts';
import { closed } from '../../../src/core/drawing/path.ts';
import { runs } from '../../random.ts';
import { segments } from './read.ts';

describe('paths', () => {
  it('follow straight edges exactly', () => {
    const path = closed(rectangle(20, 10), (point) => point);
    expect(pathText(path)).toBe('M0 0H20V10H0V0Z');
  });

  it('have a short form for level and upright lines, also where they are so only once rounded', () => {
    expect(
      pathText([
        ['M', 1, 1],
        ['L', 5, 1.004],
        ['L', 4.996, 3],
        ['L', 7, 4],
      ]),
    ).toBe('M1 1H5V3L7 4');
    // A closed path goes on from where it began, and says so by a move.
    expect(pathText([['M', 1, 1], ['L', 5, 2], ['Z'], ['M', 5, 2], ['L', 5, 4]])).toBe('M1 1L5 2ZM5 2V4');
  });

  it('are written to a hundredth of a millimetre, with no minus before nothing', () => {
    expect(pathText([['M', -0.001, 1.005], ['C', 1 / 3, 2 / 3, 1, 2, 3, 4.999], ['Z']])).toBe(
      'M0 1C0.33 0.67 1 2 3 5Z',
    );
  });

  it('are written as JavaScript writes the same numbers, rounded', () => {
    const number = fc.oneof(
      fc.double({ min: -2000, max: 2000, noNaN: true }),
      fc.integer({ min: -3000, max: 3000 }).map((n) => n / 100),
    );
    fc.assert(
      fc.property(number, number, (x, y) => {
        const [a, b] = [x, y].map((n) => Math.round(n * 100) / 100 + 0);
        expect(pathText([['M', x, y]])).toBe(`M${a} ${b}`);
      }),
      runs(500),
    );
  });

  it('draw an outline without edges as nothing', () => {
    expect(closed(polygon([]), (point) => point)).toEqual([]);
  });

  it('keep to round corners within 0.03 % of their radius', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 40, noNaN: true }), (radius) => {
        const shaped = withCorners(rectangle(100, 90), { rounded: radius });
        if (!shaped.ok) throw new Error(shaped.fault.message);
        const drawn = segments(closed(shaped.value, (point) => point)).map(([from]) => from);
        // The outline's own points, and the circle each corner is a part of.
        const centres = [radius, 100 - radius].flatMap((x) => [radius, 90 - radius].map((y) => ({ x, y })));
        for (const { x, y } of drawn) {
          const onSide = x < 1e-6 || y < 1e-6 || x > 100 - 1e-6 || y > 90 - 1e-6;
          const off = Math.min(...centres.map((c) => Math.abs(Math.hypot(x - c.x, y - c.y) - radius)));
          expect(onSide ? 0 : off).toBeLessThan(0.0003 * radius);
        }
        expect(drawn.length).toBeGreaterThan(sample(rectangle(100, 90), 1).length);
      }),
      runs(100),
    );
  });
});
