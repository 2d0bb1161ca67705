import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runs } from '../../random.ts';
import { convexHull } from '../../../src/core/geometry/hull.ts';
import { leftOf, lineThrough } from '../../../src/core/geometry/line.ts';

const point = fc.record({ x: fc.integer({ min: -20, max: 20 }), y: fc.integer({ min: -20, max: 20 }) });

test('a line has all points on its left if, and only if, it has all corners of their hull there', () => {
  let all = 0;
  fc.assert(
    fc.property(fc.array(point, { minLength: 1, maxLength: 60 }), point, point, (points, from, to) => {
      fc.pre(from.x !== to.x || from.y !== to.y);
      const line = lineThrough(from, to);
      const isLeft = (some: typeof points) => some.every((one) => leftOf(line, one) > -1e-6);
      expect(isLeft(convexHull(points))).toBe(isLeft(points));
      if (isLeft(points)) all++;
    }),
    runs(600),
  );
  expect(all).toBeGreaterThan(10);
});

test('corners are those of the points, counter-clockwise, none inside and none twice', () => {
  const square = [
    { x: 0, y: 0 },
    { x: 4, y: 0 },
    { x: 4, y: 4 },
    { x: 0, y: 4 },
  ];
  expect(convexHull([...square, ...square, { x: 2, y: 2 }, { x: 2, y: 0 }])).toEqual(square);
  expect(convexHull([])).toEqual([]);
  expect(convexHull([square[1]!])).toEqual([square[1]]);
});
