/** The seam study: the sum on the page, and the cloth. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sewSeam } from '../../../components/words/seam-study/seam.ts';
import { joined, joinedSum, scopeFor } from '../../../components/words/seam-study/sums.ts';
import { size } from '../../../src/core/cloth/index.ts';
import { evaluate } from '../../../src/core/index.ts';
import { runs } from '../../random.ts';

const IN = 25.4;

test('two pieces of 2 and 3 in joined with 1/4 in come to 4 1/2 in, not 4 1/4', () => {
  // A quilter's note on errata (belindastitches weblog, 29 May 2014): 1 3/4 x 2 and 1 3/4 x 3 in, joined on their 1 3/4
  // edges with 1/4 in, make 1 3/4 x 4 1/2 in.
  const sizes = { a: 2 * IN, b: 3 * IN, first: IN / 4, second: IN / 4 };
  expect(joined(sizes)).toBeCloseTo(4.5 * IN, 9);
  const { width, height } = size(sewSeam(sizes, 'open', 1.75 * IN)!.after);
  expect(width).toBeCloseTo(4.5 * IN, 6);
  expect(height).toBeCloseTo(1.75 * IN, 6);
});

test('the sum and the cloth agree, each side with an allowance of its own, however it is pressed', () => {
  const length = fc.integer({ min: 30, max: 200 });
  const allowance = fc.integer({ min: 1, max: 14 });
  fc.assert(
    fc.property(
      length,
      length,
      allowance,
      allowance,
      fc.constantFrom('open', 'to second'),
      (a, b, first, second, press) => {
        const sizes = { a, b, first, second };
        const sewn = sewSeam(sizes, press, 60)!;
        expect(size(sewn.after).width).toBeCloseTo(joined(sizes), 6);
        const sum = evaluate(joinedSum.formula, scopeFor(sizes, { edition: 'metric', grid: { inch: 16, metric: 1 } }));
        expect(sum.ok && sum.value.value).toBeCloseTo(joined(sizes), 9);
      },
    ),
    runs(60),
  );
});

test('an allowance that takes a whole piece sews no seam', () => {
  expect(sewSeam({ a: 20, b: 80, first: 20, second: 6 }, 'open', 40)).toBeUndefined();
});
