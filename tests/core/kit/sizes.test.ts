/** What a class buys whose makers are of several sizes. Worked out by hand. */
import { describe, expect, it } from 'vitest';
import { inSize, kitFor, MaterialsFile, prepare, resolveProject, sharesOf } from '../../../src/core/index.ts';
import { project } from '../project/files.ts';

const materials = MaterialsFile.parse({
  cotton: {
    kind: 'cloth',
    width: { in: 40, mm: 1000, source: 'made up' },
    sold: { by: 'length', each: { in: '1 in', mm: 10 } },
    straightening: { in: 0, mm: 0 },
  },
  button: { kind: 'hardware', hardware: 'button', sold: { by: 'pack', each: 4 } },
  thread: { kind: 'thread' },
});
/** A square of 10, 20 or 40 in, with 2, 3 or 4 buttons. Two of 20 and four of 10 go side by side on 40. */
const pattern = resolveProject(
  project(`
title: Squares
sizes: { default: middle, of: { small: { side: 10, buttons: 2 }, middle: { side: 20, buttons: 3 }, wide: { side: 40, buttons: 4 } } }
measures: { side: {}, buttons: { count: 3 }, seam: 1/4 }
materials: { outer: cotton, button: { use: button, count: buttons } }
pieces: { square: { from: outer, size: [side, side], cut by: teacher } }
`),
  { materials },
);
const bought = (sizes?: Record<string, number>, makers = 7, spares = 1) => {
  const { lines, findings } = kitFor(pattern, { makers, spares, ...(sizes && { sizes }) });
  return [
    ...lines.flatMap((line) =>
      line.kind === 'cloth' ? Math.round(line.buy.total / 25.4) : line.kind === 'counted' ? line.needed : [],
    ),
    ...findings.map(({ message }) => message),
  ];
};

describe('a class of several sizes', () => {
  it('buys the sum: who is not counted makes the size of the page, and so do the spares', () => {
    // 8 of 20 in lie two in a row: 80 in.
    expect(bought()).toEqual([80, 24]);
    // 4 and a spare of the middle in three rows of 20, the 2 small ones beside the last; 1 wide in a row of 40.
    expect(bought({ small: 2, wide: 1 })).toEqual([100, 4 + 4 + 15]);
    expect(
      sharesOf(pattern, { makers: 7, spares: 1, sizes: { small: 4, wide: 1 } }).shares.map(({ size, sets }) => [
        size,
        sets,
      ]),
    ).toEqual([
      ['small', 4],
      ['middle', 3],
      ['wide', 1],
    ]);
    expect(prepare(pattern, { makers: 7, spares: 1, sizes: { small: 4, wide: 1 } }).cut).toEqual([
      { label: 'square, small', count: 4 },
      { label: 'square, middle', count: 3 },
      { label: 'square, wide', count: 1 },
    ]);
  });

  it('says what cannot be counted', () => {
    expect(bought({ small: 5, huge: 1 }, 4, 0)).toEqual([
      10,
      8,
      'The sizes are for more than the 4 makers: of “small” 4 are taken.',
      'There is no size “huge”; its makers are counted to the size of the page.',
    ]);
  });

  it('says how a strip of each size is joined, and buys one alone as for the largest', () => {
    const bound = resolveProject(
      project(`
title: Bound
sizes: { default: short, of: { short: { edge: 30 }, long: { edge: 100 } } }
measures: { edge: {}, seam: 1/4 }
materials: { outer: cotton }
pieces: { binding: { from: outer, size: [edge, 2 1/2], allowance: 0, may be joined: true } }
`),
      { materials },
    );
    const [line] = kitFor(bound, { makers: 2, spares: 0, sizes: { long: 1 } }).lines;
    expect(line?.note).toMatch(/^Size long: “binding” is one strip .* join 3 strips cut across the cloth/u);
    // Three strips of 2 1/2 in, one below the other, by the whole inch; the short one takes one strip.
    expect(line?.kind === 'cloth' && line.single.total / 25.4).toBeCloseTo(8, 6);
  });

  it('follows with what an option makes of the size, and keeps what was moved', () => {
    const hung = project(`
title: Hung
sizes: { default: small, of: { small: { side: 10 }, wide: { side: 20 } } }
measures: { side: {}, drop: { in: 2, mm: 50, between: [1, 30] }, seam: 1/4 }
options: { long: { label: Long, default: true, measures: { drop: side / 2 } } }
pieces: { square: { size: [side, drop] } }
`);
    const dropOf = (values?: Record<string, number>) =>
      inSize(resolveProject(hung, { materials, ...(values && { values }) }), 'wide').measures['drop']!.value / 25.4;
    expect(dropOf()).toBeCloseTo(10, 6);
    expect(dropOf({ drop: 3 * 25.4 })).toBeCloseTo(3, 6);
  });

  it('keeps what a learner chose beside the size', () => {
    expect(inSize(pattern, 'wide').measures['side']!.value).toBeCloseTo(40 * 25.4, 6);
    expect(inSize(pattern, 'middle')).toBe(pattern);
    expect(inSize(pattern, 'wide').materials['outer']!.material).toBe(pattern.materials['outer']!.material);
  });
});
