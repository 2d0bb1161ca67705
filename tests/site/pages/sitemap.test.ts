import { expect, test } from 'vitest';
import { inSitemap } from '../../../src/site/pages/sitemap.ts';

test.each([
  ['https://example.org/sewing/', true],
  ['https://example.org/sewing/courses/pleats/', true],
  ['https://example.org/sewing/courses/pleats/fold/', true],
  ['https://example.org/sewing/courses/pleats/progress/', true],
  ['https://example.org/sewing/projects/folio/', true],
  ['https://example.org/sewing/courses/pleats/class/', false],
  ['https://example.org/sewing/courses/pleats/shopping/', false],
  ['https://example.org/sewing/authoring/', false],
  ['https://example.org/sewing/authoring/publishing/', false],
])('%s', (address, listed) => {
  expect(inSitemap(address, 'https://example.org/sewing/')).toBe(listed);
  expect(inSitemap(address, 'https://example.org/sewing')).toBe(listed);
});

test('a school at the top of its host may be called by such a word', () => {
  expect(inSitemap('https://authoring.example.org/', 'https://authoring.example.org/')).toBe(true);
});
