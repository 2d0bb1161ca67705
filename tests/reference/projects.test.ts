/**
 * Whole project files, made up and checked, against printed examples: the words of a file must come to what the book
 * says, and a file that says otherwise must be found out.
 */
import { describe, expect, test } from 'vitest';
import { check, makeUp } from '../../src/core/project/index.ts';
import { resolved } from '../core/project/files.ts';
import type { Step } from '../../src/core/project/index.ts';

const inch = 25.4;

/** A project in inches: pieces, steps and more, each as lines of its file. */
const file = (pieces: string, steps: string, more = '', measures = ''): string => `
title: From a book
units: inch
measures: { ${measures} }
${more}
pieces:
${pieces.trim().replace(/^/gmu, '  ')}
steps:
${steps.trim().replace(/^/gmu, '  ')}
`;

/** The last step of a project, and the codes of what is wrong with it. */
function made(yaml: string): { step: Step; found: (string | undefined)[]; inches: number[] } {
  const pattern = resolved(yaml);
  const step = makeUp(pattern).at(-1)!;
  const found = check(pattern).map(({ code }) => code);
  const sizes = step ? [step.size.width, step.size.height, step.depth] : [];
  return { step, inches: sizes.map((mm) => Number((mm / inch).toFixed(6))), found };
}

const finished = (of: string, width: string, height: string) =>
  `finished: { of: ${of}, width: ${width}, height: ${height} }`;

describe('seams that enclose their edges', () => {
  const pieces = 'front: { size: [8, 4] }\nback: { size: [6, 4] }';
  const seam = (verb: string, width: string) =>
    file(
      pieces,
      `- { ${verb}: [front, back], at: [right, left], makes: body }`,
      finished('body', width, '4'),
      'seam: 5/8',
    );

  test('a French seam takes 3/8 and then 1/4 in from each side (Oklahoma Cooperative Extension, 4-H Card 810)', () => {
    const { step, inches, found } = made(seam('french seam', '12 3/4'));
    expect(found).toEqual([]);
    expect(inches).toEqual([12.75, 4, 0]);
    // Two passes of the lockstitch, and no raw edge that shows on either side.
    expect(step.stitches.map((row) => row.class)).toEqual(['301', '301']);
    expect(made(seam('french seam', '13 1/4')).found).toEqual(['finished-size']);
  });

  test('a flat-felled seam takes 5/8 in from each side, and is sewn twice (Whafi, How to sew a flat-felled seam)', () => {
    const { step, inches, found } = made(seam('flat-felled seam', '12 3/4'));
    expect(found).toEqual([]);
    expect(inches).toEqual([12.75, 4, 0]);
    expect(step.stitches).toHaveLength(2);
    // The second row holds the body and the allowance folded in half. Nearer to the seam the trimmed one lies between.
    expect(step.stitches.map((row) => row.layers)).toEqual([2, 3]);
    expect(step.layersMost).toBe(4);
    expect(made(seam('flat-felled seam', '12')).found).toEqual(['finished-size']);
  });
});

describe('tucks, gathers and hems', () => {
  test('each tuck takes twice its width (NIMI Dress Making p. 209)', () => {
    const yoke = (height: string) =>
      file(
        'yoke: { size: [10, 12] }',
        '- { tuck: yoke, at: 3, depth: 1/2 }\n- { tuck: yoke, at: 5, depth: 1/2 }',
        finished('yoke', '10', height),
      );
    expect(made(yoke('10'))).toMatchObject({ found: [], inches: [10, 10, 0] });
    expect(made(yoke('11')).found).toEqual(['finished-size']);
  });

  test('a frill of twice the length is gathered to its band, and then the edges agree (common practice, no source)', () => {
    const pieces = 'frill: { size: [20, 4] }\nband: { size: [10, 3] }';
    const join = '- { join: [frill, band], at: [top, bottom], seam: 1/2 }';
    const gathered = made(file(pieces, `- { gather: frill, at: top, to: 10 }\n${join}`));
    // Its lower edge stays as wide as it was cut; the edge that meets the band is drawn up, and the band stays as it was.
    expect(gathered).toMatchObject({ found: [], inches: [20, 6, 0] });
    const band = gathered.step.after.plies.find((ply) => ply.piece === 'band')!;
    const across = band.outline.map(({ from }) => from.x / inch);
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(10, 6);
    // Gathers count as the cloth that is drawn up in them.
    expect(gathered.step.after.plies.find((ply) => ply.piece === 'frill' && ply.fullness !== 1)!.fullness).toBeCloseTo(
      2,
      6,
    );
    expect(made(file(pieces, join)).found).toEqual(['edges-differ']);
    expect(made(file(pieces, join.replace('seam', 'eased: true, seam'))).found).toEqual(['edges-differ']);
  });

  test('a napkin of 11 in with 1/4 and 3/4 in turned finishes at 9 in (napkin page, 1 in for each edge)', () => {
    const napkin = (side: string) =>
      file(
        'napkin: { size: [11, 11] }',
        '- { hem: napkin, at: all, fold: 1/4, then: 3/4, corners: mitred }',
        finished('napkin', side, side),
      );
    expect(made(napkin('9'))).toMatchObject({ found: [], inches: [9, 9, 0] });
    expect(made(napkin('10')).found).toEqual(['finished-size', 'finished-size']);
  });

  test('a casing is as wide as its elastic and 1/4 in (Singer NZ, How to insert elastic in a casing)', () => {
    const waist = (width: string) =>
      file('skirt: { size: [20, 15] }', `- { casing: skirt, at: top, width: ${width}, then: 1/4 }`, '', 'elastic: 1');
    const { step, found } = made(waist('elastic + 1/4 in'));
    expect(found).toEqual([]);
    const [row] = step.stitches;
    const fold = Math.max(...step.after.plies.flatMap((ply) => ply.outline.map((edge) => edge.from.y)));
    expect((fold - row!.at.y) / inch).toBeCloseTo(1.25, 6);
    expect(made(waist('waist + 1/4 in')).found).toContain('unknown-name');
  });
});

