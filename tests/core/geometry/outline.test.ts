import { describe, expect, test } from 'vitest';
import {
  addAllowance,
  area,
  bounds,
  clip,
  contains,
  cornerNames,
  length,
  polygon,
  rectangle,
  reflect,
  rotate,
  sample,
  translate,
  withCorners,
} from '../../../src/core/geometry/index.ts';

const box = rectangle(100, 50);

describe('rectangle and polygon', () => {
  test('a rectangle has its four named edges, counter-clockwise', () => {
    expect(box.map((edge) => edge.name)).toEqual(['bottom', 'right', 'top', 'left']);
    expect(area(box)).toBe(5000);
    expect(length(box)).toBe(300);
    expect(length(box, 'top')).toBe(100);
    expect(cornerNames(box)).toEqual([
      'bottom-left corner',
      'bottom-right corner',
      'top-right corner',
      'top-left corner',
    ]);
  });
  test('points given clockwise are turned round with their names', () => {
    const triangle = polygon(
      [
        { x: 0, y: 0 },
        { x: 0, y: 3 },
        { x: 4, y: 0 },
      ],
      ['side', 'slope', 'hem'],
    );
    expect(area(triangle)).toBe(6);
    expect(length(triangle, 'hem')).toBe(4);
    expect(length(triangle, 'side')).toBe(3);
    expect(length(triangle, 'slope')).toBe(5);
  });
});

describe('arcs', () => {
  test('a rectangle with corners rounded to its half width is a stadium', () => {
    const stadium = withCorners(box, { rounded: 25 });
    if (!stadium.ok) throw new Error(stadium.fault.message);
    expect(area(stadium.value)).toBeCloseTo(50 * 50 + Math.PI * 625, 9);
    expect(length(stadium.value)).toBeCloseTo(100 + Math.PI * 50, 9);
    expect(bounds(stadium.value)).toEqual({ x: 0, y: 0, width: 100, height: 50 });
    expect(contains(stadium.value, { x: 1, y: 1 })).toBe(false);
    expect(contains(stadium.value, { x: 8, y: 8 })).toBe(true);
    const chords = polygon(sample(stadium.value, 0.01));
    expect(area(chords)).toBeLessThan(area(stadium.value));
    expect(area(chords)).toBeGreaterThan(area(stadium.value) - 0.01 * Math.PI * 50);
  });
});

describe('allowance', () => {
  test('rounded corners stay round and concentric', () => {
    const rounded = withCorners(box, { 'top-right': { rounded: 10 } });
    if (!rounded.ok) throw new Error(rounded.fault.message);
    const cut = addAllowance(rounded.value, 6);
    if (!cut.ok) throw new Error(cut.fault.message);
    expect(cut.value.map((edge) => edge.name)).toEqual(['bottom', 'right', 'top-right corner', 'top', 'left']);
    expect(length(cut.value, 'top-right corner')).toBeCloseTo((Math.PI / 2) * 16, 9);
    expect(bounds(cut.value)).toEqual({ x: -6, y: -6, width: 112, height: 62 });
  });
  test('each edge has its own', () => {
    const cut = addAllowance(box, { top: 25, left: 5 });
    if (!cut.ok) throw new Error(cut.fault.message);
    expect(bounds(cut.value)).toEqual({ x: -5, y: 0, width: 105, height: 75 });
  });
});

describe('moves and cuts', () => {
  test('mirroring keeps the ring counter-clockwise and the names on their edges', () => {
    const mirrored = reflect(box, { at: { x: 0, y: 0 }, angle: 90 });
    expect(area(mirrored)).toBe(5000);
    expect(bounds(mirrored)).toEqual({ x: -100, y: 0, width: 100, height: 50 });
    const top = mirrored.find((edge) => edge.name === 'top');
    expect(top?.from.y).toBe(50);
  });
  test('turning and moving keep sizes', () => {
    expect(bounds(rotate(box, 90))).toEqual({ x: -50, y: 0, width: 50, height: 100 });
    expect(bounds(translate(box, { x: 3, y: 4 }))).toEqual({ x: 3, y: 4, width: 100, height: 50 });
  });
  test('a cut gives both parts their edges', () => {
    const { left, right } = clip(box, { at: { x: 0, y: 20 }, angle: 0 });
    expect(left.map((ring) => bounds(ring))).toEqual([{ x: 0, y: 20, width: 100, height: 30 }]);
    expect(right.map((ring) => bounds(ring))).toEqual([{ x: 0, y: 0, width: 100, height: 20 }]);
    expect(left[0]!.map((edge) => edge.name).sort()).toEqual(['cut', 'left', 'right', 'top']);
  });
});
