import fc from 'fast-check';
import { areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import {
  area,
  clip,
  contains,
  length,
  polygon,
  rectangle,
  rotate,
  sample,
  sides,
  withCorners,
} from '../../../src/core/geometry/index.ts';
import { runs } from '../../random.ts';
import { simplePolygon, value } from './shapes.ts';
import type { Line, Outline } from '../../../src/core/geometry/index.ts';

const total = (outlines: Outline[]) => outlines.reduce((sum, outline) => sum + area(outline), 0);
const names = (outline: Outline) => outline.map((edge) => edge.name);

const line: fc.Arbitrary<Line> = fc.record({
  at: fc.record({ x: fc.integer({ min: 0, max: 200 }), y: fc.integer({ min: 0, max: 200 }) }),
  angle: fc.integer({ min: -180, max: 360 }),
});

/** A polygon, every other time with its corners rounded as far as they have room. */
const shape = fc.tuple(simplePolygon(), fc.integer({ min: 0, max: 20 })).map(([outline, radius]) => {
  const rounded = withCorners(outline, { rounded: radius });
  return rounded.ok ? rounded.value : outline;
});

describe('cutting along a line', () => {
  test('loses and gains nothing, whichever way the line runs', () => {
    fc.assert(
      fc.property(shape, line, (outline, knife) => {
        const { left, right } = clip(outline, knife);
        expect(total(left) + total(right)).toBeCloseTo(area(outline), 5);
        const back = clip(outline, { at: knife.at, angle: knife.angle + 180 });
        expect(total(back.left)).toBeCloseTo(total(right), 5);
        expect(back.left.length).toBe(right.length);
        for (const piece of [...left, ...right]) expect(area(piece)).toBeGreaterThan(0);
      }),
      runs(3000),
    );
  });
  test('agrees with the clipping library, and cuts as many pieces', () => {
    fc.assert(
      fc.property(simplePolygon(), line, (outline, knife) => {
        const half = rotate(rectangle(2000, 1000, { x: knife.at.x - 1000, y: knife.at.y }), knife.angle, knife.at);
        const theirs = intersectD(
          [sample(outline, 1).map((p) => ({ ...p }))],
          [sample(half, 1).map((p) => ({ ...p }))],
          FillRule.NonZero,
          6,
        );
        const ours = clip(outline, knife).left;
        expect(Math.abs(total(ours) - areaPathsD(theirs))).toBeLessThan(0.01);
      }),
      runs(2000),
    );
  });
  test('old edges keep their lengths between the two halves', () => {
    fc.assert(
      fc.property(shape, line, (outline, knife) => {
        const { left, right } = clip(outline, knife);
        const parts = [...left, ...right];
        for (const name of new Set(names(outline))) {
          const now = parts.reduce((sum, piece) => sum + length(piece, name), 0);
          expect(Math.abs(now - length(outline, name))).toBeLessThan(1e-4);
        }
        const cut = (pieces: Outline[]) => pieces.reduce((sum, piece) => sum + length(piece, 'cut'), 0);
        if (!onTheLine(outline, knife)) expect(cut(left)).toBeCloseTo(cut(right), 5);
      }),
      runs(1000),
    );
  });
  test('an edge on the line keeps its name', () => {
    const { left, right } = clip(rectangle(20, 10), { at: { x: 0, y: 0 }, angle: 0 });
    expect(left.map(names)).toEqual([['bottom', 'right', 'top', 'left']]);
    expect(right).toEqual([]);
    const notched = polygon([
      { x: 0, y: 0 },
      { x: 20, y: 0 },
      { x: 20, y: 10 },
      { x: 12, y: 10 },
      { x: 12, y: 5 },
      { x: 0, y: 5 },
    ]);
    const above = clip(notched, { at: { x: 0, y: 5 }, angle: 0 });
    expect(above.left.map((piece) => area(piece))).toEqual([40]);
    // Below, the ring closes along the cut and then along the old edge 5.
    expect(above.right.map((piece) => length(piece, 'edge 5'))).toEqual([12]);
    expect(above.right.map((piece) => length(piece, 'cut'))).toEqual([8]);
  });
  test('a comb falls into its teeth', () => {
    const comb = polygon(
      [0, 1, 2, 3]
        .flatMap((i) => [
          { x: 10 * i, y: 20 },
          { x: 10 * i + 2, y: 0 },
          { x: 10 * i + 8, y: 0 },
        ])
        .concat([
          { x: 40, y: 20 },
          { x: 40, y: 30 },
          { x: 0, y: 30 },
        ]),
    );
    const { left, right } = clip(comb, { at: { x: 0, y: 10 }, angle: 0 });
    expect(right.length).toBe(4);
    expect(left.length).toBe(1);
  });
});

const onTheLine = (outline: Outline, { at, angle }: Line): boolean => {
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  const off = (p: { x: number; y: number }) => Math.abs(cos * (p.y - at.y) - sin * (p.x - at.x)) < 1e-4;
  return sides(outline).some((side) => off(side.from) && off(side.to));
};

test('a point is inside a curved outline when it is inside its chords', () => {
  const stadium = value(withCorners(rectangle(200, 100), { rounded: 50 }));
  const bitten: Outline = stadium.map((edge) => (edge.name === 'top' ? { ...edge, bulge: -0.4 } : edge));
  const chords = polygon(sample(bitten, 0.001));
  let differ = 0;
  fc.assert(
    fc.property(fc.integer({ min: -10, max: 2100 }), fc.integer({ min: -10, max: 1300 }), (x, y) => {
      const point = { x: x / 10, y: y / 10 };
      if (contains(bitten, point) !== contains(chords, point)) differ++;
    }),
    runs(5000),
  );
  // Chords and arcs lie at most 0.001 mm apart, so that a point of a 0.1 mm grid hardly ever falls between them
  // (fast-check likes to repeat such a point).
  expect(differ).toBeLessThan(50);
});
