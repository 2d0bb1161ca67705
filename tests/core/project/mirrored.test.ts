/** The other one of a pair: a piece that is the mirror image of another. */
import { describe, expect, it, test } from 'vitest';
import { area, length } from '../../../src/core/geometry/index.ts';
import { check, makeUp } from '../../../src/core/project/index.ts';
import { lines, resolved } from './files.ts';
import type { Pattern } from '../../../src/core/index.ts';

const file = (pieces: string, steps = ''): Pattern =>
  resolved(
    `title: Pair
units: metric
measures: { seam: { mm: 10, in: 3/8 } }
pieces:
  left front:
    outline:
      - { at: [0 mm, 0 mm], edge: hem }
      - { at: [200 mm, 0 mm], edge: right }
      - { at: [180 mm, 300 mm], edge: top }
      - { at: [60 mm, 300 mm], edge: left armhole, rise: 20 mm, bends: in }
      - { at: [0 mm, 200 mm], edge: left }
    allowance: { right: 20 mm, others: 10 mm }
${pieces}
${steps}`,
    { edition: 'metric' },
  );
const errors = (pattern: Pattern) => lines(check(pattern)).filter((line) => line.startsWith('error'));

describe('a mirror image', () => {
  const pattern = file('  right front: { like: left front, mirrored: true, meets: { left: left front right } }');
  const [left, right] = [pattern.pieces['left front']!, pattern.pieces['right front']!];
  it('is as large, with its edges and allowances on the other side', () => {
    expect(errors(pattern)).toEqual([]);
    expect([right.size.width, right.size.height]).toEqual(
      [left.size.width, left.size.height].map((mm) => expect.closeTo(mm, 9)),
    );
    expect(area(right.cutOutline)).toBeCloseTo(area(left.cutOutline), 6);
    expect(right.allowance['left']).toBe(20);
    expect(length(right.outline, 'right armhole')).toBeCloseTo(length(left.outline, 'left armhole'), 9);
    // Of the left front the straight side that is not slanted off lies at the right.
    const across = ({ outline }: typeof left, edge: string) => outline.find(({ name }) => name === edge)!.from.x;
    expect(across(left, 'right')).toBeGreaterThan(across(left, 'top') - 1);
    expect(across(right, 'left')).toBeLessThan(left.size.width / 2);
  });
  it('gives its edges to formulas by their names', () => {
    const { measures } = pattern;
    expect(measures['right front right armhole stitch line']!.value).toBeCloseTo(
      measures['left front left armhole stitch line']!.value,
      9,
    );
    expect(measures['right front left armhole stitch line']).toBeUndefined();
  });
  it('turned over lies on the other', () => {
    const both = file(
      '  right front: { like: left front, mirrored: true }',
      'steps:\n  - { sew round: [left front, right front], open: hem }\n',
    );
    expect(errors(both)).toEqual([]);
    expect(makeUp(both)).toHaveLength(1);
  });
  it('of a rectangle with one rounded corner has it at the other side', () => {
    const flap = resolved(
      'title: F\nunits: metric\nmeasures: {}\npieces:\n  a: { size: [80 mm, 50 mm], corners: { at: bottom left, round: 20 mm } }\n  b: { like: a, mirrored: true }\n',
      { edition: 'metric' },
    );
    expect([flap.pieces['a']!.corners, flap.pieces['b']!.corners]).toEqual([
      ['bottom-left corner'],
      ['bottom-right corner'],
    ]);
  });
});

test.each([
  ['  right front: { like: left front, mirrored: true, inset: 5 mm }'],
  ['  right front: { like: left front, mirrored: true, allowance: 5 mm }'],
])('%s is told', (piece) => {
  expect(errors(file(piece))).toEqual([
    'error pieces > right front > mirrored: mirrored-of-nothing: A mirror image takes all from the piece it is like: its size and its allowances. Write “like: left front, mirrored: true”, and what is smaller as a piece of its own.',
  ]);
});

test('a mirror image of nothing is told to name what it mirrors', () => {
  expect(errors(file('  right front: { size: [100 mm, 200 mm], mirrored: true }'))).toEqual([
    'error pieces > right front > mirrored: mirrored-of-nothing: A mirror image needs the piece that it mirrors. Write “like” with the name of that piece, and take its size and its allowances out here.',
  ]);
});
