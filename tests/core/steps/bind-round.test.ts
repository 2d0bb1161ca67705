/** A binding round corners: mitred, as long as the raw edges, its ends joined; and what an author may get wrong. */
import { describe, expect, it, test } from 'vitest';
import * as laws from '../../fuzz/chains/laws.ts';
import { chance } from '../../fuzz/chance.ts';
import { check, makeUp } from '../../../src/core/project/index.ts';
import { layersAt } from '../../../src/core/cloth/index.ts';
import { lines, resolved } from '../project/files.ts';
import type { Pattern, Step } from '../../../src/core/index.ts';

const file = (bind: string, pieces = '', more = ''): Pattern =>
  resolved(
    `title: Mat
units: metric
measures: { seam: { mm: 6, in: 1/4 } }
pieces:
  mat: { size: [120 mm, 90 mm] }
  back: { like: mat }
  strip: { size: [420 mm + 2 * seam, 40 mm] }
${pieces}
steps:
  - { lay: mat, on: back, makes: mat }
${more}  - { bind: mat, width: 10 mm, ${bind} }
`,
    { edition: 'metric' },
  );

const errors = (pattern: Pattern) => lines(check(pattern)).filter((line) => line.startsWith('error'));

/** Everything that must hold of any step. */
function broken(pattern: Pattern): string[] {
  const step = makeUp(pattern).at(-1)!;
  const { share } = chance(3);
  return [
    ...laws.finite(step),
    ...laws.clothStays(step, false),
    ...laws.partsOfPieces(step, pattern),
    ...laws.untorn(step, pattern),
    ...laws.untangled(step),
    ...laws.rowsStay(step, false),
    ...laws.layersCounted(step, laws.pointsIn(step.after, 60, share)),
    ...laws.sized(step),
  ];
}

const layers = ({ after }: Step, x: number, y: number) => layersAt(after, { x, y }).length;

describe('all round', () => {
  const pattern = file('with: strip, at: all');
  const step = makeUp(pattern).at(-1)!;
  it('keeps the size of the work, and every law of the cloth', () => {
    expect(errors(pattern)).toEqual([]);
    expect(step.title).toBe('Bind the mat all round with the strip');
    expect([step.size.width, step.size.height]).toEqual([expect.closeTo(120, 6), expect.closeTo(90, 6)]);
    expect(broken(pattern)).toEqual([]);
  });
  it('lies in four layers round the raw edge, and in three times as many where it is mitred', () => {
    // Two of the mat. Beside a corner the strip lies on its fold, and that on the next side.
    expect(layers(step, 40, 3)).toBe(2 + 4);
    expect(layers(step, 3, 4)).toBe(2 + 12);
    expect(layers(step, 60, 45)).toBe(2);
    expect(step.layersMost).toBe(14);
  });
  it('is sewn on at its width from corner to corner, and its ends are joined by a seam through both', () => {
    const [join, seam, row] = step.stitches;
    expect(join).toMatchObject({ layers: 2, length: expect.closeTo(40, 6) as number });
    // 2 (120 - 2 x 10 + 90 - 2 x 10); the mat, its back and one layer of the strip.
    expect(seam).toMatchObject({ layers: 3, length: expect.closeTo(340, 6) as number });
    expect(row!.length).toBeCloseTo(2 * (120 - 17 + 90 - 17), 6);
  });
  it('has the sides of the work: a fold of its own bears the name of each', () => {
    const names = step.after.plies.flatMap(({ piece, outline }) =>
      piece === 'strip' ? outline.flatMap(({ name, fold }) => (fold === undefined ? [] : [name])) : [],
    );
    expect(['top', 'right', 'bottom', 'left'].filter((side) => !names.includes(side))).toEqual([]);
  });
});

