import fc from 'fast-check';
import { areaPathsD, differenceD, EndType, FillRule, inflatePathsD, JoinType, unionD, xorD } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { runs } from '../random.ts';
import { addAllowance, length, rotate, sample, withCorners } from '../../src/core/geometry/index.ts';
import { simplePolygon } from '../core/geometry/shapes.ts';
import type { Corner, Outline } from '../../src/core/geometry/index.ts';

// Second opinion: the TypeScript port of the Clipper2 polygon library (A. Johnson), clipper2-ts, wherever all edges
// share one allowance. Its miter limit and its square join are our mitre limit and our blunted corner.
const joins = { mitred: JoinType.Miter, blunted: JoinType.Square, rounded: JoinType.Round };

/** How far chords may leave arcs, in mm, on both sides. */
const CHORD = 0.005;

const rings = (outline: Outline) => [sample(outline, CHORD).map(({ x, y }) => ({ x, y }))];

/** The library's rings, without slips of its arithmetic. */
function byLibrary(outline: Outline, allowance: number, shape: Corner['shape']) {
  const theirs = inflatePathsD(rings(outline), allowance, joins[shape], EndType.Polygon, 4, 6, CHORD);
  return theirs.filter((ring) => Math.abs(areaPathsD([ring])) > 0.001);
}

// Turned by an odd angle: the library's square join loses digits (up to millimetres) when its cut is all but upright.
const turnedPolygon = fc
  .tuple(simplePolygon(), fc.integer({ min: 0, max: 359 }))
  .map(([outline, degrees]) => rotate(outline, degrees + 0.123));

describe.each(['mitred', 'blunted', 'rounded'] as const)('one allowance on all edges, %s corners', (shape) => {
  test.each([
    ['outward', 1],
    ['inward', -1],
  ])('%s agrees with the clipping library', (_way, sign) => {
    let whole = 0;
    let faults = 0;
    fc.assert(
      fc.property(turnedPolygon, fc.double({ min: 0.5, max: 40, noNaN: true }), (outline, size) => {
        const allowance = sign * size;
        const theirs = byLibrary(outline, allowance, shape);
        // Just where a part vanishes or an opening closes, a thousandth of the allowance decides: no opinion there.
        fc.pre([0.999, 1.001].every((f) => byLibrary(outline, f * allowance, shape).length === theirs.length));
        const ours = addAllowance(outline, allowance, { shape });
        if (!ours.ok) {
          faults++;
          const expected = theirs.length === 0 ? 'nothing-left' : sign < 0 ? 'falls-apart' : 'closes-up';
          expect(ours.fault.code).toBe(expected);
          expect(theirs.length).not.toBe(1);
          return;
        }
        whole++;
        const apart = areaPathsD(xorD(rings(ours.value), theirs, FillRule.NonZero, 6));
        expect(Math.abs(apart)).toBeLessThan(4 * CHORD * length(ours.value) + 0.05);
        expect(theirs.length).toBe(1);
      }),
      runs(1500),
    );
    expect(whole).toBeGreaterThan(300);
    expect(faults).toBeGreaterThan(0);
  });
});

describe('curved outlines', () => {
  test.each([
    ['outward', 1],
    ['inward', -1],
  ])('%s agrees with the clipping library on chords of the same arcs', (_way, sign) => {
    let held = 0;
    let vanished = 0;
    fc.assert(
      fc.property(
        turnedPolygon,
        fc.double({ min: 1, max: 30, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        (outline, radius, size) => {
          const rounded = withCorners(outline, { rounded: radius });
          fc.pre(rounded.ok);
          const allowance = sign * size;
          const theirs = byLibrary(rounded.value, allowance, 'rounded');
          fc.pre(
            [0.99, 1.01].every((f) => byLibrary(rounded.value, f * allowance, 'rounded').length === theirs.length),
          );
          const ours = addAllowance(rounded.value, allowance, { shape: 'rounded' });
          if (!ours.ok) {
            vanished++;
            expect(theirs.length).not.toBe(1);
            return;
          }
          held++;
          expect(theirs.length).toBe(1);
          const apart = areaPathsD(xorD(rings(ours.value), theirs, FillRule.NonZero, 6));
          // Both replace arcs by chords, the library twice over.
          expect(Math.abs(apart)).toBeLessThan(4 * CHORD * length(ours.value) + 0.05);
        },
      ),
      runs(400),
    );
    expect(held).toBeGreaterThan(100);
    expect(vanished + held).toBeGreaterThan(200);
  });
});

test('the library agrees that ours stays inside what rounded corners reach', () => {
  fc.assert(
    fc.property(simplePolygon(), fc.double({ min: 0.5, max: 20, noNaN: true }), (outline, size) => {
      const round = addAllowance(outline, size, { shape: 'rounded' });
      const mitred = addAllowance(outline, size, { shape: 'mitred' });
      if (!round.ok || !mitred.ok) return;
      const outside = differenceD(rings(round.value), rings(mitred.value), FillRule.NonZero, 6);
      expect(areaPathsD(unionD(outside, FillRule.NonZero))).toBeLessThan(1);
    }),
    runs(300),
  );
});
