/** Pieces that enclose nothing or are cut no times, and cut sizes between two marks. */
import { expect, test } from 'vitest';
import { check } from '../../../src/core/project/index.ts';
import { lines, resolved } from './files.ts';

const said = (pieces: string, measures = '', edition: 'inch' | 'metric' = 'inch') =>
  lines(check(resolved(`title: T\nmeasures: { ${measures} }\npieces: ${pieces}`, { edition })));

test.each([
  ['[[0 in, 0 in], [8 in, 0 in], [4 in, 0 in]]', '8 in x 0 in'],
  ['[[0 in, 0 in], [0 in, 3 in], [0 in, 1 in]]', '0 in x 3 in'],
  ['[[0 in, 0 in], [4 in, 2 in], [8 in, 4 in]]', '8 in x 4 in'],
  ['[[0 in, 0 in], [4 in, 2 in], [8 in, 4 in], [2 in, 1 in]]', '8 in x 4 in'],
  ['[[1 in, 1 in], [1 in, 1 in], [1 in, 1 in]]', '0 in x 0 in'],
])('an outline on one line is an error: %s', (outline, size) => {
  expect(said(`{ p: { outline: ${outline} } }`)).toEqual([
    `error pieces > p > outline: outline-flat: The points of “p” lie on one line, ${size}. There is nothing to cut. Give the points across and up: [0 in, 0 in], [8 in, 0 in], [8 in, 3 in].`,
  ]);
});

test('a piece that is cut no times is an error', () => {
  const error = (count: string) =>
    `error pieces > p > cut: not-a-count: A whole number from 1 up belongs here, not ${count}.`;
  expect(said('{ p: { size: [4, 4], cut: 0 } }')).toEqual([error('0')]);
  expect(said('{ p: { size: [4, 4], cut: n - 2 } }', 'n: { count: 2 }')).toEqual([error('0')]);
  expect(said('{ p: { size: [4, 4], cut: 1/2 } }')).toEqual([error('0.5')]);
});

test('a cut size that a formula brings between two marks is a note', () => {
  const fix = 'Round its formula, such as “round up width / 3 to 1/8 in”, or choose other measures.';
  expect(said('{ p: { size: [10 in / 3, 4] } }')).toEqual([
    `note pieces > p: off-ruler: “p” is cut between two marks of the inch ruler. Pages show it “≈ 3 5/16 in” wide. ${fix}`,
  ]);
  expect(said('{ p: { size: [100 mm / 3, 125 mm / 2] } }', '', 'metric')).toEqual([
    `note pieces > p: off-ruler: “p” is cut between two marks of the metric ruler. Pages show it “≈ 33 mm” wide and “≈ 63 mm” high. ${fix}`,
  ]);
  expect(said('{ p: { size: [10 in / 4, 4] } }')).toEqual([]);
  // A stated measure between marks has its note; any other shape is cut by a template.
  expect(said('{ p: { size: [third, 4] } }', 'third: 3.3333 in')).toEqual([expect.stringContaining('off-grid')]);
  expect(said('{ p: { outline: [[0 in, 0 in], [10 in / 3, 0 in], [0 in, 3 in]] } }')).toEqual([]);
});

test('a hem’s first turn is read alike, as a number and as a fraction', () => {
  const hem = (fold: string) =>
    check(
      resolved(
        `title: T\nmeasures: {}\npieces: { p: { size: [10, 10] } }\nsteps: [{ hem: p, at: top, fold: ${fold}, then: 2 }]`,
      ),
    ).map(({ message }) => message);
  expect(hem('1')).toEqual([]);
  expect(hem('1/2')).toEqual([]);
  expect(hem('{ in: 1, mm: 25 }')).toEqual([]);
});
