/** How wide a strip for piping is, against what people who teach it print. */
import { describe, expect, test } from 'vitest';
import { piece, rectangle } from '../core/cloth/works.ts';
import { pipe } from '../../src/core/cloth/pipe.ts';

const IN = 25.4;

/** Whether a strip so wide is taken for a cord and a seam, in inches. */
const isTaken = (wide: number, cord: number, seam: number): boolean =>
  pipe(
    piece('front', rectangle(17 * IN, 17 * IN)),
    piece('strip', rectangle(70 * IN, wide * IN)),
    piece('cord', rectangle(70 * IN, cord * IN)),
    { at: ['all'], seam: seam * IN, overlap: IN, called: { work: 'strip', nth: 1 }, isBias: true },
  ).ok;

describe('a strip is as wide as the cord is round and two allowances', () => {
  test.each([
    // pi x cord + 1 to 1 1/2 in (The Sewing Loft): allowances of 1/2 to 3/4.
    ['The Sewing Loft', Math.PI * (1 / 4) + 1, 1 / 4, 1 / 2],
    ['The Sewing Loft', Math.PI * (1 / 4) + 1.5, 1 / 4, 3 / 4],
    // 8 x cord (Fabric.com, cotton cording, 2012): 2 in for 1/4 in; with 1/2 in seams 1.785 are needed, and a little is trimmed.
    ['Fabric.com', 2, 1 / 4, 1 / 2],
    // Welt of 5/32 in from strips of 1 1/2 in (Upholstery Resource), or 1 3/4 in (an upholstery class): 1.491 with 1/2 in seams.
    ['Upholstery Resource', 1.5, 5 / 32, 1 / 2],
    ['an upholstery class', 1.75, 5 / 32, 1 / 2],
    // 3/16 in with 1 3/4 in (Willow Bean Studio, 2011): 1.589.
    ['Willow Bean Studio', 1.75, 3 / 16, 1 / 2],
  ])('%s: a strip of %f in goes round a cord of %f in with a seam of %f in', (_, wide, cord, seam) => {
    expect(isTaken(wide, cord, seam)).toBe(true);
  });

  test.each([
    // A quarter of an inch narrower than the rules say, and one that would leave half an inch more on both sides.
    [Math.PI * (1 / 4) + 0.75, 1 / 4, 1 / 2],
    [Math.PI * (1 / 4) + 2.1, 1 / 4, 1 / 2],
  ])('a strip of %f in does not', (wide, cord, seam) => {
    expect(isTaken(wide, cord, seam)).toBe(false);
  });
});
