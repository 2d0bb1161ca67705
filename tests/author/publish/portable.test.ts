import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { portablePage } from '../../../src/author/publish/portable.ts';

const FILES = new Set([
  'index.html',
  'courses/a/index.html',
  'courses/a/b/index.html',
  'a.css',
  'f.ttf',
  'w.js',
  'pä.webp',
  'q.webp',
]);
const page = (html: string, base = '/') =>
  portablePage(html, 'courses/a/b/index.html', base, (file) => FILES.has(file));

test.each([
  ['<a href="/">', '<a href="../../../index.html">'],
  ['<a href="/courses/a/#b">', '<a href="../index.html#b">'],
  ['<a href="/courses/a/b/?edition=metric">', '<a href="./index.html?edition=metric">'],
  ['<link href="/a.css" rel="stylesheet">', '<link href="../../../a.css" rel="stylesheet">'],
  [
    '<source srcset="/p%C3%A4.webp 480w, /q.webp 960w, https://example.org/r.webp 2x">',
    '<source srcset="../../../p%C3%A4.webp 480w, ../../../q.webp 960w, https://example.org/r.webp 2x">',
  ],
  [
    '<astro-island props="{&quot;f&quot;:[0,&quot;/f.ttf&quot;]}">',
    '<astro-island props="{&quot;f&quot;:[0,&quot;../../../f.ttf&quot;]}">',
  ],
  ['<script type="module" src="/w.js"></script>', '<script type="module" src="../../../w.js"></script>'],
])('%s', (before, after) => {
  expect(page(before)).toBe(after);
});

test.each([
  '<a href="https://example.org/">',
  '<a href="//example.org/">',
  '<a href="#b">',
  '<a href="/nowhere/">',
  '<p>From "/" to "/a.css".</p>',
  '<script>location = "/"</script>',
  '<a title="a > /" href="../">',
])('%s stays', (html) => {
  expect(page(html)).toBe(html);
});

test('below a path', () => {
  expect(page('<a href="/sewing/"><a href="/">', '/sewing/')).toBe('<a href="../../../index.html"><a href="/">');
});

test('the policy allows a style whose address changed, and the note', () => {
  const sha = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  const [before, after] = ['@font-face{src:url("/f.ttf")}', '@font-face{src:url("../../../f.ttf")}'];
  const html = page(
    `<meta content="script-src 'self'; style-src ${sha(before)}"><style>${before}</style><body></body>`,
  );
  const note = /<script>([^]*)<\/script>/.exec(html)?.[1] ?? '';
  expect(note).toContain('file:');
  expect(html).toContain(
    `<meta content="script-src 'self' ${sha(note)}; style-src ${sha(after)}"><style>${after}</style>`,
  );
});
