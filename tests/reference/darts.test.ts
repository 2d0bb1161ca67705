/** Darts of published skirt blocks. */
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { makeUp, ProjectFile, resolveProject } from '../../src/core/index.ts';

/**
 * Half a back and half a front of a skirt block: a quarter of the waist, 2 cm for the dart, and 1.2 cm of ease in the back,
 * none in the front; darts of 12 x 2 and 10 x 2 cm (WikiEducator, Handout for drafting skirt block).
 */
const block = (waist: number) => `
title: Skirt block
units: metric
measures: { waist: { mm: ${waist}, in: ${waist / 25.4} } }
pieces:
  back: { size: [waist / 4 + 32 mm, 200 mm], allowance: 0, darts: [{ on: top, at: middle, width: 20 mm, length: 120 mm }] }
  front: { size: [waist / 4 + 20 mm, 200 mm], allowance: 0, darts: [{ on: top, at: middle, width: 20 mm, length: 100 mm }] }
steps: [{ dart: back }, { dart: front }]
`;

test.each([640, 720, 880])(
  'the blocks of a waist of %s mm come to the waist and its ease once their darts are sewn',
  (waist) => {
    const pattern = resolveProject(ProjectFile.parse(parse(block(waist))), { edition: 'metric' });
    expect(pattern.measures['back top stitch line']!.value).toBeCloseTo(waist / 4 + 12, 9);
    expect(pattern.measures['front top stitch line']!.value).toBeCloseTo(waist / 4, 9);
    const [back, front] = makeUp(pattern);
    const top = ({ plies }: NonNullable<typeof back>['after']) => {
      const ring = plies.at(-1)!.outline;
      const tops = ring.flatMap(({ name, from }, i) =>
        name === 'top'
          ? [Math.hypot(from.x - ring[(i + 1) % ring.length]!.from.x, from.y - ring[(i + 1) % ring.length]!.from.y)]
          : [],
      );
      return tops.reduce((sum, length) => sum + length, 0);
    };
    expect([top(back!.after), top(front!.after)]).toEqual([
      expect.closeTo(waist / 4 + 12, 6),
      expect.closeTo(waist / 4, 6),
    ]);
    // Without an allowance each row is as long as its dart.
    expect([back, front].map((step) => step!.stitches[0]!.length)).toEqual([
      expect.closeTo(120, 6),
      expect.closeTo(100, 6),
    ]);
  },
);
