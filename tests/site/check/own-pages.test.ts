/** Every page that the site makes beside the lessons of a course keeps its address. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ownPages } from '../../../src/site/check/own-pages.ts';

test('the list of the course’s own pages is that of the routes', () => {
  const routes = readdirSync(fileURLToPath(new URL('../../../src/pages/courses/[course]', import.meta.url)));
  const fixed = routes.filter((file) => !file.startsWith('[')).map((file) => file.replace(/\.[^.]+$/, ''));
  expect(Object.keys(ownPages).toSorted()).toEqual(fixed.toSorted());
});
