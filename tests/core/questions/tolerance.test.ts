import { expect, it } from 'vitest';
import { readTolerance } from '../../../src/core/questions/index.ts';

it('is one length for both editions, or one for each', () => {
  // The inch is exactly 25.4 mm (international yard and pound agreement, 1959).
  expect(readTolerance('1/16 in | 1 mm', 'inch')).toEqual({ inch: expect.closeTo(1.5875, 9), metric: 1 });
  expect(readTolerance('1/8', 'inch')).toEqual({ inch: expect.closeTo(3.175, 9), metric: expect.closeTo(3.175, 9) });
  expect(readTolerance('2', 'metric')).toEqual({ inch: 2, metric: 2 });
});

it('is nothing when it cannot be read', () => {
  for (const text of ['', 'a bit', '1 mm | ', '1 | 2 | 3']) expect(readTolerance(text, 'inch')).toBeUndefined();
});
