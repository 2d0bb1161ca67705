import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { bindCurve, curvedAt } from '../../../src/core/cloth/bind-curve.ts';
import { circle } from '../../../src/core/geometry/index.ts';
import { clothAreas, piece, rectangle, value } from '../cloth/works.ts';
import { errors, lengthsOf, sizeOf } from './wrong.ts';
import { attach, freeEdges, layersAt, size } from '../../../src/core/cloth/index.ts';
import { makeUp } from '../../../src/core/project/index.ts';
import { resolved } from '../project/files.ts';
import { runs } from '../../random.ts';
import { tangle } from '../cloth/order.ts';

const bound = (piece: string, strip: string, step: string, edition: 'inch' | 'metric' = 'inch', grain = 'bias') =>
  resolved(
    `title: Mats
units: ${edition}
measures: { seam: { in: 1/4, mm: 6 } }
pieces:
  mat: { ${piece}, allowance: 0 }
  strip: { size: [${strip}], grain: ${grain}, allowance: 0 }
steps:
  - { ${step} }
`,
    { edition },
  );

const MOUTH =
  'outline: [{ at: [0, 0], edge: bottom }, { at: [8, 0], edge: right }, { at: [8, 7], edge: mouth, rise: 3/4, bends: in }, { at: [0, 7], edge: left }]';

describe('a curved edge bound on the bias', () => {
  it('all round a circle takes the way round its stitch line and a seam, and keeps the size', () => {
    // pi x (12 - 2 x 3/8) = 35.343, and 1/4 in at both ends: 35.84, to the next 1/16.
    const pattern = bound('circle: 12', '35 7/8, 1 1/2', 'bind: mat, with: strip, at: all, width: 3/8');
    expect(errors(pattern)).toEqual([]);
    const [step] = makeUp(pattern);
    expect(sizeOf(step!).map((side) => side.toFixed(2))).toEqual(['12.00', '12.00']);
    const [join, seam, row] = lengthsOf(step!);
    expect(join).toBeCloseTo(1.5, 2);
    expect(seam).toBeCloseTo(35.34, 1);
    // 1.5 mm outside the inner fold.
    expect(row).toBeCloseTo(Math.PI * (12 - 2 * (3 / 8 - 1.5 / 25.4)), 1);
    // The mat and four of the strip; four more where its ends are joined.
    expect(step!.layersMost).toBe(9);
    expect(freeEdges(step!.after)).toEqual([]);
    const metric = bound('circle: 300 mm', '892 mm, 40 mm', 'bind: mat, with: strip, at: all, width: 10 mm', 'metric');
    // pi x (300 - 2 x 10) = 879.6, and 6 mm at both ends.
    expect(errors(metric)).toEqual([]);
  });

  it('at the mouth of a pocket ends flush with its sides', () => {
    const pattern = bound(MOUTH, '8 3/16, 1 1/2', 'bind: mat, with: strip, at: mouth, width: 3/8');
    expect(errors(pattern)).toEqual([]);
    const [step] = makeUp(pattern);
    // A rise of 3/4 over 8 is an arc of 11.042; 3/8 further out: 2 x 11.417 x asin(4 / 11.417) = 8.173.
    expect(lengthsOf(step!)[0]).toBeCloseTo(8.173, 2);
    expect(sizeOf(step!)).toEqual([8, 7]);
    expect(step!.layersMost).toBe(5);
  });

  it.each([
    ['on the straight grain', 'circle: 12', '35 7/8, 1 1/2', 'all', '3/8', 'lengthwise', 'not cut on the bias'],
    ['too short a strip', 'circle: 12', '35, 1 1/2', 'all', '3/8', 'bias', 'it is cut ≈ 35 13/16 in'],
    ['too narrow a strip', 'circle: 12', '35 7/8, 1', 'all', '3/8', 'bias', 'has nothing to turn in'],
    ['too tight a curve', 'circle: 2', '5, 1 1/2', 'all', '3/8', 'bias', 'bends so tightly'],
    ['a width below nothing', 'circle: 12', '35 7/8, 1 1/2', 'all', '0', 'bias', 'not a length'],
  ])('is refused: %s', (_, shape, strip, at, width, grain, message) => {
    const step = `bind: mat, with: strip, at: ${at}, width: ${width}`;
    expect(errors(bound(shape, strip, step, 'inch', grain)).join()).toContain(message);
  });

  it('is what a hem along a curve is told to be, with what it would have to lie on', () => {
    const hemmed = bound(MOUTH, '8, 1', 'hem: mat, at: mouth, fold: 1/4, then: 1/2');
    // At the inner fold, 1/4 in: 8.177 long; it would lie 1 1/4 in inside, where the piece is 8.149.
    expect(errors(hemmed).join()).toMatch(
      /The mouth is curved: the edge that is turned in is ≈ 8 3\/16 in long there/u,
    );
    expect(errors(hemmed).join()).toContain('Bind it with a strip on the bias');
  });
});

test('random circles keep their cloth and their size, and have five layers all along their edge', () => {
  const mm = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(mm(80, 300), mm(4, 12), mm(4, 10), (radius, width, seam) => {
      const mat = piece('mat', circle(2 * radius, 'edge'));
      const long = 2 * Math.PI * (radius - width) + 2 * seam;
      const strip = piece('strip', rectangle(long, 4 * width));
      const after = value(bindCurve(mat, strip, curvedAt(mat, ['all'])!, { width, seam, isBias: true }));
      expect(tangle(after)).toBeUndefined();
      const before = { ...clothAreas(mat), ...clothAreas(strip) };
      for (const [name, area] of Object.entries(clothAreas(after))) expect(area / before[name]!).toBeCloseTo(1, 4);
      expect(size(after).width).toBeCloseTo(size(mat).width, 3);
      const { x, y } = mat.plies[0]!.outline[5]!.from;
      const t = 1 - width / 2 / Math.hypot(x, y);
      expect(layersAt(after, { x: x * t, y: y * t }).length).toBeGreaterThanOrEqual(5);
    }),
    runs(60),
  );
});

it('takes no strip with hardware on it, which would hang in the air', () => {
  const mat = piece('mat', circle(200, 'edge'));
  const strip = piece('strip', rectangle(2 * Math.PI * 90 + 12, 40));
  const how = { width: 10, seam: 6, isBias: true };
  expect(bindCurve(mat, strip, curvedAt(mat, ['all'])!, how).ok).toBe(true);
  const snapped = value(attach(strip, { name: 'snap', at: { x: 100, y: 20 } }));
  expect(bindCurve(mat, snapped, curvedAt(mat, ['all'])!, how)).toMatchObject({ ok: false, fault: { code: 'held' } });
});
