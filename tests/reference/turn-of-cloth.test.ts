/**
 * Turn of cloth against the bend allowance of sheet-metal handbooks and against published sizes of collars.
 *
 * Read: Machinery's Handbook, 26th edition, as cited at vedge.org/kfac.html; US Navy aviation structural mechanic
 * training manual (tpub.com/air/13-19.htm); Sheet Metal Workbook, 6th edition, 2012
 * (sheetmetalworkbook.com/neutral line 90.htm); J. Barlup, Understand Turn-of-Cloth, Threads magazine no. 131, 2009;
 * Journal of Textiles 2016, article 4614168, table 5, thickness of six denims.
 */
import { describe, expect, it, test } from 'vitest';
import { bendAllowance, turnOfCloth } from '../../src/core/cloth/index.ts';
import { check, makeUp } from '../../src/core/project/index.ts';
import { lines, resolved } from '../core/project/files.ts';

const INCH = 25.4;

describe('bend allowance', () => {
  it("is A (pi / 180)(R + K T) for the steels of Machinery's Handbook: R 0.030 in, K 0.438, 0.467, 0.459", () => {
    for (const [thick, k] of [
      [0.048, 0.438],
      [0.06, 0.467],
      [0.093, 0.459],
    ] as const) {
      const published = 90 * (Math.PI / 180) * (0.03 + k * thick);
      expect(bendAllowance(90, 0.03 * INCH, thick * INCH, k) / INCH).toBeCloseTo(published, 12);
    }
  });
  it('is (0.0173 R + 0.0078 T) times the degrees in the Navy manual, its factors cut to four places, K 0.45', () => {
    // The manual's 0.0173 is pi / 180 = 0.01745 short by 0.9 %, and its 0.0078 is 0.45 times 0.0173.
    for (const degrees of [30, 90, 120]) {
      const published = (0.0173 * 0.16 + 0.0078 * 0.04) * degrees;
      const ours = bendAllowance(degrees, 0.16, 0.04, 0.45);
      expect(Math.abs(ours / published - 1)).toBeLessThan(0.01);
    }
  });
  it('is a quarter of a circle at 0.43 T in the Sheet Metal Workbook', () => {
    const [radius, thick] = [1.5, 1.52];
    expect(bendAllowance(90, radius, thick, 0.43)).toBeCloseTo(((radius + 0.43 * thick) * 2 * Math.PI) / 4, 12);
  });
});

describe('turn of cloth', () => {
  it('of one layer with nothing in the fold is the formula with R = 0 and K = 0.5', () => {
    expect(turnOfCloth([0.3])).toEqual([{ bend: bendAllowance(180, 0, 0.3, 0.5), longer: 0 }]);
  });
  it('each layer is longer than the one inside it by the way between their middles, however large the bend', () => {
    // (R + T / 2) of neighbours differ by half of one and half of the other, so that R drops out of the formula.
    for (const round of [0, 2, 5]) {
      const [, second, third] = turnOfCloth([0.3, 0.5, 0.2], round);
      expect(second!.longer).toBeCloseTo(Math.PI * 0.4, 12);
      expect(third!.longer - second!.longer).toBeCloseTo(Math.PI * 0.35, 12);
    }
  });
  it('of a binding round the edge of a quilt is half a circle about the edge', () => {
    const [binding] = turnOfCloth([0.3], 4);
    expect(binding!.bend).toBeCloseTo(Math.PI * (2 + 0.5 * 0.3), 12);
  });
  it('of two layers of a cloth of about 1 mm is about the 1/8 in that an under collar is made smaller (Threads)', () => {
    // The denims of table 5, as they are about as thick as the cloth of a coat; that comparison is common practice.
    const denims = [1.066, 1.188, 0.801, 1.04, 0.887, 0.973];
    const longer = denims.map((thick) => turnOfCloth([thick, thick])[1]!.longer);
    expect(Math.min(...longer)).toBeLessThan(INCH / 8);
    expect(Math.max(...longer)).toBeGreaterThan(INCH / 8);
    const mean = longer.reduce((sum, one) => sum + one, 0) / longer.length;
    expect(Math.abs(mean - INCH / 8)).toBeLessThan(0.25);
  });
});

