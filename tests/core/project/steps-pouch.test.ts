/** The pouch with boxed corners: how large it is while its allowances still stand out, and once it is turned. */
import { expect, it } from 'vitest';
import { makeUp, resolveProject } from '../../../src/core/project/index.ts';
import { notionsPouch, shelf } from './files.ts';

// By the project file: a base of 7 in (180 mm), 4 in (100 mm) high, boxed by squares of 1 1/4 in (30 mm).
it.each([
  ['inch', 7 * 25.4, 4 * 25.4, 2.5 * 25.4],
  ['metric', 180, 100, 60],
] as const)('stands as large before it is turned as after, %s', (edition, width, height, depth) => {
  const steps = makeUp(resolveProject(notionsPouch(), { edition, materials: shelf() }));
  const standing = steps.filter((step) => step.depth > 0);
  expect(standing.map(({ id }) => id)).toEqual(['box', 'turn']);
  for (const step of standing) {
    expect(step.size.width).toBeCloseTo(width, 6);
    expect(step.size.height).toBeCloseTo(height, 6);
    expect(step.depth).toBeCloseTo(depth, 6);
  }
});
