/** Cloth as people write it down, and what is laid on it. */
import { describe, expect, test } from 'vitest';
import { layOutAtOnce, startOf } from '../../../components/compute/cutting.ts';
import { readOwnCloth } from '../../../components/words/layout-study/own-cloth.ts';
import { resolved } from '../../core/project/files.ts';
import type { MaterialsFile } from '../../../src/core/index.ts';
import type { LayoutRequest, OwnClothText } from '../../../components/compute/cutting-types.ts';

const inch = 25.4;
const read = (text: string, goesOn = false, edition: 'inch' | 'metric' = 'inch') =>
  readOwnCloth(text, { edition, goesOn });

describe('a line is read as it is meant', () => {
  test.each<[string, number, number, number]>([
    ['18 x 22', 18 * inch, 22 * inch, 1],
    ['18x22', 18 * inch, 22 * inch, 1],
    ['2 of 18 × 22 in', 18 * inch, 22 * inch, 2],
    ['3 pieces of 10 by 12', 10 * inch, 12 * inch, 3],
    ['18 1/2 x 22"', 18.5 * inch, 22 * inch, 1],
    ['½ x 3½ in', 0.5 * inch, 3.5 * inch, 1],
    // The unit at the end is meant for both; one beside each holds for itself.
    ['46 x 56 cm', 460, 560, 1],
    ['460mm × 0.5 m', 460, 500, 1],
    ['1/2 yd by 42 in', 18 * inch, 42 * inch, 1],
    ['18 in x 56 cm', 18 * inch, 560, 1],
    ['4 FT X 1 YD', 48 * inch, 36 * inch, 1],
  ])('%s', (text, width, length, count) => {
    const { cloths, faults } = read(text);
    expect(faults).toEqual([]);
    expect(cloths).toHaveLength(1);
    expect(cloths[0]!.width).toBeCloseTo(width, 6);
    expect(cloths[0]!.length).toBeCloseTo(length, 6);
    expect(cloths[0]!.count).toBe(count);
  });

  test('a bolt goes on where it has no length, and a bare number is in the edition it was written in', () => {
    expect(read('44', true).cloths).toEqual([{ width: 44 * inch, count: 1 }]);
    expect(read('1100', true, 'metric').cloths).toEqual([{ width: 1100, count: 1 }]);
    expect(read('460 x 560', false, 'metric').cloths).toEqual([{ width: 460, length: 560, count: 1 }]);
  });
});

test.each([
  ['banana', 'Line 1, “banana”: Write a width and a length, such as 18 x 22 in.'],
  ['18', 'Line 1, “18”: Write a width and a length, such as 18 x 22 in.'],
  ['0 x 5', 'Line 1, “0 x 5”: A size is more than nothing.'],
  ['-3 x 5', 'Line 1, “-3 x 5”: Write a width and a length, such as 18 x 22 in.'],
  ['10 x 20 x 30', 'Line 1, “10 x 20 x 30”: Write a width and a length, such as 18 x 22 in.'],
  ['500 of 3 x 3', 'Line 1, “500 of 3 x 3”: How many are there? Write a number from 1 to 99.'],
  ['10 x 20 km', 'Line 1, “10 x 20 km”: Write a width and a length, such as 18 x 22 in.'],
  [
    '10 x 200 yd',
    'Line 1, “10 x 200 yd”: “200 yd” is more than 100 m, longer than a roll of cloth. Check number and unit.',
  ],
])('%s is answered kindly', (text, fault) => {
  expect(read(text)).toEqual({ cloths: [], words: [], faults: [fault] });
});

test('what can be read holds beside what cannot; blank lines are no lines', () => {
  const { cloths, words, faults } = read('18 x 22\n\n  \nabc\n5 x 6; 7 x 8');
  expect(cloths).toHaveLength(3);
  expect(words[0]).toBe('18\u202fin wide and 22\u202fin long');
  expect(faults).toEqual(['Line 4, “abc”: Write a width and a length, such as 18 x 22 in.']);
});

const shelf: MaterialsFile = {
  felt: {
    kind: 'cloth',
    width: { in: 40, mm: 1000, source: 'a sample' },
    shrinks: { percent: 5, across: 0, source: 'a sample' },
    straightening: { in: 1, mm: 25 },
    sold: { by: 'length', each: { in: '1/8 yd', mm: '10 cm' } },
  },
};

/** Four squares of 8 in; cloth loses an inch to its end, shrinks by a twentieth and is sold by the eighth of a yard. */
const pattern = resolved(
  `
title: Squares
measures: { side: 8 }
materials: { cloth: { use: felt, label: Felt } }
pieces:
  square: { label: Square, from: cloth, size: [side, side], cut: 4 }
`,
  { materials: shelf },
);
const wish = (own: Partial<OwnClothText>, more: Partial<LayoutRequest> = {}): LayoutRequest => ({
  ...startOf(pattern)!,
  ...more,
  own: { offcuts: '', bolts: '', edition: 'inch', ...own },
});
const words = (...from: Parameters<typeof wish>) => layOutAtOnce(pattern, wish(...from))!.words;
const amount = (rows: { what: string; amount: string }[], what: string) =>
  rows.find((row) => row.what === what)?.amount.replaceAll('\u202f', ' ');

