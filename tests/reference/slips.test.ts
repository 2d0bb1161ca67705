/**
 * Wrong and rough answers that stand in print, and whether they are understood as what they are.
 *
 * Each row gives the sum as the source means it, the figure it prints and where. Grades of the sources: a textbook of a
 * national institute, a textbook of 1916, and trade and hobby pages.
 */
import { describe, expect, test } from 'vitest';
import { judge, type Judgement, type Question } from '../../src/core/questions/index.ts';
import { patternOf } from '../core/questions/demo.ts';

const inch = (value: number) => value * 25.4;

function slipOf(judgement: Judgement): string {
  return judgement.verdict === 'slip' ? judgement.slip.key : judgement.verdict;
}

test('the square root of 2 taken as 1.4', () => {
  // NIMI (National Instructional Media Institute, Government of India), CITS Dress Making Trade Practical, p. 220:
  // a bias strip from a square of 62.86 cm is given as 62.86 × 1.4 = 88 cm. With the root itself it is 88.9 cm.
  const square = patternOf({ side: 628.6 }, 'metric');
  const found = judge('88 cm', { of: '1.41421 * side' }, square);
  expect(slipOf(found)).toBe('rough-constant');
  expect(found.sentence).toBe('You took 1.4 for the square root of 2. Use more digits, such as 1.4142.');
  expect(judge('88.9 cm', { of: '1.41421 * side' }, square).verdict).toBe('right');
});

describe('strip lengths printed to an eighth of an inch are roundings and no wrong idea', () => {
  // L. I. Baldt, Clothing for Women, Lippincott 1916, ch. XXII: length along the selvage for a bias strip, width × √2.
  // All rows of the table lie within 0.078 in of it. The two worst, the first two, and one that is right to 1/16 in.
  test.each([
    [0.5, '3/4'],
    [1, '1 3/8'],
    [2, '2 3/4'],
    [8, '11 1/4'],
    [5, '7 1/8'],
  ])('a strip of %f in: %s', (width, printed) => {
    const question: Question = { of: '1.41421 * strip width' };
    const found = judge(printed, question, patternOf({ 'strip width': inch(width) }, 'inch'));
    expect(['right', 'near']).toContain(found.verdict);
  });
});

describe('cut off where it should be rounded', () => {
  test('a shopping figure that would leave the buyer short', () => {
    // DRP Inc, measuring for draperies: 63 in of window at three times fullness in 54 in cloth, cut 114 in: 12.667 yd,
    // printed as 12.6. (3.5 widths are bought as 4; 4 × 114 in = 456 in = 12.667 yd.)
    const curtain = patternOf({ need: inch(456) }, 'inch');
    const found = judge('12.6 yd', { of: 'round up need to 3.6 in' }, curtain);
    expect(slipOf(found)).toBe('rounded-down need');
    expect(found.sentence).toBe('You rounded down. Here you round up to 3.6 in.');
  });

  test('a waist radius to a tenth of an inch', () => {
    // Circle skirt post, 2014 (prettyquirkypants.com): half circle for a waist of 26 in, printed 8.2; 26 / 3.14159 is
    // 8.276, which is 8.3 to the nearest tenth.
    const skirt = patternOf({ waist: inch(26) }, 'inch');
    const found = judge('8.2', { of: 'round waist / 3.14159 to 0.1 in' }, skirt);
    // Cut off, or rounded to fifths: both are roundings, so that is what is said.
    expect(found).toMatchObject({
      verdict: 'near',
      sentence: 'The sum is right, but not the rounding. Check which way, and to which mark.',
    });
  });

  test('a square that is too small for the binding', () => {
    // Quilters Question Time, 2021: 3 1/2 in strips, 100 in long: the square is 18.71 in, cut 19 in.
    const binding = patternOf({ 'square side': inch(Math.sqrt(350)) }, 'inch');
    const question: Question = { of: 'round up square side to 1 in' };
    expect(judge('19', question, binding).verdict).toBe('right');
    expect(slipOf(judge('18', question, binding))).toBe('rounded-down square side');
    expect(slipOf(judge('18.71', question, binding))).toBe('not-rounded square side');
  });

  test('one width of cloth too few', () => {
    // Sylvia's Quilt Depot: binding for a quilt of 46 × 46 in from 40 in of usable cloth takes 5 strips (184 / 40 = 4.6).
    const quilt = patternOf({ edge: inch(184), 'usable width': inch(40) }, 'inch');
    const question: Question = { of: 'round up (edge / usable width) to 1' };
    expect(judge('5', question, quilt).verdict).toBe('right');
    expect(slipOf(judge('4', question, quilt))).toBe('rounded-down edge');
    expect(slipOf(judge('4.6', question, quilt))).toBe('not-rounded edge');
  });
});

