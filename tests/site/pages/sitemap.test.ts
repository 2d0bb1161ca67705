/** The form is that of the protocol at sitemaps.org, version 0.9: whole addresses, the five signs of XML escaped. */
import { expect, test } from 'vitest';
import { sitemapOf } from '../../../src/site/pages/sitemap.ts';

test('whole addresses, below the path that the site is published at', () => {
  expect(sitemapOf(['courses/b&c/', ''], new URL('https://example.org/sewing/')))
    .toBe(`<?xml version="1.0" encoding="UTF-8"?>
<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">
  <url><loc>https://example.org/sewing/</loc></url>
  <url><loc>https://example.org/sewing/courses/b&amp;c/</loc></url>
</urlset>
`);
});

test('an address without its last stroke means the same', () => {
  expect(sitemapOf(['a/'], new URL('https://example.org/sewing'))).toContain('https://example.org/sewing/a/');
});