describe('bags', () => {
  const bag = (more: string, size: string) =>
    file(
      'front: { size: [19 in + 2 * seam, 16 in + seam] }\nback: { size: [19 in + 2 * seam, 16 in + seam] }',
      `- { sew round: [front, back], open: top, makes: bag }\n${more}\n- { turn: bag }`,
      size,
      'seam: 1/2',
    );
  const box = (square: string, from: string) =>
    `- { box corner: bag, at: [bottom left, bottom right], square: ${square}, from: ${from} }`;

  test('a square of 2 in from the seams makes a 19 x 16 in bag 15 wide, 14 high, 4 deep (Lazy Girl Designs)', () => {
    const { inches, found } = made(bag(box('2', 'seam'), finished('bag', '15', '14')));
    expect(inches).toEqual([15, 14, 4]);
    expect(found).toEqual([]);
    expect(made(bag(box('2', 'seam'), finished('bag', '19', '14'))).found).toEqual(['finished-size']);
  });

  test('a square of 1 1/2 in from the raw edge, with seams of 1/2 in, is 2 in deep (Best Fabric Store)', () => {
    expect(made(bag(box('1 1/2', 'raw edge'), finished('bag', '17', '15')))).toMatchObject({
      found: [],
      inches: [17, 15, 2],
    });
  });

  test('corners are clipped 1/8 in from the stitches (sewingsupport.com, How to trim and clip seam allowances)', () => {
    const clip = (by: string) => `- { clip corners: bag, by: ${by} }`;
    const { found, step } = made(bag(clip('1/8'), finished('bag', '19', '16')));
    expect(found).toEqual([]);
    // Of both layers at both corners: a right-angled triangle from 1/8 in outside the stitches out to the raw corner.
    const high = Math.SQRT2 / 2 - 1 / 8;
    const cutAway = step.after.done.flatMap((done) => done.cutAway ?? []);
    expect(cutAway.map((area) => area / inch ** 2)).toEqual([expect.closeTo(4 * high ** 2, 4)]);
    expect(made(bag(clip('2'), '')).found[0]).toBe('misses');
  });
});

describe('bindings', () => {
  const mat = (strip: string) =>
    file(
      `mat: { size: [12, 9] }\nstrip: { size: [12, ${strip}], grain: bias }`,
      '- { bind: mat, with: strip, at: top, width: 1/2 }',
      finished('mat', '12', '9'),
    );

  test('a strip four times as wide as the binding goes round and turns in (Singer AU, Make bias binding)', () => {
    const { step, found } = made(mat('2'));
    expect(found).toEqual([]);
    expect(step.stitches).toHaveLength(2);
  });

  test('a strip three times as wide has nothing left to turn in', () => {
    expect(made(mat('1 1/2')).found[0]).toBe('too-deep');
  });
});

describe('a gap', () => {
  const cushion = (more: string) =>
    file(
      'front: { size: [11, 11] }\nback: { size: [11, 11] }',
      `- { sew round: [front, back], gap: { edge: bottom, length: 4 }, makes: cover }\n${more}`,
      finished('cover', '10', '10'),
      'seam: 1/2',
    );

  test('is closed by hand or by machine, and nothing raw is left (sizes: 11 in less two seams of 1/2 in)', () => {
    for (const [stitch, type] of [
      ['by hand', '200'],
      ['by machine', '301'],
    ]) {
      const { step, found, inches } = made(cushion(`- { turn: cover }\n- { close gap: cover, stitch: ${stitch} }`));
      expect(found).toEqual([]);
      expect(inches).toEqual([10, 10, 0]);
      // ISO 4915: class 200 by hand, 301 the lockstitch.
      expect(step.stitches.map((row) => row.class)).toEqual([type]);
      expect(step.stitches[0]!.length / inch).toBeCloseTo(4, 4);
    }
  });

  test('cannot be closed before the work is turned, nor twice', () => {
    const twice = '- { turn: cover }\n- { close gap: cover, stitch: by hand }\n- { close gap: cover, stitch: by hand }';
    expect(made(cushion(twice)).found[0]).toBe('no-gap');
  });
});

describe('grading and trimming', () => {
  const panels = (more: string, size = '') =>
    file(
      'front: { size: [6, 4] }\nback: { size: [6, 4] }',
      `- { join: [front, back], at: top, seam: 5/8, press: unopened, makes: body }\n${more}`,
      size,
    );

  test('graded layers stand back from one another; a seam narrower than that has nothing to grade', () => {
    const { step } = made(panels('- { grade: body, by: 1/8 }'));
    const tops = step.after.plies.map((ply) => Math.max(...ply.outline.map((edge) => edge.from.y)) / inch);
    // 1/8 and 2/8 in left of allowances of 5/8 in, above a stitch line at 4 - 5/8 in.
    expect(tops.map((top) => Number(top.toFixed(4))).sort()).toEqual([3.5, 3.625]);
    expect(made(panels('- { grade: body, by: 3/4 }')).found[0]).toBe('misses');
  });

  test('what is trimmed to a size has it, and a size that it had not is found out', () => {
    const trim = '- { trim: body, size: [5, 3] }';
    expect(made(panels(trim, finished('body', '5', '3'))).found).toEqual([]);
    expect(made(panels(trim, finished('body', '6', '3'))).found).toEqual(['finished-size']);
  });
});
