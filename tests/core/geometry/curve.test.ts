/** Circles, arcs and smooth curves, against a general mathematics library and the clipper. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from 'mathjs';
import {
  addAllowance,
  area,
  bounds,
  circle,
  curvedOutline,
  difference,
  halfCircle,
  length,
  offset,
  polygon,
  rectangle,
  widestInside,
} from '../../../src/core/geometry/index.ts';
import { smoothThrough } from '../../../src/core/geometry/curve.ts';
import { tangent } from '../../../src/core/geometry/arc.ts';

/** What mathjs makes of a formula. */
const sum = (formula: string, of: Record<string, number>): number => evaluate(formula, of) as number;

/** A shape that stands on a chord along the x axis, listed either way round. */
const onChord = (chord: number, way: { rise: number } | { radius: number }, isBackwards: boolean) => {
  const points = [
    { at: { x: 0, y: 0 }, name: 'bottom' },
    { at: { x: chord, y: 0 }, name: 'right' },
    { at: { x: chord, y: 3 * chord }, name: 'arc', way },
    { at: { x: 0, y: 3 * chord }, name: 'left' },
  ];
  if (!isBackwards) return curvedOutline(points);
  const [bottom, right, top, left] = points.map(({ at }) => at) as [Point, Point, Point, Point];
  return curvedOutline([
    { at: left, name: 'arc', way },
    { at: top, name: 'right' },
    { at: right, name: 'bottom' },
    { at: bottom, name: 'left' },
  ]);
};
type Point = { x: number; y: number };

const size = fc.double({ min: 5, max: 2000, noNaN: true });

describe('against mathjs', () => {
  test('the length round a circle and its area', () => {
    fc.assert(
      fc.property(size, (d) => {
        expect(length(circle(d, 'edge'))).toBeCloseTo(sum('pi * d', { d }), 6);
        expect(area(circle(d, 'edge')) / sum('pi * d^2 / 4', { d })).toBeCloseTo(1, 12);
        expect(bounds(circle(d, 'edge')).width).toBeCloseTo(d, 9);
      }),
      { numRuns: 50 },
    );
  });
  test('of a half circle the curve is half as long', () => {
    fc.assert(
      fc.property(size, (d) => {
        const half = halfCircle(d, 'bottom', 'curve');
        expect(length(half, 'bottom')).toBeCloseTo(d, 9);
        expect(length(half, 'curve')).toBeCloseTo(sum('pi * d / 2', { d }), 6);
        expect(area(half) / sum('pi * d^2 / 8', { d })).toBeCloseTo(1, 12);
      }),
      { numRuns: 50 },
    );
  });
  test.each([
    ['out', 1],
    ['in', -1],
  ])('an arc of a radius that bends %s', (_, sign) => {
    const share = fc.double({ min: 0.501, max: 20, noNaN: true });
    fc.assert(
      fc.property(size, share, fc.boolean(), (c, times, isBackwards) => {
        const r = c * times;
        const outline = onChord(c, { radius: sign * r }, isBackwards);
        expect(length(outline, 'arc')).toBeCloseTo(sum('2 * r * asin(c / (2 * r))', { c, r }), 5);
        const segment = sum('r^2 * asin(c / (2 * r)) - c / 2 * sqrt(r^2 - c^2 / 4)', { c, r });
        expect((area(outline) - sign * segment) / (3 * c * c)).toBeCloseTo(1, 6);
      }),
      { numRuns: 100 },
    );
  });
  test.each([
    ['out', 1],
    ['in', -1],
  ])('an arc of a rise that bends %s', (_, sign) => {
    const share = fc.double({ min: 0.01, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(size, share, fc.boolean(), (c, times, isBackwards) => {
        const h = c * times;
        const outline = onChord(c, { rise: sign * h }, isBackwards);
        const r = sum('(c^2 / 4 + h^2) / (2 * h)', { c, h });
        expect(length(outline, 'arc')).toBeCloseTo(sum('4 * r * atan(2 * h / c)', { c, h, r }), 5);
        const box = bounds(outline);
        expect(box.y + box.height).toBeCloseTo(3 * c + Math.max(0, sign * h), 6);
      }),
      { numRuns: 100 },
    );
  });
});

describe('a smooth curve through points', () => {
  const points = fc
    .array(fc.tuple(fc.integer({ min: 5, max: 60 }), fc.integer({ min: -40, max: 40 })), { minLength: 3, maxLength: 8 })
    .map((steps) => {
      let x = 0;
      return steps.map(([by, y]) => ({ x: (x += by), y }));
    });
  test('goes through each of them, and turns no corner', () => {
    fc.assert(
      fc.property(points, (given) => {
        const arcs = smoothThrough(given);
        expect(arcs.filter((_, i) => i % 2 === 0).map(({ from }) => from)).toEqual(given.slice(0, -1));
        const ends = [...arcs.slice(1).map(({ from }) => from), given.at(-1)!];
        const sides = arcs.map((arc, i) => ({ name: 'curve', ...arc, to: ends[i]! }));
        for (const [i, side] of sides.slice(1).entries()) {
          const [a, b] = [tangent(sides[i]!, 'end'), tangent(side, 'start')];
          expect(a.x * b.y - a.y * b.x).toBeCloseTo(0, 7);
          expect(a.x * b.x + a.y * b.y).toBeGreaterThan(0.999);
        }
      }),
      { numRuns: 200 },
    );
  });
  test('is the circle that its points lie on', () => {
    fc.assert(
      fc.property(size, fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 2, maxLength: 5 }), (r, turns) => {
        let turned = 0;
        const on = [0, ...turns].map((by) => {
          turned += by;
          return { x: r * Math.cos((turned * Math.PI) / 180), y: r * Math.sin((turned * Math.PI) / 180) };
        });
        const arcs = smoothThrough(on);
        const outline = [
          ...arcs.map((arc) => ({ name: 'curve', ...arc })),
          { name: 'chord', from: on.at(-1)!, bulge: 0 },
        ];
        expect(length(outline, 'curve')).toBeCloseTo(sum('r * t / 180 * pi', { r, t: turned }), 5);
      }),
      { numRuns: 100 },
    );
  });
  test('is a line where they lie on one', () => {
    for (const { bulge } of smoothThrough([
      { x: 0, y: 0 },
      { x: 1, y: 2 },
      { x: 5, y: 10 },
    ]))
      expect(bulge).toBe(0);
  });
  test('is two half circles where both ends stand straight across a chord', () => {
    const arcs = smoothThrough([
      { x: 0, y: 5 },
      { x: 2, y: 1 },
      { x: 4, y: 7 },
      { x: 6, y: 5 },
    ]).slice(2, 4);
    expect(arcs[1]!.from).toEqual({ x: 3, y: 4 });
    expect(arcs.map(({ bulge }) => Math.abs(bulge))).toEqual([expect.closeTo(1, 9), expect.closeTo(1, 9)]);
    expect(arcs[0]!.bulge + arcs[1]!.bulge).toBeCloseTo(0, 9);
  });
});

