/** Templates in all sizes: a cut line for each, at true scale. */
import { describe, expect, it } from 'vitest';
import { projectDocuments, templatesOfSizes } from '../../../src/core/index.ts';
import { resolved } from '../project/files.ts';
import type { Handout, Shape } from '../../../src/core/index.ts';

const purse = `
title: Small purse
units: metric
measures: { wide: { label: Width }, high: { label: Height }, seam: { mm: 10, in: 3/8 } }
sizes:
  of:
    small: { wide: { mm: 80, in: 3 }, high: { mm: 60, in: 2 } }
    medium: { wide: { mm: 100, in: 4 }, high: { mm: 75, in: 3 } }
    large: { wide: { mm: 120, in: 5 }, high: { mm: 90, in: 4 } }
pieces:
  front: { finished: [wide, high], darts: [{ on: bottom, at: middle, width: 10 mm, length: 30 mm }] }
  tab: { size: [50 mm, 50 mm] }
  strip: { size: [wide, 200 mm], folds: [{ at: 20 mm }] }
`;
const handout = templatesOfSizes(resolved(purse, { edition: 'metric' }), { paper: 'A4' });
const shapes = (of: Handout): Shape[] => of.pages.flatMap(({ scene }) => scene.shapes);
const spanOf = (name: string, of: Handout = handout) => {
  const shape = shapes(of).find((one) => one.name === name);
  if (shape?.kind !== 'path')
    throw new Error(
      `No ${name} among ${shapes(of)
        .map((one) => one.name)
        .join(', ')}`,
    );
  const xs = shape.path.flatMap((command) => (command[0] === 'Z' ? [] : [command[1]]));
  const ys = shape.path.flatMap((command) => (command[0] === 'Z' ? [] : [command[2]]));
  return {
    role: shape.role,
    left: Math.min(...xs),
    low: Math.max(...ys),
    size: [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)].map(
      (mm) => Math.round(mm * 100) / 100,
    ),
  };
};

describe('nested templates', () => {
  it('have a line for each size at true scale, each dashed in its own way, from one corner', () => {
    const [small, medium, large] = ['small', 'medium', 'large'].map((size) => spanOf(`front cut line ${size}`));
    // Finished size and 10 mm on either side, mm for mm on the paper.
    expect([small!.size, medium!.size, large!.size]).toEqual([
      [100, 80],
      [120, 95],
      [140, 110],
    ]);
    expect([small!.role, medium!.role, large!.role]).toEqual(['size 1', 'size 2', 'size 3']);
    expect(new Set([small!.left, medium!.left, large!.left]).size).toBe(1);
    expect(new Set([small!.low, medium!.low, large!.low]).size).toBe(1);
  });

  it('name each size beside its line and in the legend, and say what is cut in each', () => {
    const texts = shapes(handout).flatMap((shape) =>
      shape.kind === 'text' ? [shape.text.replaceAll(/\s/gu, ' ')] : [],
    );
    expect(texts.filter((text) => ['small', 'medium', 'large'].includes(text)).toSorted()).toEqual([
      'large',
      'medium',
      'small',
    ]);
    expect(texts).toEqual(
      expect.arrayContaining([
        'cut line, small',
        'cut line, medium',
        'cut line, large',
        'Cut size 120 mm × 95 mm: medium',
      ]),
    );
  });

  it('draw what is alike in all sizes once, as it is, and leave fold lines to the templates of one size', () => {
    expect(spanOf('tab cut line').role).toBe('cut');
    expect(handout.findings).toEqual([
      'strip has fold lines, which differ from size to size: print the templates of one size for it.',
    ]);
    expect(shapes(handout).some(({ name }) => name.startsWith('strip'))).toBe(false);
  });

  it('do not depend on the size that is chosen', () => {
    const other = templatesOfSizes(resolved(purse, { edition: 'metric', size: 'large' }), { paper: 'A4' });
    expect(spanOf('front cut line small', other).size).toEqual([100, 80]);
    expect(other.pages.length).toBe(handout.pages.length);
  });

  it('are a document of a project that has sizes, and of no other', () => {
    const words = { cautions: {}, defersTo: '' };
    const names = (yaml: string) => projectDocuments(resolved(yaml), words).map(({ name }) => name);
    expect(names(purse)).toContain('templates-all-sizes');
    expect(names('title: One\nmeasures: {}\npieces: { tab: { size: [2 in, 2 in] } }')).not.toContain(
      'templates-all-sizes',
    );
  });

  it('turn with a piece that fits the sheet on its side alone', () => {
    const long = purse.replace('finished: [wide, high]', 'finished: [1.6 * wide, high]');
    const made = templatesOfSizes(resolved(long, { edition: 'metric' }), { paper: 'A4' });
    expect(spanOf('front cut line large', made).size).toEqual([110, 212]);
    expect(spanOf('front cut line small', made).size).toEqual([80, 148]);
  });
});
