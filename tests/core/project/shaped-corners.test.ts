/** Shaped corners take the allowance of the edges they replaced, and the box is what the formulas of its sides say. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { lines, resolved } from './files.ts';
import { length } from '../../../src/core/geometry/index.ts';
import { runs } from '../../random.ts';
import type { Edition } from '../../../src/core/index.ts';
import type { Pattern } from '../../../src/core/project/index.ts';

const wrong = (name: string, edition: Edition): Pattern =>
  resolved(readFileSync(new URL(`../../fixtures/wrong/${name}.yaml`, import.meta.url), 'utf8'), { edition });

const sizeIn = (pattern: Pattern, piece: string): number[] => {
  const { width, height } = pattern.pieces[piece]!.size;
  return [width / 25.4, height / 25.4];
};

/** The box round each cut line, against what formulas read for the same piece. */
function expectBoxes({ pieces, measures, findings }: Pattern): void {
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  for (const { name, size, sewn } of Object.values(pieces)) {
    expect(size.width, `${name} width`).toBeCloseTo(measures[`${name} width`]!.value, 6);
    expect(size.height, `${name} height`).toBeCloseTo(measures[`${name} height`]!.value, 6);
    expect(sewn.width, `${name} finished width`).toBeCloseTo(measures[`${name} finished width`]!.value, 6);
    expect(sewn.height, `${name} finished height`).toBeCloseTo(measures[`${name} finished height`]!.value, 6);
  }
}

describe('a piece whose corners use up its edges', () => {
  it('has the allowance of the edges that are gone', () => {
    const pattern = wrong('circle-loses-allowance', 'inch');
    expect(sizeIn(pattern, 'circle')).toEqual([expect.closeTo(6.5, 9), expect.closeTo(6.5, 9)]);
    expect(sizeIn(pattern, 'half round')).toEqual([expect.closeTo(6.5, 9), expect.closeTo(4.25, 9)]);
    expect(sizeIn(pattern, 'circle interfacing')).toEqual([expect.closeTo(6, 9), expect.closeTo(6, 9)]);
    for (const edition of ['inch', 'metric'] as const) expectBoxes(wrong('circle-loses-allowance', edition));
    // A circle of 3 in on the stitch line, 3 1/4 in on the cut line: 2 pi r.
    const { circle } = pattern.pieces;
    expect(length(circle!.outline)).toBeCloseTo(2 * Math.PI * 3 * 25.4, 6);
    expect(length(circle!.cutOutline)).toBeCloseTo(2 * Math.PI * 3.25 * 25.4, 6);
  });

  it.each([
    ['bottom left, bottom right', 'top: 1, others: 1/4', [6, 3], 3],
    ['top left, top right', 'bottom: 1, others: 1/4', [6, 3], 3],
    ['top left, bottom left', 'right: 1, others: 1/4', [3, 6], 3],
    ['top right, bottom right', 'left: 1, others: 1/4', [3, 6], 3],
    ['top right', 'left: 1, others: 1/4', [3, 3], 3],
    ['bottom left, bottom right', 'bottom: 1, others: 1/4', [6, 3], 3],
    ['bottom left, bottom right', 'left: 1, others: 1/4', [6, 3], 3],
    ['bottom left, bottom right, top left, top right', 'left: 0, others: 1/2', [6, 6], 3],
    ['bottom left', 'left: 1/4, others: 1', [6, 3], 1],
  ])('%s with %s', (at, allowance, [w, h], round) => {
    for (const edition of ['inch', 'metric'] as const) {
      const pattern = resolved(
        `title: T\nmeasures: { inner: { in: 1/8, mm: 3 } }\npieces:\n` +
          `  shape: { finished: [${w}, ${h}], corners: { at: [${at}], round: ${round} }, allowance: { ${allowance} } }\n` +
          `  stay: { like: shape, inset: { left: 1/2, top: 3/8, others: 1/4 } }\n` +
          `  own: { like: shape, inset: 1/8, allowance: { left: 1/2, others: inner } }\n`,
        { edition },
      );
      expectBoxes(pattern);
    }
  });

  it('is as wide as its outline where an inset ends below the widest place, and has no sum that says otherwise', () => {
    const { pieces, measures } = resolved(
      'title: T\nmeasures: {}\npieces:\n' +
        '  pocket: { finished: [6, 3], corners: { at: [bottom left, bottom right], round: 3 }, allowance: 1/4 }\n' +
        '  stay: { like: pocket, inset: { top: 1 1/4, others: 1/4 } }\n' +
        '  whole: { like: pocket, inset: 1/4 }\n',
    );
    // A circle of 3 in, one inch below its middle: 2 root (3 x 3 - 1).
    expect(pieces['stay']!.size.width / 25.4).toBeCloseTo(2 * Math.sqrt(8), 6);
    expect(measures['stay width']!.value).toBeCloseTo(pieces['stay']!.size.width, 9);
    expect(measures['stay width']!.formula).toBeUndefined();
    expect(measures['whole width']!.value / 25.4).toBeCloseTo(6, 9);
    expect(measures['whole width']!.formula?.text).toBe('pocket width - 2 * 1/4 in');
  });

  it('has no corners of its own where it is like another', () => {
    const { findings } = resolved(
      'title: T\nmeasures: {}\npieces: { a: { size: [4, 4] }, b: { like: a, corners: { round: 1 } } }\n',
    );
    expect(lines(findings)).toEqual([
      'error pieces > b > corners: corners-of-like: “b” takes its corners from “a”. Shape the corners of “a”, or give “b” a size of its own.',
    ]);
  });

  it('of any radius and allowance has the box that its formulas say', () => {
    const eighths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 8);
    const corner = fc.constantFrom('bottom left', 'bottom right', 'top left', 'top right');
    const sides = fc.record({ left: eighths(0, 8), right: eighths(0, 8), top: eighths(0, 8), bottom: eighths(0, 8) });
    const kind = fc.constantFrom('round', 'cut off');
    const all = fc.tuple(fc.uniqueArray(corner, { minLength: 1 }), eighths(1, 24), sides, sides, kind);
    fc.assert(
      fc.property(all, ([at, size, allowance, inset, how]) => {
        const said = (edges: object) =>
          `{ ${Object.entries(edges)
            .map(([edge, by]) => `${edge}: ${by} in`)
            .join(', ')} }`;
        expectBoxes(
          resolved(
            `title: T\nmeasures: {}\npieces:\n` +
              `  shape: { finished: [6, 6], corners: { at: [${at.join(', ')}], ${how}: ${size} in }, allowance: ${said(allowance)} }\n` +
              `  stay: { like: shape, inset: ${said(inset)} }\n`,
          ),
        );
      }),
      runs(200),
    );
  });
});