describe('laid on a learner’s own cloth', () => {
  test('offcuts come first, and only the rest is bought', () => {
    // Two squares on the offcut; two side by side on the bolt take 8 in: 8 / 0.95 + 1 = 9.4 in, three eighths of a yard.
    const { rows, sheets, sentence } = words({ offcuts: '8 x 16' });
    expect(sheets.map(({ title }) => title)).toEqual(['Felt: offcut of 8\u202fin × 16\u202fin', 'Felt']);
    expect(amount(rows, 'Of your offcuts')).toBe('1');
    expect(amount(rows, 'Length as laid out')).toBe('8 in');
    expect(amount(rows, 'To buy')).toBe('⅜ yd');
    expect(sentence).toContain('With an offcut of yours, the pieces take');
  });

  test('where all goes on offcuts nothing is bought', () => {
    const { rows, sentence } = words({ offcuts: '2 of 8 x 16' });
    expect(amount(rows, 'To buy')).toBe('nothing');
    expect(sentence).toBe('Everything goes on your offcuts: you buy nothing.');
  });

  test('an empty stash, and one that is all rubbish, say so, and the bolt takes it all', () => {
    const empty = words({});
    expect(empty.own?.offcuts).toEqual({
      words: 'No offcut is written here, so everything comes from the bolt.',
      faults: [],
    });
    expect(amount(empty.rows, 'Length as laid out')).toBe('8 in');
    const rubbish = words({ offcuts: 'lots' });
    expect(rubbish.own?.offcuts.faults).toHaveLength(1);
    expect(amount(rubbish.rows, 'Length as laid out')).toBe('8 in');
  });

  test('several bolts, each bought by itself, and of a rest no more than there is', () => {
    // 10 in of the rest are 9 once straightened, and 8.55 shrunk: one row of two squares on 18 in. It is all bought.
    const { rows, sentence } = words({ bolts: '18 in x 10 in\n9 in' });
    expect(amount(rows, 'To buy of bolt 1, 18\u202fin wide')).toBe('≈ ¼ yd');
    // Two squares in a column: 16 / 0.95 + 1 = 17.8 in, half a yard.
    expect(amount(rows, 'To buy of bolt 2, 9\u202fin wide')).toBe('½ yd');
    expect(sentence).toContain('take 24\u202fin of 2 bolts.');
    // 9 in leave 7.6: too short for a square.
    expect(words({ bolts: '18 in x 9 in' }).sentence).toBe('Not everything goes on this cloth.');
  });

  test('two bolts alike are told apart', () => {
    // Each rest of 10 in takes one row of two squares.
    const { rows } = words({ bolts: '2 of 18 in x 10 in' });
    expect(rows.filter(({ what }) => what.startsWith('To buy')).map(({ what }) => what)).toEqual([
      'To buy of bolt 1, 18\u202fin wide',
      'To buy of bolt 1, 18\u202fin wide (2)',
    ]);
  });

  test('folded, a place gives two', () => {
    const { sheets, rows } = words({}, { manner: 'free', folded: true, own: undefined as never });
    expect(sheets[0]!.pieces.map(({ turned }) => turned)).toEqual(['cut double', 'cut double']);
    expect(amount(rows, 'Length as laid out')).toBe('8 in');
  });

  test('pre-cuts take no bolts', () => {
    const { own, rows } = words({ bolts: '40 in', offcuts: '8 x 8' }, { as: 'fat-quarter' });
    expect(own?.bolts.words).toContain('so no bolt is looked at');
    expect(amount(rows, 'To buy')).toBe('1');
  });
});

test('a print that is matched: the sentence, the drawing and the length', () => {
  // Three panels of 8 x 10 in, one behind the other on 8 in, each beginning at a multiple of 4 in: 12 + 12 + 10 in.
  const matched = resolved(
    `
title: Panels
measures: { side: 8 }
materials: { cloth: { use: felt, label: Felt, repeat: 4 } }
pieces:
  panel: { label: Panel, from: cloth, size: [side, 10], cut: 3 }
cutting: { match: [{ pieces: [panel] }] }
`,
    { materials: shelf },
  );
  const { words: told, scenes } = layOutAtOnce(matched, { ...startOf(matched)!, width: 8 * inch })!;
  expect(amount(told.rows, 'Length as laid out')).toBe('34 in');
  expect(told.sentence).toContain('The print begins again every 4 in. Match it on all 3 of Panel.');
  expect(scenes[0]!.shapes.some(({ name }) => name === 'print')).toBe(true);
});
