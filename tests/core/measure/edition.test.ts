import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inEdition, isOnGrid, MM_PER_INCH, ON_MARK, SAME, toGrid } from '../../../src/core/measure/index.ts';

describe('toGrid', () => {
  it.each([
    [83, 'inch', 82.55],
    [82.55, 'metric', 83],
    [82.55, 'inch', 82.55],
    [-83, 'inch', -82.55],
    [0.2, 'inch', 0],
    [-0.2, 'metric', 0],
  ] as const)('%d mm in %s', (mm, edition, mark) => {
    expect(toGrid(mm, edition)).toBe(mark);
  });

  it('gives a mark the same value however it was reached', () => {
    const sum = Array.from({ length: 10 }, () => 25.4 / 16).reduce((total, mark) => total + mark, 0);
    expect(toGrid(sum, 'inch')).toBe(toGrid(15.875, 'inch'));
    expect(toGrid(0.1 + 0.2, 'metric', { inch: 16, metric: 0.1 })).toBe(0.3);
  });

  it('treats what lies below zero as the mirror image', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e5, noNaN: true }), fc.constantFrom('inch', 'metric'), (mm, edition) => {
        expect(toGrid(-mm, edition) + toGrid(mm, edition)).toBe(0);
      }),
    );
  });
});

describe('isOnGrid', () => {
  it('forgives the rounding of sums, and no real distance', () => {
    expect(isOnGrid(0.1 + 0.2, 'metric', { inch: 16, metric: 0.1 })).toBe(true);
    expect(isOnGrid(25.4 / 3 + 25.4 / 3 + 25.4 / 3, 'inch')).toBe(true);
    // 27 mm is 0.0125 mm from 1 1/16 in: the same on the table, and still not a mark.
    expect(Math.abs(27 - 17 * 1.5875)).toBeLessThan(SAME);
    expect(isOnGrid(27, 'inch')).toBe(false);
  });

  it('has a tolerance below the least distance between an inch mark and a metric mark', () => {
    let least = Infinity;
    // The two rulers meet again after 127 mm (160 thirty-seconds), so one such stretch shows every distance.
    for (let tenth = 0; tenth <= 1270; tenth++) {
      for (let mark = 0; mark <= 160; mark++) {
        const apart = Math.abs(tenth * 125 - mark * 992.1875) / 1250;
        if (apart > 1e-9) least = Math.min(least, apart);
      }
    }
    expect(least).toBeCloseTo(0.00625, 10);
    expect(ON_MARK).toBeLessThan(least / 1000);
  });
});

describe('inEdition', () => {
  it('takes what is stated for the edition, on a mark or not', () => {
    expect(inEdition({ inch: 6.35, metric: 6 }, 'inch')).toBe(6.35);
    expect(inEdition({ inch: 6.35, metric: 6 }, 'metric')).toBe(6);
    expect(inEdition({ metric: 6.25 }, 'metric')).toBe(6.25);
  });

  it('moves the other edition’s value to this edition’s marks', () => {
    expect(inEdition({ inch: MM_PER_INCH / 4 }, 'metric')).toBe(6);
    expect(inEdition({ inch: MM_PER_INCH / 4 }, 'metric', { inch: 16, metric: 0.5 })).toBe(6.5);
    expect(inEdition({ metric: 6 }, 'inch')).toBe(6.35);
    expect(inEdition({ metric: 6 }, 'inch', { inch: 32, metric: 1 })).toBe((25.4 / 32) * 8);
  });

  it('never lets a small length become nothing', () => {
    expect(inEdition({ metric: 0.3 }, 'inch')).toBe(0.3);
    expect(inEdition({ metric: 0 }, 'inch')).toBe(0);
  });
});
