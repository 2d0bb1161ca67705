import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { boxesOf, errors, lastOf, rowsOf, sizeOf } from './wrong.ts';
import { foldInFour } from '../../../src/core/cloth/fold-in-four.ts';
import { layerMap, size } from '../../../src/core/cloth/index.ts';
import { clothAreas, piece, rectangle, value } from '../cloth/works.ts';
import { ledger } from '../project/steps.ts';
import { resolved } from '../project/files.ts';
import { runs } from '../../random.ts';
import { tangle } from '../cloth/order.ts';

const strip = (size: string, steps: string, edition: 'inch' | 'metric' = 'inch', more = '') =>
  resolved(
    `title: Straps\nmeasures: { seam: { in: 1/2, mm: 12 } }\nmaterials: { outer: canvas }\n` +
      `pieces:\n  strap: { from: outer, size: ${size}, allowance: 0${more} }\nsteps:\n${steps}`,
    { edition, materials: { canvas: { kind: 'cloth' } } },
  );

describe('a strap folded in four', () => {
  it('is a quarter as wide, right side out, with all of its raw edges but the ends inside', () => {
    const step = lastOf(strip('[4, 22]', '  - { fold in four: strap, edgestitch: both sides }'));
    expect(sizeOf(step)).toEqual([1, 22]);
    expect(step.layersMost).toBe(4);
    // From 2 to 3 in of the cut strip: its fold at the left, and at the right what opens.
    expect(boxesOf(step.after, 'strap')).toEqual([
      '2 0 3 22 wrong',
      '2 0 3 22 right',
      '2 0 3 22 wrong',
      '2 0 3 22 right',
    ]);
    // Rows of 1/16 in, through all four layers.
    expect(rowsOf(step)).toEqual(['2.937,22 to 2.937,0, 4 layers', '2.063,22 to 2.063,0, 4 layers']);
    expect(step.title).toBe('Fold the strap in four, and sew along both sides');
    expect(step.tools).toEqual(['iron', 'ruler', 'sewing machine']);
    const metric = lastOf(strip('[100 mm, 560 mm]', '  - { fold in four: strap, edgestitch: open side }', 'metric'));
    expect([metric.size.width, metric.size.height, metric.stitches.length]).toEqual([25, 560, 1]);
  });

  it('lies the other way where it is cut so, and folds as it is told', () => {
    expect(sizeOf(lastOf(strip('[22, 4]', '  - { fold in four: strap }')))).toEqual([22, 1]);
    // A tab of 4 x 1 1/4 in that goes over the end of a zip is folded across its length.
    expect(sizeOf(lastOf(strip('[4, 1 1/4]', '  - { fold in four: strap, from: left }')))).toEqual([1, 1.25]);
  });

  it('has its wrong side inside also where it lies wrong side up', () => {
    const step = lastOf(strip('[4, 22]', '  - { turn over: strap }\n  - { fold in four: strap }'));
    const faces = step.after.plies.map(({ face }) => face);
    expect([faces[0], faces.at(-1)]).toEqual(['wrong', 'right']);
  });

  it('has ends that were turned in first, both or one of them', () => {
    const both = lastOf(strip('[30, 2]', '  - { fold in four: strap, ends in: 3/8 }'));
    expect(sizeOf(both)).toEqual([29.25, 0.5]);
    // The end and what is turned in there lie in each of the four.
    expect(both.layersMost).toBe(8);
    expect(both.title).toBe('Fold the strap in four, its ends turned in first');
    const one = lastOf(strip('[30, 2]', '  - { fold in four: strap, ends in: 3/8, at: right, edgestitch: open side }'));
    expect(sizeOf(one)).toEqual([29.625, 0.5]);
    expect(one.title).toBe('Fold the strap in four, the right end turned in first, and sew along the open side');
    expect(
      layerMap(one.after)
        .map(({ plies }) => plies.length)
        .toSorted(),
    ).toEqual([4, 8]);
  });

  it('is done to all that are alike, and folds what is fused to it', () => {
    const pair = strip('[4, 22]', '  - { fold in four: strap }', 'inch', ', cut: 2');
    expect(lastOf(pair)).toMatchObject({ times: 2, title: 'Fold both straps in four' });
    const fused = ledger(`title: Straps
units: metric
measures: { seam: { mm: 6, in: 1/4 } }
materials: { outer: canvas, stay: fusible }
pieces:
  strap: { from: outer, size: [100 mm, 500 mm], allowance: 0 }
  stay: { from: stay, size: [50 mm, 500 mm] }
steps:
  - { fuse: stay, to: strap }
  - { fold in four: strap }
`);
    expect(fused[1]).toBe('Fold the strap in four -> strap 25 x 500');
  });

  it.each([
    ['[4, 4]', '', 'one-edge: It is as wide as it is high: which of its sides come to the middle is not said.'],
    [
      '[30, 2]',
      ', ends in: 12',
      'too-deep: So much is turned in at its ends that it would not lie flat on what is left.',
    ],
    ['[30, 2]', ', ends in: 3/8, at: top', 'one-edge: The top is a long side, which comes to the middle, and no end.'],
    ['[30, 2]', ', at: right', 'one-edge: How much is turned in there is not said.'],
    [
      '[30, 3/16]',
      ', edgestitch: open side',
      'too-deep: Folded in four it is ≈ 1/16 in wide, too narrow for its rows.',
    ],
  ])('is refused: %s%s', (size, said, message) => {
    expect(errors(strip(size, `  - { fold in four: strap${said} }`)).join()).toContain(message);
  });

  it('is refused where its sides run together', () => {
    const tapered = resolved(`title: Tie
measures: { seam: 1/2 }
pieces: { tie: { outline: [[0, 0], [20, 0], [20, 2], [0, 3]], allowance: 0 } }
steps: [{ fold in four: tie }]`);
    expect(errors(tapered).join()).toContain('shapes-differ');
  });
});

test('of random strips it keeps the cloth, and comes to a quarter of their width less what is turned in at the ends', () => {
  const mm = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(mm(20, 150), mm(200, 900), mm(3, 30), fc.boolean(), (wide, long, turned, isUpright) => {
      const cut = piece('strap', isUpright ? rectangle(wide, long) : rectangle(long, wide));
      const folded = value(foldInFour(cut, { inside: 1, ends: { in: turned }, edgestitch: 'both sides' }));
      expect(tangle(folded)).toBeUndefined();
      expect(clothAreas(folded)['strap']).toBeCloseTo(wide * long, 3);
      const { width, height } = size(folded);
      expect(isUpright ? width : height).toBeCloseTo(wide / 4, 6);
      expect(isUpright ? height : width).toBeCloseTo(long - 2 * turned, 6);
    }),
    runs(200),
  );
});
