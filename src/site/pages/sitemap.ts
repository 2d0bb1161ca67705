import { writeFile } from 'node:fs/promises';
import type { AstroIntegration } from 'astro';

/**
 * A list of the pages for search engines, by the open protocol of sitemaps.org, version 0.9. It needs whole addresses,
 * so there is one only where the site's own is known.
 */
export function sitemap(): AstroIntegration {
  let address: URL | undefined;
  return {
    name: 'sitemap',
    hooks: {
      'astro:config:done'({ config }) {
        address = config.site === undefined ? undefined : new URL(config.base, config.site);
      },
      async 'astro:build:done'({ dir, pages }) {
        if (!address) return;
        const paths = pages.map(({ pathname }) => pathname).filter((pathname) => !/^404\/?$/.test(pathname));
        await writeFile(new URL('sitemap.xml', dir), sitemapOf(paths, address));
      },
    },
  };
}

/**
 * The sitemap of pages.
 *
 * @param paths from the top of the site: `courses/pleats/`
 * @param address of the top of the site, with its path
 */
export function sitemapOf(paths: readonly string[], address: URL): string {
  const top = address.href.endsWith('/') ? address : new URL(`${address.href}/`);
  const entries = paths.toSorted().map((path) => `  <url><loc>${escaped(new URL(path, top).href)}</loc></url>\n`);
  return `<?xml version="1.0" encoding="UTF-8"?>
<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">
${entries.join('')}</urlset>
`;
}

const escaped = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll("'", '&apos;')
    .replaceAll('"', '&quot;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');
