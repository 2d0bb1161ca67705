import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { errors, lastOf, lengthsOf, sizeOf } from './wrong.ts';
import { resolved } from '../project/files.ts';
import { runs } from '../../random.ts';

const yoke = (said: string, edition: 'inch' | 'metric' = 'inch') =>
  resolved(
    `title: Yoke\nunits: ${edition}\nmeasures: { seam: { in: 1/2, mm: 12 } }\npieces: { yoke: { size: [{ in: 8, mm: 200 }, { in: 12, mm: 300 }] } }\nsteps: [{ tuck: yoke, ${said} }]`,
    { edition },
  );

describe('several tucks', () => {
  it('take twice their depth each, and their rows lie as far apart as their folds less that', () => {
    const step = lastOf(yoke('at: 2, depth: 1/4, tucks: 5, every: 1'));
    // 12 - 5 x 1/2.
    expect(sizeOf(step)).toEqual([8, 9.5]);
    expect(lengthsOf(step)).toEqual([8, 8, 8, 8, 8]);
    // Beyond a tuck lies one layer, on it three: an inch less 1/2 leaves room for its 1/4.
    expect(step.layersMost).toBe(3);
    const rows = step.stitches.map(
      ({ id }) => step.after.stitches.find((one) => one.id === id)!.runs[0]!.from.y / 25.4,
    );
    // The first 1 3/4 in below the top, 12, and the others 1/2 in below one another.
    expect(rows.map((y) => Number(y.toFixed(3)))).toEqual([10.25, 9.75, 9.25, 8.75, 8.25]);
    expect(step.title).toBe('Sew 5 tucks in the yoke');
    expect(lastOf(yoke('at: 60 mm, from: left, depth: 5 mm, tucks: 3, every: 20 mm', 'metric')).size.width).toBeCloseTo(
      200 - 30,
      6,
    );
  });

  it('lie over one another where there is less room than they are deep', () => {
    expect(lastOf(yoke('at: 2, depth: 1/4, tucks: 3, every: 5/8')).layersMost).toBe(5);
  });

  it.each([
    [
      'at: 2, depth: 1/4, tucks: 3, every: 1/2',
      'Each tuck takes 1/2 in, and they lie only 1/2 in from one another: nothing would be left between their stitches.',
    ],
    ['at: 2, depth: 1/4, tucks: 3', 'How far these tucks lie from one another is not said.'],
    ['at: 2, depth: 1/4, every: 1', 'One tuck lies from no other.'],
    ['at: 2, depth: 1/4, tucks: 30, every: 1', 'The tuck takes more cloth than there is.'],
  ])('are refused: %s', (said, message) => {
    expect(errors(yoke(said)).join()).toContain(message);
  });
});

test('random tucks shorten a yoke by twice their depth, each', () => {
  const mm = (min: number, max: number) => fc.integer({ min, max });
  fc.assert(
    fc.property(mm(1, 6), mm(1, 6), mm(3, 20), (tucks, depth, more) => {
      const every = 2 * depth + more;
      const said = tucks === 1 ? '' : `, tucks: ${tucks}, every: ${every} mm`;
      const step = lastOf(yoke(`at: 40 mm, depth: ${depth} mm${said}`, 'metric'));
      expect(step.size.height).toBeCloseTo(300 - 2 * depth * tucks, 6);
      expect(step.stitches.length).toBe(tucks);
    }),
    runs(60),
  );
});
