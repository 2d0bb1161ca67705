/**
 * Whether a page belongs in the sitemap: what learners look for does. The pages of teachers and of authors do not.
 *
 * @param address of the page, whole
 * @param top of the site, with its path
 * @example inSitemap('https://example.org/sewing/courses/pleats/', 'https://example.org/sewing/') // => true
 */
export function inSitemap(address: string, top: string): boolean {
  const page = address.slice(top.replace(/\/$/, '').length);
  return !/^\/authoring\/|^\/courses\/[^/]+\/(class|shopping)\/$/.test(page);
}
