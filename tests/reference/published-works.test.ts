/**
 * Published examples that are sewn and not only reckoned: the steps of a file are made up, and the work must come out as
 * large as its source prints.
 */
import { describe, expect, test } from 'vitest';
import { alongSelvage, biasFromSquare, squareForBias, stripsFor } from '../../src/core/kit/index.ts';
import { check, makeUp, MaterialsFile } from '../../src/core/project/index.ts';
import { resolved } from '../core/project/files.ts';
import type { Pattern } from '../../src/core/project/index.ts';

const inch = 25.4;

/** The file of some pieces and steps, worked out in its home unit. */
function patternOf(pieces: string, steps: string, measures = 'seam: 1/4', units: 'inch' | 'metric' = 'inch'): Pattern {
  const indented = (lines: string) => lines.trim().replace(/^\s*/gmu, '  ');
  return resolved(
    `title: From a page\nunits: ${units}\nmeasures: { ${measures} }\npieces:\n${indented(pieces)}\nsteps:\n${indented(steps)}\n`,
    { edition: units },
  );
}

const mistakesIn = (pattern: Pattern): string[] =>
  check(pattern).flatMap(({ severity, code }) => (severity === 'error' ? [String(code)] : []));

/** Width and height of the last work of a file, in its home unit. */
function sewn(pieces: string, steps: string, measures = 'seam: 1/4', units: 'inch' | 'metric' = 'inch'): number[] {
  const pattern = patternOf(pieces, steps, measures, units);
  expect(mistakesIn(pattern)).toEqual([]);
  const { size } = makeUp(pattern).at(-1)!;
  return [size.width, size.height].map((mm) => Number((mm / (units === 'inch' ? inch : 10)).toFixed(6)));
}

describe('patchwork', () => {
  // Four patches of one cut size, unfinished: Quilting Board, four-patch posts.
  test.each([
    [2.5, 4.5],
    [3, 5.5],
    [3.5, 6.5],
  ])('a four-patch of squares cut %f comes to %f before it is set in', (cut, published) => {
    const size = sewn(
      `patch: { cut: 4, size: [${cut}, ${cut}] }`,
      `- { join: [patch, patch], at: [right, left], makes: upper }
       - { join: [patch, patch], at: [right, left], makes: lower }
       - { join: [upper, lower], at: [bottom, top], makes: block }`,
    );
    expect(size).toEqual([published, published]);
  });

  // The same from two strips that are sewn together and cut apart.
  test.each([
    [2.5, 4.5],
    [3, 5.5],
    [3.5, 6.5],
  ])('and so does one of strips of %f that are cut apart', (cut, published) => {
    const size = sewn(
      `light: { size: [${2 * cut}, ${cut}] }\n  dark: { like: light, allowance: seam }`,
      `- { sew in rows: [light, dark], makes: set }
       - { cut apart: set, every: ${cut}, makes: pair }
       - { sew in rows: [[pair, pair turned round]], makes: block }`,
    );
    expect(size).toEqual([published, published]);
  });

  // How to measure and cut triangles (2018) and Half Square Triangle Formula (2009): finished + 7/8, unfinished + 3/8.
  test.each([
    [2.875, 2],
    [3.875, 3],
  ])('squares of %f give triangle squares of %f, finished, and a sixteenth less does not', (square, finished) => {
    const unit = finished + 0.5;
    const steps = `- { triangles: [light, dark], makes: unit }\n- { trim: unit, size: [${unit}, ${unit}] }`;
    const pieces = (side: number) => `light: { size: [${side}, ${side}] }\n  dark: { like: light, allowance: seam }`;
    expect(sewn(pieces(square), steps)).toEqual([unit, unit]);
    expect(mistakesIn(patternOf(pieces(square - 1 / 16), steps))).toEqual(['too-deep']);
  });

  // Three blocks of 10 in and four strips of 1 in: 34 (sashing page, relay); five and four of 2 in: 58 (Our Pastimes).
  test.each([
    [3, 4, 1, 34],
    [5, 4, 2, 58],
  ])('a row of %i blocks of 10 in and %i strips of %f in is %f long, finished', (blocks, strips, sash, published) => {
    const ends = strips > blocks ? ['sash'] : [];
    const row = Array.from({ length: blocks }, () => 'block').join(', sash, ');
    const [width] = sewn(
      `block: { cut: ${blocks}, size: [10 1/2, 10 1/2] }\n  sash: { cut: ${strips}, size: [${sash + 0.5}, 10 1/2] }`,
      `- { sew in rows: [[${[...ends, row, ...ends].join(', ')}]], makes: row }`,
    );
    expect(width! - 0.5).toBe(published);
  });

  // A centre of 3 in and strips of 1 3/4 in: the logs of a round are cut as long as the side they meet (log cabin page).
  test.each([
    [1, 4.25],
    [2, 5.5],
    [3, 6.75],
    [4, 8],
    [6, 10.5],
  ])('a log cabin: after %i strips at each of two sides it is %f', (k, published) => {
    const logs = Array.from({ length: k }, (_, i) => 3 + 1.25 * i);
    const size = sewn(
      [
        'centre: { size: [3, 3] }',
        ...logs.map(
          (side, i) => `right ${i}: { size: [1 3/4, ${side}] }\n  top ${i}: { size: [${side + 1.25}, 1 3/4] }`,
        ),
      ].join('\n'),
      logs
        .map(
          (_, i) =>
            `- { join: [${i === 0 ? 'centre' : 'block'}, right ${i}], at: [right, left], makes: block }
             - { join: [block, top ${i}], at: [top, bottom], makes: block }`,
        )
        .join('\n'),
    );
    expect(size).toEqual([published, published]);
  });
});

