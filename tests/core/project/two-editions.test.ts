/** Two editions of one measure, and what their small differences add up to. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { checkAll } from '../../../src/core/project/index.ts';
import { farApart } from '../../../src/core/measure/index.ts';
import { lines, project, resolved } from './files.ts';

const said = (measures: string, pieces = '{}') =>
  lines(resolved(`title: T\nmeasures: { ${measures} }\npieces: ${pieces}`).findings);

describe('two values of one length', () => {
  it.each([
    ['flap: { in: 5 7/8, mm: 198 }', 'flap', '5 7/8 in is ≈ 149 mm, but the metric edition says 198 mm.'],
    ['seam: { in: 3/8, mm: 10 cm }', 'seam', '3/8 in is ≈ 10 mm, but the metric edition says 100 mm.'],
    ['wide: { in: 10, mm: 25 }', 'wide', '10 in is 254 mm, but the metric edition says 25 mm.'],
  ])('far apart are an error: %s', (measures, name, message) => {
    expect(said(measures)).toEqual([
      `error measures > ${name} > mm: editions-apart: ${message} Correct one of them, or say why they differ: editions: <reason>.`,
    ]);
  });

  it('are an error wherever they stand', () => {
    const apart = (pieces: string, more = '') =>
      resolved(`title: T\nmeasures: {}\npieces: ${pieces}\n${more}`).findings.map(({ place, code }) => [
        place.join(' > '),
        code,
      ]);
    expect(apart('{ p: { size: [{ in: 4, mm: 80 }, 4] } }')).toEqual([
      ['pieces > p > size > 0 > mm', 'editions-apart'],
    ]);
    expect(apart('{ p: { size: [4, 4], allowance: { in: 1, mm: 20 } } }')).toEqual([
      ['pieces > p > allowance > mm', 'editions-apart'],
    ]);
    expect(apart('{ p: { size: [4, 4], allowance: { top: { in: 1, mm: 20 }, others: 0 in } } }')).toEqual([
      ['pieces > p > allowance > top > mm', 'editions-apart'],
    ]);
    expect(
      resolved('title: T\nmeasures: { a: 1 }\noptions: { o: { measures: { a: { in: 2, mm: 20 } } } }\npieces: {}')
        .findings,
    ).toMatchObject([{ code: 'editions-apart' }]);
  });

  it.each([
    'ease: { in: 1/8, mm: 3 }',
    'gap: { in: 1/16, mm: 2 }',
    'wide: { in: 10, mm: 250 }',
    'near: { in: 1/8, mm: 5 }',
    'tenth: { in: 2 in, mm: 46 }',
    'zip: { in: 1, mm: 30, editions: metric zips are wider }',
    'slid: { in: 4, mm: 100, between: { in: [2, 6], mm: [50, 150] }, step: { in: 1/4, mm: 1 } }',
  ])('near one another, or with a reason, are none: %s', (measures) => {
    expect(said(measures)).toEqual([]);
  });

  it('may have their reason where they stand', () => {
    const pieces = '{ p: { size: [4, 4], allowance: { in: 1, mm: 20, editions: the foot is narrower } } }';
    expect(said('a: 1', pieces)).toEqual([]);
  });

  it('are far apart by both bounds or not at all', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 2000, noNaN: true }),
        fc.double({ min: 0.1, max: 2000, noNaN: true }),
        (a, b) => {
          expect(farApart(a, b)).toBe(farApart(b, a));
          if (Math.abs(a - b) <= 2 || Math.min(a, b) >= 0.9 * Math.max(a, b)) expect(farApart(a, b)).toBe(false);
          if (Math.abs(a - b) > 2.001 && Math.min(a, b) < 0.899 * Math.max(a, b)) expect(farApart(a, b)).toBe(true);
        },
      ),
    );
  });
});

describe('small differences that a formula adds up', () => {
  const drift = (measures: string, pieces = '{}') =>
    lines(checkAll(project(`title: T\nmeasures: { ${measures} }\npieces: ${pieces}`)));

  it('are a note with both sums', () => {
    const fix = 'Small differences between the editions add up here. Choose values that lie closer together.';
    expect(drift('gap: { in: 1/16, mm: 2 }, gaps: 12 * gap')).toEqual([
      `note measures > gaps: editions-drift: “gaps” comes to 3/4 in, which is ≈ 19 mm, in the inch edition and to 24 mm in the metric edition. ${fix}`,
    ]);
    expect(drift('gap: { in: 1/16, mm: 2 }', '{ rail: { size: [12 * gap, 100 mm] } }')).toContain(
      `note pieces > rail: editions-drift: “rail width” comes to 3/4 in, which is ≈ 19 mm, in the inch edition and to 24 mm in the metric edition. ${fix}`,
    );
  });

  it('are told where they begin, and not of all that rests on it', () => {
    const rests = drift('gap: { in: 1/16, mm: 2 }, gaps: 12 * gap, rail: 2 * gaps', '{ p: { size: [rail, 4] } }');
    expect(rests.filter((line) => line.includes('editions-drift'))).toEqual([
      expect.stringContaining('measures > gaps'),
    ]);
  });

  it('are not told of measures that are meant to differ, nor of what stays near', () => {
    expect(drift('zip: { in: 1, mm: 30, editions: metric zips are wider }, two: 2 * zip')).toEqual([]);
    expect(drift('seam: { in: 1/4, mm: 6 }, seams: 12 * seam')).toEqual([]);
  });
});
