/** What seams that are too wide take from a finished size. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drift, likelySum, scopeFor, worstSum } from '../../../components/words/drift-study/sums.ts';
import { evaluate, toWords } from '../../../src/core/index.ts';
import { runs } from '../../random.ts';

const sum = fc.record({
  seams: fc.integer({ min: 1, max: 40 }),
  off: fc.double({ min: 0, max: 5, noNaN: true }),
  takes: fc.constantFrom(1 as const, 2 as const),
});

test('a join takes both allowances: seams too wide by e take 2 n e at worst', () => {
  // A row of five patches of 2 1/2 in joined with 1/4 in: four seams. Each 1/16 in too wide, the row is 1/2 in short.
  // Worked by hand: 4 seams, 2 sides, 1/16 in.
  expect(drift({ seams: 4, off: 25.4 / 16, takes: 2 }).worst).toBeCloseTo(12.7, 9);
  // An outer seam takes one allowance: two side seams, each 1 mm too wide, take 2 mm of the width.
  expect(drift({ seams: 2, off: 1, takes: 1 }).worst).toBe(2);
});

test('errors that are independent add up by their squares', () => {
  fc.assert(
    fc.property(sum, (drifting) => {
      const { worst, likely } = drift(drifting);
      const squares = Array.from({ length: drifting.seams }, () => (drifting.takes * drifting.off) ** 2);
      expect(likely ** 2).toBeCloseTo(
        squares.reduce((a, b) => a + b, 0),
        6,
      );
      expect(likely).toBeLessThanOrEqual(worst + 1e-9);
    }),
    runs(200),
  );
});

test('a thousand rows of seams that err by themselves spread as the root says', () => {
  // A trial, not the formula: every seam of a row is off by e or by -e, by a coin. From a fixed start, so that it holds.
  let seed = 20_250_101;
  const coin = () => ((seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31) / 2 ** 31 < 0.5 ? -1 : 1);
  const [seams, off, rows] = [9, 1, 4000];
  const lost = Array.from({ length: rows }, () =>
    Array.from({ length: seams }, () => 2 * off * coin()).reduce((a, b) => a + b, 0),
  );
  const spread = Math.sqrt(lost.reduce((all, one) => all + one * one, 0) / rows);
  const { worst, likely } = drift({ seams, off, takes: 2 });
  expect(Math.abs(spread / likely - 1)).toBeLessThan(0.05);
  expect(Math.max(...lost.map(Math.abs))).toBeLessThanOrEqual(worst);
});

test('the sums on the page come to the same', () => {
  fc.assert(
    fc.property(sum, (drifting) => {
      const scope = scopeFor(drifting, { edition: 'metric' });
      const { worst, likely } = drift(drifting);
      const [most, spread] = [worstSum, likelySum].map((work) => evaluate(work(drifting.takes).formula, scope));
      expect(most).toMatchObject({ ok: true, value: { dimension: 1 } });
      expect(most?.ok && most.value.value).toBeCloseTo(worst, 6);
      // The root is written to three places.
      expect(spread?.ok && Math.abs(spread.value.value - likely)).toBeLessThanOrEqual(0.001 * 2 * 5 + 1e-9);
    }),
    runs(100),
  );
});

test('a sum is read out in words', () => {
  const scope = scopeFor({ seams: 2, off: 1, takes: 1 }, { edition: 'metric' });
  expect(toWords(worstSum(1).formula, scope)).toBe(
    'seams times error of each, that is 2 times 1 millimetre, which makes 2 millimetres.',
  );
});
