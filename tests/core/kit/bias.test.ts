/** Strips that are longer than the cloth is wide: on the bias from a square, else across the cloth with their own seam. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { clothNeed, continuousBias, demandOf, squaresForBias, stripWords } from '../../../src/core/kit/index.ts';
import { check } from '../../../src/core/project/index.ts';
import { bounds } from '../../../src/core/geometry/index.ts';
import { resolved, shelf } from '../project/files.ts';
import type { Edition } from '../../../src/core/index.ts';

const IN = 25.4;
const file = (piece: string, measures = 'seam: 1/4') =>
  `title: T\nmeasures: { ${measures} }\nmaterials: { a: { use: quilting cotton } }\npieces: { binding: { from: a, ${piece} } }`;
const at = (yaml: string, edition: Edition = 'inch') => resolved(yaml, { edition, materials: shelf() });

describe('a strip on the bias', () => {
  const wrong = readFileSync(new URL('../../fixtures/wrong/long-bias-strip.yaml', import.meta.url), 'utf8');

  it('that is longer than the cloth is wide comes from a square, whose side is told', () => {
    for (const edition of ['inch', 'metric'] as const) {
      const pattern = at(wrong, edition);
      const role = pattern.materials['cloth']!;
      const [one] = demandOf(pattern, 'cloth', 1, role.material!.width!);
      const { width, height } = bounds(one!.outline);
      const { binding } = pattern.pieces;
      expect(width).toBeCloseTo(height, 9);
      // At least the area of the strip, and no more than half as much again.
      const area = binding!.size.width * binding!.size.height;
      expect(width * height).toBeGreaterThan(area);
      expect(width * height).toBeLessThan(1.5 * area);
      expect(continuousBias(width, binding!.size.height, pattern.pieces['binding']!.joinSeam!)).toBeGreaterThanOrEqual(
        binding!.size.width,
      );
      const need = clothNeed(pattern, role, 1);
      expect(need && 'layout' in need && need.layout.findings).toEqual([]);
      expect(need && 'layout' in need && need.layout.length).toBeCloseTo(height, 6);
    }
    expect(stripWords(at(wrong), 'cloth', 42 * IN)).toBe(
      '“binding” is one strip on the bias, 60 in long and 1 1/2 in wide: cut it round and round from a square of 11 1/4 in, with a seam of 1/4 in.',
    );
    expect(stripWords(at(wrong, 'metric'), 'cloth', 1070)).toBe(
      '“binding” is one strip on the bias, 1524 mm long and 40 mm wide: cut it round and round from a square of 290 mm, with a seam of 6 mm.',
    );
  });

  it('is the same whichever way the piece is written', () => {
    const [lying, standing] = ['size: [60, 1 1/2]', 'size: [1 1/2, 60]'].map((size) =>
      stripWords(at(file(`${size}, grain: bias, may be joined: true`)), 'a', 42 * IN),
    );
    expect(standing).toBe(lying);
    expect(lying).toMatch(/from a square of 11 1\/4 in/u);
  });

  it('takes several squares where one would be wider than the cloth', () => {
    const long = at(file('size: [3000, 2 1/2], grain: bias, may be joined: true'));
    const squares = squaresForBias(3000 * IN, 2.5 * IN, 42 * IN, 6.35, 6.35)!;
    expect(squares.squares).toBeGreaterThan(1);
    expect(squares.side).toBeLessThanOrEqual(42 * IN);
    const each = continuousBias(squares.side, 2.5 * IN, 6.35);
    // Each join along the grain takes its allowance along the slant, twice.
    expect(squares.squares * each - (squares.squares - 1) * 2 * 6.35 * Math.SQRT2).toBeGreaterThanOrEqual(3000 * IN);
    expect(demandOf(long, 'a', 1, 42 * IN)[0]!.count).toBe(squares.squares);
    expect(stripWords(long, 'a', 42 * IN)).toMatch(/from \d+ squares of .* and join the strips\.$/u);
  });

  it('that lies corner to corner on the cloth is cut whole', () => {
    const [one] = demandOf(at(file('size: [40, 1 1/2], grain: bias, may be joined: true')), 'a', 1, 42 * IN);
    expect(one).toMatchObject({ grain: 'bias', count: 1 });
  });
});

describe('strips across the cloth', () => {
  const strips = (piece: string, measures?: string) => demandOf(at(file(piece, measures)), 'a', 1, 42 * IN)[0]!.count;

  it('are joined with their own seam', () => {
    // Two strips of 42 in: 84 in less twice the seam of the join.
    expect(strips('size: [83 1/2, 3], allowance: 0 in, may be joined: true')).toBe(2);
    expect(strips('size: [83 1/2, 3], allowance: 0 in, may be joined: true', 'seam: 3/8')).toBe(3);
    expect(strips('size: [83 1/4, 3], allowance: 0 in, may be joined: true', 'seam: 3/8')).toBe(2);
    expect(strips('size: [83 1/2, 3], allowance: { left: 1/2, right: 1/2, others: 0 in }, may be joined: true')).toBe(
      3,
    );
    expect(strips('size: [3, 83 1/2], allowance: { top: 1/2, bottom: 1/2, others: 0 in }, may be joined: true')).toBe(
      3,
    );
    expect(strips('size: [83 1/2, 3], may be joined: { seam: 1/2 }')).toBe(3);
    expect(strips('size: [83, 3], may be joined: { seam: 1/2 }')).toBe(2);
    // Where nothing says how, 1/4 in.
    expect(strips('size: [83 1/2, 3], may be joined: true', 'ease: 1')).toBe(2);
  });

  it('are told with their number and their seam', () => {
    expect(stripWords(at(file('size: [120, 2 1/2], may be joined: { seam: 3/8 }')), 'a', 42 * IN)).toBe(
      '“binding” is one strip 120 in long and 2 1/2 in wide: join 3 strips cut across the cloth with a seam of 3/8 in.',
    );
    expect(stripWords(at(file('size: [20, 2 1/2], may be joined: true')), 'a', 42 * IN)).toBeUndefined();
  });
});

describe('cloth that shrinks both ways', () => {
  const shelf54 = (shrinks: { percent: number; across?: number }) => ({
    ticking: {
      kind: 'cloth' as const,
      width: { in: 54, mm: 1370, source: 'a sample' },
      shrinks: { ...shrinks, source: 'a sample' },
    },
  });
  const layout = (piece: string, shrinks: { percent: number; across?: number }) => {
    const pattern = resolved(
      `title: T\nmeasures: {}\nmaterials: { a: ticking }\npieces: { panel: { from: a, ${piece} } }`,
      { materials: shelf54(shrinks) },
    );
    const need = clothNeed(pattern, pattern.materials['a']!, 1);
    if (!need || !('layout' in need)) throw new Error('There is no layout.');
    return { need, found: check(pattern).map(({ code, message }) => [code, message]) };
  };

  it('is laid on what is left of its width, and says so', () => {
    // 54 in less 4 % are 51.84 in; 30 in / (1 - 0.04) are 31 1/4 in.
    const { need, found } = layout('size: [50, 30]', { percent: 4 });
    expect(need.width / IN).toBeCloseTo(54, 9);
    expect(need.washed / IN).toBeCloseTo(51.84, 9);
    expect((need.buy.laid + need.buy.shrinkage) / IN).toBeCloseTo(31.25, 9);
    expect(found).toEqual([]);
  });

  it('does not take what is wider than that', () => {
    const { need, found } = layout('size: [52, 30]', { percent: 4 });
    expect(need.layout.findings.map(({ severity }) => severity)).toContain('error');
    expect(found).toEqual([
      [
        'wider-than-cloth',
        '“panel” needs 52 in across the cloth, cut lengthwise. “ticking” is ≈ 51 13/16 in wide once washed.',
      ],
    ]);
  });

  it('takes each way its own amount', () => {
    expect(layout('size: [52, 30]', { percent: 4, across: 0 }).found).toEqual([]);
    expect(layout('size: [52, 30]', { percent: 0, across: 4 }).found).toHaveLength(1);
    expect(layout('size: [48, 30]', { percent: 4, across: 10 }).need.washed / IN).toBeCloseTo(48.6, 9);
  });
});
