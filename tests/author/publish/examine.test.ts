import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { examineSite, inBytes, siteReport } from '../../../src/author/publish/examine.ts';

/** A built site of the given files. */
function built(files: Record<string, string>): string {
  const root = mkdtempSync(path.join(tmpdir(), 'sewing-built-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
  return root;
}

const SITE = {
  'index.html': '<a href="/fold/">Fold</a> <a href="/fold/#press">Press</a> <a href="https://example.org">out</a>',
  'fold/index.html':
    '<link href="/a.css"><h2 id="press">Press</h2><a href="../">Home</a><img src="fold.png" srcset="fold.png 1x, fold.png 2x"><a href="mailto:me@example.org">write</a>',
  'fold/fold.png': 'a picture',
  'a.css': 'a { color: red }',
  '404.html': '<a href="/">Home</a>',
};

test('a site on which every link leads somewhere', () => {
  const found = examineSite(built(SITE), '/');
  expect(found.dead).toEqual([]);
  expect(found.links).toEqual({ all: 8, elsewhere: 2 });
  expect(found.pages).toBe(3);
  expect(found.kinds.map(({ kind, files }) => [kind, files])).toEqual([
    ['pages', 3],
    ['styles', 1],
    ['pictures', 1],
  ]);
});

test.each([
  ['a page that is not there', '<a href="/flod/">', '“/flod/” leads nowhere. Is “fold/index.html” meant?'],
  ['a page by the name of its folder', '<a href="/fold">', '“/fold” leads nowhere.'],
  [
    'an anchor that is not there',
    '<a href="/fold/#pres">',
    '“/fold/#pres” leads to a place that the page does not have.',
  ],
  ['an anchor of the page itself', '<a href="#top">', '“#top” leads to a place that the page does not have.'],
  ['a program that is not there', '<astro-island component-url="/x.js">', '“/x.js” leads nowhere.'],
  ['a picture in another density', '<img srcset="/a.png 1x, /b.png 2x">', '“/a.png” leads nowhere.'],
  ['no address at all', '<a href="http://[">', '“http://[” is no address.'],
])('%s', (_, html, said) => {
  const { dead } = examineSite(built({ ...SITE, 'press/index.html': html }), '/');
  expect(dead[0]).toMatch(`press/index.html: ${said}`);
});

test('what a program or a comment holds is no link', () => {
  const html =
    '<script>const a = \'<a href="/nowhere/">\'</script><!-- <a href="/nowhere/"> --><a title="a > b" href="/fold/">';
  expect(examineSite(built({ ...SITE, 'index.html': html }), '/').dead).toEqual([]);
});

test('below a path, a link from the top of the host leads out of the site', () => {
  const below = { 'index.html': '<a href="/sewing/fold/">ok</a><a href="/fold/">not</a>', 'fold/index.html': '' };
  expect(examineSite(built(below), '/sewing/').dead).toEqual([
    'index.html: “/fold/” leads out of /sewing/, below which the site is published.',
  ]);
});

test('the report says what a host needs to know', () => {
  const root = built({ ...SITE, 'index.html': '<a href="/flod/">Fold</a>' });
  expect(siteReport(examineSite(root, '/'), undefined)).toBe(`  pages         3     207 B
  styles        1      16 B
  pictures      1       9 B
  together      5     232 B

The largest files:
     162 B  fold/index.html
      25 B  index.html
      20 B  404.html
      16 B  a.css
       9 B  fold/fold.png

! 1 link leads nowhere:
    index.html: “/flod/” leads nowhere. Is “fold/index.html” meant?
✓ 404.html is shown for addresses that do not exist, where the host is told to.
✓ Made for the top of any host. Below a path, such as example.org/sewing/, its links would lead astray.
· No sitemap: it needs the whole address. Say it as “address” in content/site.yaml, or with --address.`);
});

test.each([
  [999, '999 B'],
  [1500, '2 kB'],
  [1_234_567, '1.2 MB'],
])('%i bytes', (bytes, said) => {
  expect(inBytes(bytes)).toBe(said);
});
