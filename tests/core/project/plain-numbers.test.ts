import { describe, expect, it } from 'vitest';
import { check, slipsOf, sumFor } from '../../../src/core/index.ts';
import { lines, resolved } from './files.ts';

const skirt = (number: string, more = '') => `
title: Skirt of a table
units: inch
measures:
  table round: { in: 120, mm: 3000 }
  fullness: ${number}
  cloth round: { is: table round * fullness }
${more}
pieces:
  skirt: { size: [cloth round, 10] }
`;

const slider = '{ number: 1.5, between: [1.2, 2.5], step: 0.1, label: Fullness of the skirt }';

describe('a plain number of the author’s', () => {
  it('is a ratio in both editions, and a learner may change it', () => {
    const { measures } = resolved(skirt(slider));
    expect(measures.fullness).toMatchObject({
      value: 1.5,
      dimension: 0,
      isRatio: true,
      label: 'Fullness of the skirt',
    });
    expect(measures.fullness!.adjustable).toEqual({ kind: 'number', min: 1.2, max: 2.5, step: 0.1, lesson: 1.5 });
    expect(measures['cloth round']!.value).toBeCloseTo(180 * 25.4, 6);
    const fuller = resolved(skirt(slider), { edition: 'metric', values: { fullness: 2.3 } });
    expect(fuller.measures['cloth round']!.value).toBeCloseTo(6900, 6);
    expect(fuller.findings).toEqual([]);
  });

  it('may follow from others, and then stays as it is', () => {
    const { measures } = resolved(skirt('{ number: 3 / 2 }'));
    expect(measures.fullness).toMatchObject({ value: 1.5, isRatio: true });
    expect(measures.fullness).not.toHaveProperty('adjustable');
  });

  it.each([
    [{ fullness: 2.55 }, '“Fullness of the skirt” goes from 1.2 to 2.5 here. The lesson’s 1.5 stays.'],
    [{ fullness: 1.55 }, '“Fullness of the skirt” goes in steps of 0.1 from 1.2. The lesson’s 1.5 stays.'],
    [{ fullness: NaN }, '“Fullness of the skirt” needs a number. The lesson’s 1.5 stays.'],
  ])('%j is refused', (values, message) => {
    const { findings, measures } = resolved(skirt(slider), { values });
    expect(findings.map((finding) => finding.message)).toEqual([message]);
    expect(measures.fullness!.value).toBe(1.5);
  });

  it.each([
    ['{ number: 1.5 in }', '“fullness” is a plain number, but this comes to a size.'],
    ['{ number: 0 - 1 }', '“fullness” comes to -1. A plain number here lies between 0 and 10000.'],
    ['{ number: 1.5, between: [2.5, 1.2] }', 'A number goes from one plain number to a larger one: [1.2, 2.5].'],
    [
      '{ number: 1.5, between: [1.2, 2.5], step: 0 }',
      'The step of a plain number is a plain number above zero, such as 0.1.',
    ],
    ['{ number: 1.5, between: [1, 2], step: 0.3 }', 'Steps of 0.3 from 1 never come to 2.'],
    [
      '{ number: table round / 80 in, between: [1, 2] }',
      'A learner can choose a number that is written out, such as 1.5.',
    ],
    ['{ number: 1.5, count: 2 }', '“fullness” gets its value twice: by “count” and “number”.'],
  ])('%s is told at its place', (number, message) => {
    const { findings } = resolved(skirt(number));
    expect(findings.map((finding) => finding.message)).toContain(message);
    expect(findings.every(({ place }) => place[0] === 'measures' && place[1] === 'fullness')).toBe(true);
  });

  it('is no count: nobody takes one fullness too few', () => {
    const pattern = resolved(skirt('{ number: 2 }'));
    const sum = sumFor('cloth round', pattern);
    if (!sum.ok) throw new Error(sum.fault.message);
    const keys = slipsOf({ of: 'cloth round' }, sum.value, pattern).map(({ key }) => key);
    expect(keys).not.toContain('one-too-few fullness');
  });
});

describe('a measure with the name of a piece’s number', () => {
  const strap = (measure: string) => `
title: Strap
units: inch
measures:
  seam: { in: 1/4, mm: 6 }
  strap width: 1
  strap length: { is: 10 * strap width }
pieces:
  strap: { size: [4 * strap width, strap length] }
  lining: { like: strap, inset: 1/8 }
  mark: { size: [${measure}, 2] }
`;

  it('goes before it, with a note, and the piece keeps its own size', () => {
    const pattern = resolved(strap('strap width'));
    expect(pattern.pieces.strap!.size).toEqual({ width: 101.6, height: 254 });
    expect(pattern.pieces.mark!.size.width).toBeCloseTo(25.4, 9);
    // What is cut like the strap follows the piece, and not the measure.
    expect(pattern.pieces.lining!.size.width).toBeCloseTo(101.6 - 6.35, 9);
    expect(lines(check(pattern)).filter((line) => line.includes('name-hides'))).toEqual([
      'note measures > strap width: name-hides: The piece “strap” has a number of this name, too. Formulas take the measure.',
      'note measures > strap length: name-hides: The piece “strap” has a number of this name, too. Formulas take the measure.',
    ]);
    expect(pattern.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  it('does not reach what is cut like a drawn outline', () => {
    const { pieces } = resolved(`
title: Leaf
units: metric
measures:
  leaf width: { mm: 10, in: 3/8 }
pieces:
  leaf: { outline: [[0, 0], [100, 0], [60, 80]], allowance: 0 }
  copy: { like: leaf }
  mark: { size: [copy finished width, copy width] }
`);
    expect(pieces.mark!.size).toEqual({ width: 100, height: 100 });
  });
});
