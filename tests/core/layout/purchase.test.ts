import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { saleSteps, toBuy } from '../../../src/core/layout/index.ts';

describe('the length to ask for', () => {
  test('each amount stands by itself', () => {
    expect(toBuy(950, { shrinkage: 5, straightening: 20, step: 100 })).toEqual({
      laid: 950,
      shrinkage: 50,
      straightening: 20,
      rounding: 80,
      total: 1100,
    });
  });

  test('what is on a step stays there', () => {
    expect(toBuy(8 * saleSteps.inch, { step: saleSteps.inch }).total).toBeCloseTo(914.4, 9);
    expect(toBuy(0.1 + 0.2, { step: 0.1 }).rounding).toBeCloseTo(0, 9);
  });

  test('nothing laid, nothing bought', () => {
    expect(toBuy(0, { straightening: 20, step: 100 }).total).toBe(0);
  });

  test('amounts add up, and after the wash there is enough', () => {
    const amount = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(
        amount,
        fc.double({ min: 0, max: 50, noNaN: true }),
        amount,
        amount,
        (length, shrinkage, straightening, step) => {
          const buy = toBuy(length, { shrinkage, straightening, step });
          expect(buy.laid + buy.shrinkage + buy.straightening + buy.rounding).toBeCloseTo(buy.total, 5);
          if (length > 0)
            expect((buy.total - buy.straightening) * (1 - shrinkage / 100)).toBeGreaterThan(length - 1e-5);
        },
      ),
    );
  });
});