describe('straps folded in four', () => {
  // Craftbits: 10 cm. Little Sister Sewing: 4 in. A class handout of 2009: 5 in. Alamosa Quilter, tabs: 2 in.
  test.each([
    ['4', 1],
    ['5', 1.25],
    ['2', 0.5],
  ])('a strip of %s in comes to %f', (strip, published) => {
    const [width] = sewn(`strap: { size: [${strip}, 20], allowance: 0 }`, '- { fold in four: strap }');
    // A page that says twice the wanted width (Bethany Sew and Sew, 2010) has edges that meet and a fold: four times.
    expect(width).toBe(published);
  });
});

test('a napkin cut 20 3/4 with folds of 3/8 and 1 1/4 comes to 17 1/2; the page prints 17 (Everything Sewing, 2016)', () => {
  const steps = '- { hem: napkin, at: all, fold: 3/8, then: 1 1/4, corners: mitred }';
  expect(sewn('napkin: { size: [20 3/4, 20 3/4], allowance: 0 }', steps)).toEqual([17.5, 17.5]);
});

test('a tote with squares of 2 in cut out at the raw edges and 1/2 in seams: 19 in wide becomes 14, 13 high becomes 10', () => {
  // Cut out 2 in from the raw edges and sewn 1/2 in farther in, the corners are boxed 2 in from the seam lines.
  const [width, height] = sewn(
    'front: { size: [19, 13] }\nback: { like: front, allowance: seam }',
    `- { sew round: [front, back], open: [top], makes: bag }
     - { box corner: bag, at: [bottom left, bottom right], square: 2, from: seam }
     - { turn: bag }`,
    'seam: 1/2',
  );
  // The page counts the seam at the top as well, which is sewn later.
  expect([width, height! - 0.5]).toEqual([14, 10]);
});

describe('strips and squares', () => {
  test.each([
    // Pages on binding and piping: what is sewn, the strips or the side they print.
    ['strips for 950 in of welt on 54 in cloth', stripsFor(950 * inch, 54 * inch, 0), 18],
    ['strips for 424 in at 40 in (Quilting Board)', stripsFor(424 * inch, 40 * inch, 0), 11],
    ['strips for a quilt of 60 x 72 and 10 in more at 40 in', stripsFor(274 * inch, 40 * inch, 0), 7],
    ['strips for 104 in at 42 in (Melanie Ham)', stripsFor(104 * inch, 42 * inch, 0), 3],
    ['bias of 3 in from a square of 30 in', biasFromSquare(30 * inch, 3 * inch) / inch, 300],
    ['the square for 450 in of 2 1/4, rounded up', Math.ceil(squareForBias(450 * inch, 2.25 * inch) / inch), 32],
    ['the square for 55 in of 2 1/2, rounded up', Math.ceil(squareForBias(55 * inch, 2.5 * inch) / inch), 12],
    ['the longest bias cut in 54 in cloth, rounded', Math.floor(alongSelvage(54 * inch) / inch), 76],
  ])('%s', (_what, ours, published) => expect(ours).toBeCloseTo(published, 6));
});

describe('zips and buttons', () => {
  // Alamosa Quilter, basic zipper bag (2015): the zip is cut 1 in shorter than the lining's top edge, 8 3/4 in here, and a tab
  // at each end makes that up. National Sewing Circle has the same inch.
  test('a zip that is cut 1 in shorter than the panel has its width with a tab at each end', () => {
    const size = sewn(
      `zip: { size: [12, 1 1/4], allowance: 0 }
       tab: { cut: 2, size: [2, 1 1/4], allowance: 0 }`,
      `- { trim: zip, at: right, width: 8 3/4 }
       - { fold: tab, from: left, at: 1, lands: under }
       - { lay: tab, on: zip, at: [left, left], overlap: 1/2, turned: round }
       - { lay: tab, on: zip, at: [right, left], overlap: 1/2, turned: round }`,
    );
    expect(size).toEqual([9.75, 1.25]);
  });

  // Diameter and thickness: About.com Sewing (1999) and F. Bustad from a tailoring book (2010). A flat button's 1/8 in:
  // learnsomethingnew365 (2012, from sewing books).
  test.each([
    [0.75, 0.875],
    [0.5, 0.625],
    [1, 1.125],
  ])('the buttonhole of a flat button of %f in is %f in long', (across, published) => {
    const materials = MaterialsFile.parse({
      flat: {
        kind: 'hardware',
        hardware: 'button',
        across: { in: String(across), mm: across * inch, source: 'of the row' },
        thickness: { mm: inch / 8, source: 'of the row' },
      },
    });
    const yaml = `title: From a page
units: inch
measures: { seam: 1/4 }
materials: { knob: flat }
pieces: { flap: { size: [4, 4] } }
steps: [{ buttonhole: flap, for: knob, from top: 1 }]
`;
    const [step] = makeUp(resolved(yaml, { edition: 'inch', materials }));
    // The slit is sewn down on one side and up on the other.
    expect(step!.stitches[0]!.length / 2 / inch).toBeCloseTo(published, 6);
  });
});
