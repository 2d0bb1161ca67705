/**
 * Turn of cloth against the bend allowance of sheet-metal handbooks and against published sizes of collars.
 *
 * Read: Machinery's Handbook, 26th edition, as cited at vedge.org/kfac.html; US Navy aviation structural mechanic
 * training manual (tpub.com/air/13-19.htm); Sheet Metal Workbook, 6th edition, 2012
 * (sheetmetalworkbook.com/neutral line 90.htm); J. Barlup, Understand Turn-of-Cloth, Threads magazine no. 131, 2009;
 * Journal of Textiles 2016, article 4614168, table 5, thickness of six denims.
 */
import { describe, expect, it } from 'vitest';
import { bendAllowance, turnOfCloth } from '../../src/core/cloth/index.ts';

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