describe('some sides that follow one another', () => {
  test.each([
    ['[left, bottom]', '90 mm + 120 mm', 1],
    ['[right, bottom, left]', '90 mm + 120 mm + 90 mm', 2],
  ])('%s, with ends that stay raw', (at, length, corners) => {
    const pattern = file(`with: tape, at: ${at}`, `  tape: { size: [${length}, 40 mm] }`);
    expect(errors(pattern)).toEqual([]);
    expect(broken(pattern)).toEqual([]);
    const [seam] = makeUp(pattern).at(-1)!.stitches;
    const all = corners === 1 ? 210 : 300;
    expect(seam!.length).toBeCloseTo(all - 2 * corners * 10, 6);
  });
  it('of an outline that is no rectangle, with a strip that lies upright', () => {
    const flag = resolved(
      `title: Flag
units: metric
measures: {}
pieces:
  tape: { size: [36 mm, 180 mm] }
  flag: { outline: [[0 mm, 0 mm], { at: [140 mm, 0 mm], edge: slope }, { at: [80 mm, 80 mm], edge: top }, [0 mm, 80 mm]] }
steps:
  - { bind: flag, with: tape, at: [slope, top], width: 10 mm }
`,
      { edition: 'metric' },
    );
    // The slope is 100 mm long, the top 80.
    expect(errors(flag)).toEqual([]);
    expect(broken(flag)).toEqual([]);
  });
  it('a strip that was turned over shows its other side', () => {
    const pattern = file('with: strip, at: all', '', '  - { turn over: strip }\n');
    expect(errors(pattern)).toEqual([]);
    expect(broken(pattern)).toEqual([]);
    const { after } = makeUp(pattern).at(-1)!;
    expect(layersAt(after, { x: 40, y: 3 }).at(-1)!.face).toBe('wrong');
  });
});

describe('what an author may get wrong', () => {
  test.each([
    [
      'with: tape, at: all',
      '  tape: { size: [500 mm, 40 mm] }',
      'steps > 1: strip-length: The strip is 500 mm long, and the edges that it goes along are 420 mm together: with a seam of 6 mm at both of its ends it is cut 432 mm. Cut it as long as that, or trim it in a step before.',
    ],
    [
      'with: tape, at: [left, bottom]',
      '  tape: { size: [200 mm, 40 mm] }',
      'steps > 1: strip-length: The strip is 200 mm long, and the edges that it goes along are 210 mm together. Cut it as long as that, or trim it in a step before.',
    ],
    [
      'with: strip, at: [left, right]',
      '',
      'steps > 1: one-edge: These edges do not follow one another round outer corners: one strip cannot go along all of them. Write a step for each edge.',
    ],
    [
      'with: tape, at: all',
      '  tape: { size: [432 mm, 60 mm] }',
      'steps > 1: too-deep: A binding reaches too far: its strip should be four times its width. Check the allowance and the size of the pieces.',
    ],
    [
      'with: tape, at: all',
      '  tape: { size: [432 mm, 30 mm] }',
      'steps > 1: too-deep: A binding has nothing to turn in: its strip should be four times its width. Check the allowance and the size of the pieces.',
    ],
    [
      'with: strip, at: all, seam: 0 mm',
      '',
      'steps > 1: too-deep: The ends of the strip are joined by a seam, and its allowance is nothing. Check the allowance and the size of the pieces.',
    ],
  ])('%s %s', (bind, pieces, message) => {
    expect(errors(file(bind, pieces))).toEqual([`error ${message}`]);
  });
  it('a corner sharper than a right angle, where a strip folded square stands out', () => {
    const sail = (at: string, tape: string) =>
      resolved(
        `title: Sail
units: metric
measures: {}
pieces:
  tape: { size: [${tape}, 40 mm] }
  sail: { outline: [{ at: [0 mm, 0 mm], edge: foot }, { at: [120 mm, 0 mm], edge: slope }, { at: [0 mm, 160 mm], edge: mast }] }
steps:
  - { bind: sail, with: tape, at: [${at}], width: 10 mm }
`,
        { edition: 'metric' },
      );
    expect(errors(sail('mast, foot', '280 mm'))).toEqual([]);
    // 120 and 160 mm: the slope is 200 mm long.
    expect(errors(sail('foot, slope', '320 mm'))).toEqual([
      expect.stringContaining(
        'one-edge: The corner is sharper than a right angle: a strip folded square there would stick out.',
      ),
    ]);
  });
  it('a strip that was folded before cannot be laid round corners', () => {
    const pattern = file('with: strip, at: all', '', '  - { fold: strip, from: top, at: 10 mm }\n');
    expect(errors(pattern)[0]).toContain(
      'A strip that is bound round corners lies flat, in one layer with straight ends.',
    );
  });
});