describe('a piece that is set into an outline', () => {
  it('has no sum that takes its inset off a slanting side as if it were upright', () => {
    const { pieces, measures } = resolved(
      'title: T\nmeasures: {}\npieces:\n' +
        '  pennant: { outline: [[0 in, 0 in], [6 in, 0 in], [3 in, 4 in]] }\n' +
        '  stay: { like: pennant, inset: 1/4 }\n',
    );
    // The inset triangle is the first one made smaller about its incentre, by (r - 1/4) / r with r = area / half round = 12 / 8.
    const { width, height } = pieces['stay']!.size;
    expect(width / 25.4).toBeCloseTo((6 * (1.5 - 0.25)) / 1.5, 6);
    expect(height / 25.4).toBeCloseTo((4 * (1.5 - 0.25)) / 1.5, 6);
    expect(measures['stay width']!.value).toBeCloseTo(width, 9);
    expect(measures['stay width']!.formula).toBeUndefined();
  });
});

describe('a notch on a curve', () => {
  it('lies on the curve, by share of its length', () => {
    for (const edition of ['inch', 'metric'] as const) {
      const { flap } = wrong('notch-on-curve', edition).pieces;
      const { at } = flap!.notches[0]!;
      const seam = edition === 'inch' ? 6.35 : 6;
      const radius = (edition === 'inch' ? 50.8 : 51) + seam;
      const [x, y] = [flap!.size.width - radius, flap!.size.height - radius];
      expect(Math.hypot(at.x - x, at.y - y)).toBeCloseTo(radius, 6);
      expect(at.x - x).toBeCloseTo(at.y - y, 6);
    }
  });

  it.each([
    ['top-right corner', [1, 0], [0, 1]],
    ['top-left corner', [-1, 0], [0, 1]],
    ['bottom-left corner', [-1, 0], [0, -1]],
    ['bottom-right corner', [1, 0], [0, -1]],
  ])('is measured along the curve: %s', (corner, across, up) => {
    const flap = (at: string) =>
      resolved(
        `title: T\nmeasures: {}\npieces: { flap: { size: [8, 5], corners: { round: 2 }, notches: [{ on: ${corner}, at: ${at} }] } }`,
      );
    // A third of a quarter turn from the left or lower end: 2 in times pi / 6.
    const { pieces } = flap(`${(2 * Math.PI) / 6} in`);
    const { x, y } = pieces['flap']!.notches[0]!.at;
    const centre = { x: across[0]! > 0 ? 6 : 2, y: up[1]! > 0 ? 3 : 2 };
    const [dx, dy] = [x / 25.4 - centre.x, y / 25.4 - centre.y];
    expect(Math.hypot(dx, dy)).toBeCloseTo(2, 4);
    expect(Math.min(Math.abs(dx), Math.abs(dy)) / 2).toBeCloseTo(Math.sin(Math.PI / 6), 4);
    // The curve is as long as pi says; a notch beyond it is refused with that length and not with the chord's.
    expect(flap('3 1/8').findings).toEqual([]);
    expect(flap('3 3/16').findings.map(({ code, message }) => [code, message])).toEqual([
      ['off-the-edge', `The ${corner} edge of “flap” is only ≈ 3 1/8 in long.`],
    ]);
  });
});
