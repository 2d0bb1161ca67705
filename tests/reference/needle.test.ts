/** Needles by the cloth and stitch lengths by the stack, against tables of the trade. */
import { describe, expect, it } from 'vitest';
import { needlesNeed, ONE, resolveProject, suits, weightOf } from '../../src/core/index.ts';
import { project, shelf } from '../core/project/files.ts';

describe('needle sizes', () => {
  it('name one blade by both numbers', () => {
    // NM = 60 + 5 (US - 8) for sizes below 19 (Apparel Science, Needle number system).
    for (const cloth of [0.2, 0.3, 0.5, 1]) {
      for (const thickness of [0.4, 2, 4]) {
        const { nm, us } = suits({ thickness, cloth });
        expect(us).toBeLessThan(19);
        expect(nm).toBe(60 + 5 * (us - 8));
      }
    }
  });

  it.each([
    // Treadle Yard Goods (2021): lawn and batiste 70; muslin and light linen 80; linen and light twill 90; denim 100.
    // How thick these cloths are: from memory, but for denim (Journal of Textiles 2016, article 4614168, table 5).
    ['lawn', 0.2, 70],
    ['quilting cotton', 0.3, 80],
    ['light linen', 0.35, 80],
    ['linen', 0.5, 90],
    ['denim', 0.8, 100],
    ['denim', 1.188, 100],
  ])('suit two layers of %s of %f mm', (_, cloth, nm) => {
    expect(suits({ thickness: Math.min(1.5, 2 * cloth), cloth })).toMatchObject({ nm, raised: 0 });
  });

  it('lie within what is made for a home machine', () => {
    // A shop's guide (sewansome): universal needles NM 60 to 120, jeans needles 70 to 110. Maker's manuals go to US 16
    // (Janome 415) and 14/90 (Siruba HSP-68100) for heavy cloth.
    for (let thickness = 0.1; thickness < 15; thickness += 0.1) {
      for (const cloth of [0, 0.1, 0.3, 0.5, 1.2, 3]) {
        const { nm, point } = suits({ thickness, cloth });
        expect(nm).toBeGreaterThanOrEqual(70);
        expect(nm).toBeLessThanOrEqual(110);
        if (nm >= 100) expect(point).toBe('jeans');
      }
    }
  });

  it('rise by two sizes at the most, and never fall with the stack', () => {
    for (const cloth of [0.2, 0.3, 0.5, 1]) {
      const own = suits({ thickness: cloth, cloth }).nm - 10 * suits({ thickness: cloth, cloth }).raised;
      let least = 0;
      for (let thickness = 0; thickness < 12; thickness += 0.05) {
        const { nm, stitch, raised } = suits({ thickness, cloth });
        expect(nm).toBeGreaterThanOrEqual(least);
        expect(nm - own).toBe(10 * raised);
        expect(raised).toBeLessThanOrEqual(2);
        expect(stitch[0]).toBeLessThan(stitch[1]);
        least = nm;
      }
    }
  });

  it('suit a seam in quilting cotton as a domestic machine is set', () => {
    // Two layers of about 0.3 mm (from memory). Regular seam 2.5 mm, from 2 to 3 (Easy Sewing Techniques, course notes).
    expect(suits({ thickness: 0.6, cloth: 0.3 })).toMatchObject({ weight: 'medium', nm: 80, stitch: [2, 3] });
  });

  it('take two layers of denim for a heavy stack', () => {
    // Journal of Textiles 2016, article 4614168, table 5: six denims, thickness in mm.
    for (const mm of [1.066, 1.188, 0.801, 1.04, 0.887, 0.973]) expect(weightOf(2 * mm)).toBe('heavy');
  });
});

describe('a linen napkin', () => {
  const napkin = (linen: string) =>
    resolveProject(
      project(
        `title: T\nunits: metric\nmeasures: { seam: 10 }\nmaterials: { linen: ${linen} }\n` +
          'pieces: { napkin: { from: linen, size: [420, 420], allowance: 0 } }\n' +
          'steps: [{ hem: napkin, fold: 10, then: 10, corners: mitred }]',
      ),
      {
        materials: {
          ...shelf(),
          hide: { kind: 'cloth', needle: 'leather', thickness: { mm: 1, source: 'from memory' } },
        },
      },
    );

  it('takes a needle by its cloth, however many layers meet in its corners', () => {
    const needs = needlesNeed(napkin('table linen'), ONE);
    expect(needs).toHaveLength(1);
    expect(needs[0]!.suits.nm).toBeGreaterThanOrEqual(80);
    expect(needs[0]!.suits.nm).toBeLessThanOrEqual(100);
  });

  it('takes the point that its material asks for', () => {
    expect(needlesNeed(napkin('hide'), ONE).map(({ suits: { nm, point } }) => [nm, point])).toEqual([[110, 'leather']]);
  });
});