test('an allowance round curves is that of the clipper', () => {
  const shapes = [
    circle(120, 'edge'),
    halfCircle(200, 'bottom', 'curve'),
    onChord(80, { rise: 25 }, false),
    onChord(80, { rise: -25 }, true),
    curvedOutline([
      { at: { x: 0, y: 0 }, name: 'bottom' },
      { at: { x: 160, y: 0 }, name: 'side' },
      {
        at: { x: 160, y: 120 },
        name: 'top',
        way: {
          through: [
            { x: 110, y: 95 },
            { x: 50, y: 100 },
          ],
        },
      },
      { at: { x: 0, y: 120 }, name: 'left' },
    ]),
  ];
  for (const [i, shape] of shapes.entries()) {
    const ours = addAllowance(shape, 10, { shape: 'rounded' });
    expect.soft(ours.ok, String(i)).toBe(true);
    if (!ours.ok) continue;
    // Rounded at every corner, the clipper’s line is ours within the chords that it makes of arcs.
    const theirs = offset([shape], 10, 'rounded');
    for (const apart of [difference([ours.value], theirs), difference(theirs, [ours.value])]) {
      const left = apart.reduce((sum, ring) => sum + area(ring), 0);
      expect.soft(left / length(ours.value), String(i)).toBeLessThan(0.05);
    }
  }
});

describe('the widest rectangle inside', () => {
  test('a circle and half a circle, against mathjs', () => {
    for (const h of [6, 30, 48])
      expect(widestInside(circle(50, 'edge'), h)).toBeCloseTo(sum('sqrt(50^2 - h^2)', { h }), 1);
    for (const h of [5, 15, 24]) {
      const width = widestInside(halfCircle(50, 'bottom', 'curve'), h);
      expect(width).toBeCloseTo(sum('2 * sqrt(25^2 - h^2)', { h }), 1);
    }
  });
  test('a triangle, a rectangle, and nothing where it is too high', () => {
    const triangle = polygon([
      { x: 0, y: 0 },
      { x: 40, y: 0 },
      { x: 20, y: 40 },
    ]);
    expect(widestInside(triangle, 10)).toBeCloseTo(30, 3);
    expect(widestInside(rectangle(40, 20), 20)).toBeCloseTo(40, 6);
    expect(widestInside(rectangle(40, 20), 21)).toBe(0);
  });
  test('a slot, between whose lines it lies, and beside which it fits exactly', () => {
    const slotted = polygon(
      [
        [0, 0],
        [8, 0],
        [8, 5],
        [3, 5],
        [3, 5.5],
        [8, 5.5],
        [8, 12],
        [0, 12],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    );
    expect(widestInside(slotted, 8)).toBeCloseTo(3, 5);
    expect(widestInside(slotted, 6.5)).toBeCloseTo(8, 5);
    expect(widestInside(slotted, 5)).toBeCloseTo(8, 5);
  });
  test('an hourglass, whose neck it goes through', () => {
    const hourglass = polygon(
      [
        [0, 0],
        [8, 0],
        [8, 4.9],
        [5, 5.1],
        [8, 5.3],
        [8, 12],
        [0, 12],
        [0, 5.3],
        [3, 5.1],
        [0, 4.9],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    );
    expect(widestInside(hourglass, 10)).toBeCloseTo(2, 4);
    expect(widestInside(hourglass, 6.7)).toBeCloseTo(8, 4);
  });
});
