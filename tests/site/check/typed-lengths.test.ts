/** Which numbers of running text are lengths, and which are none. The sentences are made up; the settings and needle sizes are those that machine manuals print. */
import { expect, test } from 'vitest';
import { typedLengths } from '../../../src/site/check/typed-lengths.ts';

const found = (text: string) => typedLengths(text).map(({ text, mm }) => [text, Math.round(mm * 1000) / 1000]);

test.each<[string, [string, number][]]>([
  ['Cut it 4 1/2 in wide.', [['4 1/2 in', 114.3]]],
  ['Cut it 4½ in wide.', [['4½ in', 114.3]]],
  ['Cut a 4-1/2" strip.', [['4-1/2"', 114.3]]],
  ['A 1/4-inch seam.', [['1/4-inch', 6.35]]],
  [
    'A 6-mm seam, or 11.4 cm.',
    [
      ['6-mm', 6],
      ['11.4 cm', 114],
    ],
  ],
  ['It is 11,4 cm.', [['11,4 cm', 114]]],
  ['Buy 2 yards.', [['2 yards', 1828.8]]],
  ['It is 3 in.', [['3 in', 76.2]]],
  [
    'It is 3 in wide and 4 in high.',
    [
      ['3 in', 76.2],
      ['4 in', 101.6],
    ],
  ],
  [
    'Four\n1/2 in, on two lines: 4\n1/2 in.',
    [
      ['1/2 in', 12.7],
      ['4 1/2 in', 114.3],
    ],
  ],
])('%s', (text, lengths) => {
  expect(found(text)).toEqual(lengths);
});

test.each([
  'Fold 2 in half.',
  'Lay 3 in the middle.',
  'Sew 4 in one go.',
  'Wait 5 minutes, then 30 s more.',
  'Use a needle of size 80/12 or 90/14.',
  'Sew with a stitch length of 2.5 mm.',
  'Set the stitch length to 3 mm.',
  'Use a 3 mm stitch.',
  'Baste with 4 mm long stitches.',
  'Take a 2 mm twin needle.',
  'Iron at 150 °C for 12 to 15 s.',
  'Anything from 3 to 4 mm will do.',
  'It costs $4 in shops, and “4 1/2” is a number.',
  'Lesson 2, step 3, 1/2 of the cloth, 5 pockets.',
  'The A7 card of ISO 216.',
])('no length: %s', (text) => {
  expect(found(text)).toEqual([]);
});
