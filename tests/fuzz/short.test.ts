/**
 * A few cases of each family of attacks, the same in every run; `SEED=7 npm test` tries others, and `npm run fuzz` tries
 * thousands. Chains of steps have a test of their own: tests/core/project/chains.test.ts.
 */
import { expect, test } from 'vitest';
import { families } from './families.ts';

/** How many, so that each takes about half a second. */
const CASES: Readonly<Record<string, number>> = {
  lengths: 500,
  formulas: 300,
  files: 20,
  lessons: 120,
  'hand-ins': 100,
  progress: 500,
  storage: 500,
  addresses: 300,
  csv: 500,
  server: 25,
  writes: 60,
};

test.each(families.filter(({ name }) => name !== 'chains'))(
  '$name: none of a short run fails',
  async ({ name, tries }) => {
    const cases = CASES[name] ?? 20;
    const first = 1 + cases * (Number(process.env['SEED'] ?? 1) - 1);
    const broken: string[] = [];
    for (let seed = first; seed < first + cases; seed++)
      broken.push(...(await tries(seed)).map((line) => `seed ${seed}: ${line}`));
    expect(broken).toEqual([]);
  },
);