describe('an allowance on one side only', () => {
  test('a boxed corner measured from the raw edge and from the seam line', () => {
    // Two published conventions. From the raw edges: a square of 1 1/2 in with 1/2 in seams gives a base of 2 in (Best
    // Fabric Store). From the seam lines: 2 in gives 4 in (Lazy Girl Designs). Whoever answers 3 in for the first has
    // doubled the square and left out the seams; whoever takes one seam away gets 2 1/2 in.
    const bag = patternOf({ square: inch(1.5), seam: inch(0.5) }, 'inch', {}, { seam: 'Seam allowance' });
    const question: Question = { of: '2 * square - 2 * seam' };
    expect(judge('2', question, bag).verdict).toBe('right');
    expect(slipOf(judge('3', question, bag))).toBe('left-out seam');
    expect(judge('2 1/2', question, bag)).toMatchObject({
      verdict: 'slip',
      sentence: 'You took away the seam allowance only once. It counts twice.',
    });
  });

  test('a napkin hemmed on all edges', () => {
    // Threads magazine, 2018: 9 in finished with 1 in for the hem at each edge is cut 11 in; By Di, 2011: 40 cm with
    // 2 1/2 cm at each edge is cut 45 cm. One hem only gives 10 in and 42.5 cm.
    const cocktail = patternOf({ 'finished width': inch(9), hem: inch(1) }, 'inch');
    const dinner = patternOf({ 'finished width': 400, hem: 25 }, 'metric');
    const question: Question = { of: 'finished width + 2 * hem' };
    expect(judge('11', question, cocktail).verdict).toBe('right');
    expect(judge('45 cm', question, dinner).verdict).toBe('right');
    expect(slipOf(judge('10', question, cocktail))).toBe('one-side hem');
    expect(slipOf(judge('42.5 cm', question, dinner))).toBe('one-side hem');
  });

  test('pleats that take their depth twice', () => {
    // NIMI, CITS Dress Making Trade Practical, p. 203: pattern width = 2 × pleat depth × number of pleats + width of the
    // pleated section; p. 204: one box pleat of 12 cm depth in 60 cm takes 60 + 2 × 2 × 12 = 108 cm.
    const skirt = patternOf({ 'section width': 600, 'pleat depth': 120 }, 'metric', { folds: 2 });
    const question: Question = { of: 'section width + 2 * folds * pleat depth' };
    expect(judge('108 cm', question, skirt).verdict).toBe('right');
    expect(judge('84 cm', question, skirt).verdict).toBe('hint');
    const more = patternOf({ 'section width': 600, 'pleat depth': 120 }, 'metric', { folds: 3 });
    expect(judge('96 cm', question, more)).toMatchObject({
      verdict: 'slip',
      sentence: 'You counted the pleat depth 3 times. It counts 6 times.',
    });
  });
});

test('a misprint that no sum explains is not explained', () => {
  // NIMI, CITS Dress Making Trade Practical, p. 203 prints 2.34 m where its own sum gives 2.36 m.
  const skirt = patternOf({ 'pattern width': 2360 }, 'metric');
  expect(judge('2.34 m', { of: 'pattern width' }, skirt)).toMatchObject({
    verdict: 'unknown',
    sentence: 'Not yet: 2340\u202fmm is too little.',
  });
});
