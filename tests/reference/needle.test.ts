/** Needles and stitch lengths by the thickness of the stack, against tables of the trade. */
import { describe, expect, it } from 'vitest';
import { suits } from '../../src/core/index.ts';

describe('needle sizes', () => {
  it('name one blade by both numbers', () => {
    // NM = 60 + 5 (US - 8) for sizes below 19 (Apparel Science, Needle number system).
    for (const mm of [0.3, 1, 2, 4]) {
      const { nm, us } = suits(mm);
      us.forEach((number, i) => {
        if (number < 19) expect(nm[i]).toBe(60 + 5 * (number - 8));
      });
    }
  });

  it.each([
    // Texpedia, Needles for stitching textiles (2013): woven light, medium, heavy; denim heavy.
    ['light', 0.4, [65, 75]],
    ['medium', 1, [80, 90]],
    ['heavy', 2, [100, 110]],
    ['very heavy', 4, [110, 140]],
  ] as const)('suit %s cloth', (weight, mm, nm) => {
    expect(suits(mm)).toMatchObject({ weight, nm });
  });

  it('suit two layers of denim as heavy cloth does', () => {
    // Journal of Textiles 2016, article 4614168, table 5: six denims, thickness in mm.
    for (const mm of [1.066, 1.188, 0.801, 1.04, 0.887, 0.973]) expect(suits(2 * mm).weight).toBe('heavy');
  });

  it('suit a seam in quilting cotton as a domestic machine is set', () => {
    // Two layers of about 0.3 mm (from memory). Regular seam 2.5 mm, from 2 to 3 (Easy Sewing Techniques, course notes).
    expect(suits(2 * 0.3)).toMatchObject({ weight: 'medium', stitch: [2, 3] });
  });
});

describe('the table', () => {
  it('has an answer for every stack, and never a finer needle for a thicker one', () => {
    let least = 0;
    for (let mm = 0; mm < 12; mm += 0.05) {
      const { nm, stitch } = suits(mm);
      expect(nm[0]).toBeGreaterThanOrEqual(least);
      expect(stitch[0]).toBeLessThan(stitch[1]);
      [least] = nm;
    }
  });
});
