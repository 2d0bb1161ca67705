/** Hems, mitres, boxed corners, seams and tucks as the cloth makes them, against printed examples. */
import { describe, expect, test } from 'vitest';
import {
  boxCorner,
  cut,
  frenchSeam,
  hem,
  join,
  lay,
  pleat,
  sewRound,
  size,
  trim,
  tuck,
  turn,
  type Work,
} from '../../src/core/cloth/index.ts';
import { rectangle } from '../../src/core/geometry/index.ts';
import { value } from '../core/geometry/shapes.ts';

const inch = 25.4;
const sides = ['bottom', 'right', 'top', 'left'];

const cloth = (width: number, height: number, piece = 'cloth'): Work =>
  value(cut({ piece, material: 'linen', outline: rectangle(width, height) }));

const flat = (work: Work) => {
  const { width, height } = size(work);
  return [width, height];
};
const close = (found: number[], wanted: number[]) => found.forEach((one, i) => expect(one).toBeCloseTo(wanted[i]!, 6));

describe('mitred napkins', () => {
  test('11 in cut, 1/4 in turned and a hem of 3/4 in, finish at 9 in (napkin page, 1 in for each edge)', () => {
    const napkin = hem(cloth(11 * inch, 11 * inch), {
      edges: sides,
      turn: inch / 4,
      then: (3 * inch) / 4,
      corners: 'mitred',
    });
    close(flat(value(napkin)), [9 * inch, 9 * inch]);
  });

  test('45 cm cut, 2.5 cm for each edge, finish at 40 cm', () => {
    close(flat(value(hem(cloth(450, 450), { edges: sides, turn: 5, then: 20, corners: 'mitred' }))), [400, 400]);
  });

  test('36 cm cut, folds of 1 and 2 cm, finish at 30 cm, square or mitred', () => {
    for (const corners of ['square', 'mitred'] as const)
      close(flat(value(hem(cloth(360, 360), { edges: sides, turn: 10, then: 20, corners }))), [300, 300]);
  });
});

describe('boxed corners', () => {
  const boxed = (bag: Work, square: number, from: 'seam' | 'raw edge', allowance = 0): Work =>
    ['bottom left', 'bottom right'].reduce(
      (work, corner) => value(boxCorner(work, { corner: corner as 'bottom left', square, from, allowance })),
      bag,
    );

  const bag = (width: number, height: number): Work =>
    value(lay(cloth(width, height, 'front'), cloth(width, height, 'back')));

  test('a square of 2 in from the seam lines makes a 19 x 16 in bag 15 wide, 14 high, 4 deep (Lazy Girl Designs)', () => {
    const { width, height, depth } = size(boxed(bag(19 * inch, 16 * inch), 2 * inch, 'seam'));
    close([width, height, depth], [15 * inch, 14 * inch, 4 * inch]);
  });

  test('a square of 1 1/2 in from the raw edges, with seams of 1/2 in, is 2 in deep (Best Fabric Store)', () => {
    expect(size(boxed(bag(12 * inch, 10 * inch), 1.5 * inch, 'raw edge', inch / 2)).depth).toBeCloseTo(2 * inch, 6);
  });

  test('it comes to the same whether a bag is boxed before it is turned or after', () => {
    const pair = value(sewRound(cloth(260, 160, 'front'), cloth(260, 160, 'back'), { allowance: 10, open: ['top'] }));
    const before = size(value(turn(boxed(pair, 30, 'seam', 10))));
    const after = size(boxed(value(turn(pair)), 30, 'seam'));
    close([before.width, before.height, before.depth], [after.width, after.height, after.depth]);
    close([after.width, after.depth], [180, 60]);
  });
});

describe('seams', () => {
  test('1 3/4 x 2 and 1 3/4 x 3 in, joined with 1/4 in, are 1 3/4 x 4 1/2 in (belindastitches weblog, 29 May 2014)', () => {
    const layers = [
      { work: cloth(1.75 * inch, 2 * inch, 'small'), edge: 'top' },
      { work: cloth(1.75 * inch, 3 * inch, 'large'), edge: 'bottom' },
    ];
    for (const press of ['open', 'to first', 'to second'] as const)
      close(flat(value(join(layers, { allowance: inch / 4, press }))), [1.75 * inch, 4.5 * inch]);
  });

  test('a French seam of 3/8 and 1/4 in takes 5/8 in from each side (Oklahoma Cooperative Extension, 4-H Card 810)', () => {
    const seam = frenchSeam(cloth(200, 100, 'a'), cloth(150, 100, 'b'), {
      edges: ['right', 'left'],
      first: (3 * inch) / 8,
      trimTo: inch / 8,
      second: inch / 4,
    });
    // The 5/8 in are the sum of the printed passes.
    expect(size(value(seam)).width).toBeCloseTo(350 - 2 * (5 / 8) * inch, 6);
  });
});

describe('pleats and tucks', () => {
  test('20 knife pleats of 2.5 cm bring 150 cm to 50 cm (NIMI Dress Making p. 204, pattern width 3 : 1)', () => {
    // Each pleat takes two widths and shows one: fold, and back again, every 7.5 cm.
    const folds = Array.from({ length: 20 }, (_, i) => [
      { at: 75 * i + 25, kind: 'mountain' as const },
      { at: 75 * i + 50, kind: 'valley' as const },
    ]).flat();
    const pleated = value(pleat(cloth(100, 1500), { from: 'bottom', folds }));
    expect(size(pleated).height).toBeCloseTo(500, 6);
  });

  test('a tuck takes twice its depth', () => {
    // Common practice, no source: the cloth goes up to the fold and down again.
    const tucked = value(tuck(cloth(100, 300), { from: 'top', at: 100, depth: 12 }));
    expect(size(tucked).height).toBeCloseTo(300 - 24, 6);
  });

  test('what is trimmed to a size has it', () => {
    close(flat(value(trim(cloth(100, 300), { size: { width: 80, height: 200 } }))), [80, 200]);
  });
});