describe('what an author and a learner are told', () => {
  /** Cloth of a coat, about 1 mm thick, and a lining of 1 mm, both as thick as the mean of the denims above. */
  const coat = (steps: string) =>
    resolved(
      `
title: A flap
units: inch
measures: { seam: 1/2 }
materials: { outer: coating, lining: quilted lining }
pieces:
  front: { from: outer, size: [9, 6] }
  back: { from: lining, like: front }
  flap: { from: outer, size: [6, 4], allowance: { top: 1/2, others: 0 } }
  strip: { from: outer, cut: 3, size: [4, 8], allowance: 0 }
  tall: { from: outer, size: [9, 8], allowance: 0 }
  pocket: { from: outer, size: [9, 4], allowance: 0 }
  pad: { from: outer, cut: 2, size: [4, 4], allowance: 0 }
steps:
${steps.trim().replace(/^\s*/gmu, '  ')}
`,
      {
        materials: {
          coating: { kind: 'cloth', thickness: { mm: 1, source: 'about the mean of six denims' } },
          'quilted lining': { kind: 'cloth', lining: true, thickness: { mm: 1, source: 'as thick' } },
        },
      },
    );
  const notes = (steps: string) => lines(check(coat(steps))).filter((line) => line.includes('turn-of-cloth'));
  const PAIR = '- { sew round: [front, back], gap: { edge: bottom, length: 5 }, makes: bag }';

  test('a lining that is turned inside has about the 1/8 in less that an under collar is made smaller (Threads)', () => {
    expect(notes(`${PAIR}\n- { turn: bag }`)).toEqual([
      'note steps > 1: turn-of-cloth: Inside the turned edges “lining” has about 1/8 in less way round than the outside. ' +
        'Take that off the lining in its seams, or roll the outside over the edge in pressing, and say so in this step: ' +
        'turn of cloth: 1/8 in.',
    ]);
    expect(makeUp(coat(`${PAIR}\n- { turn: bag }`)).at(-1)!.advice).toBe(
      'Let the outside roll a little over the edge as you press: it goes about 1/8 in farther round than the lining.',
    );
    expect(notes(`${PAIR}\n- { turn: bag, turn of cloth: 1/8 }`)).toEqual([]);
    // Two cloths of one kind have nothing inside the other.
    expect(notes('- { sew round: [front, flap], gap: { edge: bottom, length: 5 } }\n- { turn: front }')).toEqual([]);
  });

  test('layers folded together: the outermost of three goes pi times the way between the middles farther round', () => {
    const stack = (more = '') =>
      `- { lay: strip, on: strip, makes: two }\n- { lay: strip, on: two, makes: three }\n- { fold: three, at: 4${more} }`;
    const [note] = check(coat(stack())).filter(({ code }) => code === 'turn-of-cloth');
    expect(note).toMatchObject({ severity: 'note', amount: expect.closeTo(2 * Math.PI, 9) as number });
    expect(note!.message).toContain('the outermost of 3 layers goes about 1/4 in farther round');
    expect(notes(stack(', turn of cloth: 1/4'))).toEqual([]);
    // A single layer has nobody to be compared with.
    expect(notes('- { fold: strip, at: 4 }')).toEqual([]);
  });

  test('a flap goes half a circle round what lies in its fold', () => {
    const steps = (more = '') =>
      `- { lay: pocket, on: tall, at: bottom, makes: body }
       - { lay: pad, on: pad, makes: two }
       - { lay: two, on: body, at: [bottom, bottom], makes: filled }
       - { fold: filled, only: [tall], from: top, at: 4${more} }`;
    const [note] = check(coat(steps())).filter(({ code }) => code === 'turn-of-cloth');
    // Two pads and the pocket lie in the fold, 3 mm, and 1 mm goes round them.
    expect(note).toMatchObject({ amount: expect.closeTo(bendAllowance(180, 3 / 2, 1), 9) as number });
    expect(notes(steps(', turn of cloth: 1/4'))).toEqual([]);
    expect(notes(steps(', turn of cloth: 1/16'))[0]).toContain('The step allows 1/16 in.');
  });

  test('quilting cotton turned with its lining needs no more than a ruler shows, and nobody is told', () => {
    const pattern = resolved(`
title: A pouch
units: inch
measures: { seam: 1/4 }
materials: { outer: cotton, lining: { use: cotton, lining: true } }
pieces: { front: { from: outer, size: [6, 6] }, back: { from: lining, like: front } }
steps:
  - { sew round: [front, back], gap: { edge: bottom, length: 3 }, makes: bag }
  - { turn: bag }
`);
    expect(check(pattern).filter(({ code }) => code === 'turn-of-cloth')).toEqual([]);
    expect(makeUp(pattern).map(({ advice }) => advice)).toEqual([undefined, undefined]);
  });
});
