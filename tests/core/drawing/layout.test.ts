/** The drawing of a layout, measured with a ruler: to scale, numbered as its text is, and legible in any room. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutSentences, drawLayout, layOut, numbered, polygon, rectangle } from '../../../src/core/index.ts';
import { runs } from '../../random.ts';
import { anyEdition, anyGrid, anyWidth } from './pieces.ts';
import { areaOf, faults, pathNamed, paths, stops, textNamed, texts } from './read.ts';
import type { Cloth, Demand, LaidCloth } from '../../../src/core/index.ts';

const bolt: Cloth = { name: 'linen', kind: 'bolt', width: 1400, selvage: 20 };
const demand: Demand = [
  { name: 'runner', label: 'Runner', outline: rectangle(400, 1100), count: 1 },
  { name: 'napkin', label: 'Napkin', outline: rectangle(450, 450), count: 4 },
];
const laidOn = (cloth: Cloth, pieces: Demand = demand): LaidCloth => layOut(pieces, [cloth]).cloths[0]!;
const labels = { runner: 'Runner', napkin: 'Napkin' };
const scene = drawLayout(laidOn(bolt), { edition: 'metric', labels, title: 'Linen', fit: { width: 120 } });

const sizeOf = (name: string) => {
  const points = stops(pathNamed(scene, name));
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)].map((mm) => mm / scene.scale);
};

describe('a layout', () => {
  it('shows every piece to scale, where it lies', () => {
    const [runner, ...napkins] = numbered(laidOn(bolt).placements).map(({ n }) => sizeOf(`piece ${n}`));
    expect(runner![0]).toBeCloseTo(400, 3);
    expect(runner![1]).toBeCloseTo(1100, 3);
    for (const [width, height] of napkins) expect([Math.round(width!), Math.round(height!)]).toEqual([450, 450]);
    const pieces = paths(scene).filter(({ name }) => /^piece \d+$/.test(name));
    const area = pieces.reduce((sum, { path }) => sum + Math.abs(areaOf(path)), 0) / scene.scale ** 2;
    expect(area).toBeCloseTo(400 * 1100 + 4 * 450 * 450, 0);
  });

  it('says the length and the width, and numbers the pieces as its text does', () => {
    expect(textNamed(scene, 'width 1')).toBe('1400\u202fmm');
    expect(textNamed(scene, 'length 1')).toBe('1100\u202fmm');
    expect(scene.text).toEqual([
      'Linen, 1400 millimetres wide. 5 pieces take 1100 millimetres.',
      '1. Runner: 20 millimetres from the left, 0 millimetres from the cut end, 400 millimetres across, 1100 millimetres along the selvage.',
      ...scene.text.slice(2),
    ]);
    expect(scene.text).toHaveLength(6);
    expect(texts(scene).flatMap(({ name, text }) => (name.startsWith('number ') ? [text] : []))).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
    ]);
    expect(paths(scene).some(({ name }) => name === 'selvages')).toBe(true);
  });

  it('of thousands of pieces is still drawn, and told as so many', () => {
    const many = laidOn({ ...bolt, width: 1000 }, [{ name: 'square', outline: rectangle(50, 50), count: 2000 }]);
    const drawn = drawLayout(many, { edition: 'metric' });
    expect(drawn.text).toHaveLength(1);
    expect(drawn.text[0]).toContain('2000 pieces take');
    expect(texts(drawn).filter(({ name }) => name.startsWith('number '))).toEqual([]);
  });

  it('can be read in any room', () => {
    const anyDemand = fc.array(
      fc.record({
        name: fc.constantFrom('a', 'b', 'c', 'd'),
        width: fc.integer({ min: 20, max: 700 }),
        height: fc.integer({ min: 20, max: 900 }),
        count: fc.integer({ min: 1, max: 6 }),
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(anyDemand, anyEdition, anyGrid, anyWidth, fc.boolean(), (pieces, edition, grid, width, isPreCut) => {
        const cloth: Cloth = isPreCut ? { name: 'quarter', kind: 'pre-cut', width: 700, length: 900 } : bolt;
        const wanted = pieces.map(({ name, width: w, height, count }, i) => ({
          name: `${name}${i}`,
          outline: rectangle(w, height),
          count,
        }));
        const [laid] = layOut(wanted, [cloth], { tries: 4 }).cloths;
        if (laid) expect(faults(drawLayout(laid, { edition, grid, fit: { width } }))).toEqual([]);
      }),
      runs(150),
    );
  });
});

describe('the cuts in words', () => {
  const cuts = (pieces: Demand, width: number) =>
    cutSentences(layOut(pieces, [{ name: 'linen', kind: 'bolt', width }], { manner: 'straight cuts' }).cloths[0]!, {
      labels: { ...labels, flap: 'Flap' },
      set: (mm) => `${mm} mm`,
    });

  it('follow each other as a person cuts, alike ones in a row as one', () => {
    // By hand: a strip of 450 mm, three napkins off it, and what is left of 1400 mm is waste.
    expect(cuts([{ name: 'napkin', outline: rectangle(450, 450), count: 3 }], 1400)).toEqual([
      'The cloth: measure 450 mm and cut from selvage to selvage. That is strip A.',
      'Strip A: measure 450 mm and cut along the selvage, 3 times. These are Napkin (1), Napkin (2) and Napkin (3). Waste is left.',
    ]);
    // And where nothing is left the last one needs no cut.
    expect(cuts([{ name: 'napkin', outline: rectangle(450, 450), count: 3 }], 1350).at(-1)).toBe(
      'Strip A: measure 450 mm and cut along the selvage, 2 times. These are Napkin (1) and Napkin (2). Napkin (3) is left.',
    );
  });

  it('end with the pieces that are no rectangles', () => {
    const flap = polygon([
      { x: 0, y: 20 },
      { x: 20, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 80 },
      { x: 0, y: 80 },
    ]);
    expect(cuts([{ name: 'flap', outline: flap, count: 1 }], 300).at(-1)).toBe(
      'Now cut Flap (1) to shape, by the template.',
    );
  });
});
