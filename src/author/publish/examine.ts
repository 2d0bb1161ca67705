/** What can be said of a built site before anyone else sees it. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { closest, quote } from '../../core/measure/index.ts';
import { addressesIn, tagsOf } from './tags.ts';

const KINDS: readonly (readonly [kind: string, endings: RegExp])[] = [
  ['pages', /\.html$/],
  ['programs', /\.m?js$/],
  ['styles', /\.css$/],
  ['fonts', /\.(woff2?|ttf)$/],
  ['documents', /\.pdf$/],
  ['pictures', /\.(svg|png|jpe?g|webp|avif|gif)$/],
  ['others', /./],
];

export type SiteReport = {
  pages: number;
  /** Bytes of all files. */
  bytes: number;
  kinds: { kind: string; files: number; bytes: number }[];
  largest: { file: string; bytes: number }[];
  links: { all: number; elsewhere: number };
  hasNotFound: boolean;
  hasSitemap: boolean;
  /** Links that lead nowhere, a sentence each. */
  dead: string[];
};

/**
 * Looks through a built site: every link and anchor, what every page loads, and how large it all is.
 *
 * @param folder of the built site
 * @param base the path that it is published below: `/` or `/sewing/`
 */
export function examineSite(folder: string, base: string): SiteReport {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => path.relative(folder, path.join(parentPath, name)).split(path.sep).join('/'))
    .toSorted();
  const sizes = files.map((file) => ({ file, bytes: statSync(path.join(folder, file)).size }));
  const kindOf = (file: string) => KINDS.find(([, endings]) => endings.test(file))![0];
  const html = files.filter((file) => file.endsWith('.html'));
  const pages = new Map(html.map((file) => [file, tagsOf(readFileSync(path.join(folder, file), 'utf8'))]));
  const anchors = new Map(
    [...pages].map(([file, tags]) => [file, new Set(tags.map(({ attributes }) => attributes.get('id')))]),
  );

  const dead: string[] = [];
  const links = { all: 0, elsewhere: 0 };
  const top = new URL(base, 'http://site');
  for (const [file, tags] of pages) {
    const here = new URL(file.replace(/(^|\/)index\.html$/, '$1'), top);
    const say = (text: string) => dead.push(`${file}: ${text}`);
    for (const address of new Set(addressesIn(tags))) {
      if (!URL.canParse(address, here)) {
        say(`${quote(address)} is no address.`);
        continue;
      }
      const to = new URL(address, here);
      if (to.protocol === 'data:' || to.protocol === 'blob:') continue;
      links.all += 1;
      if (to.origin !== top.origin) {
        links.elsewhere += 1;
        continue;
      }
      if (!to.pathname.startsWith(top.pathname)) {
        say(`${quote(address)} leads out of ${top.pathname}, below which the site is published.`);
        continue;
      }
      const wanted = decodeURI(to.pathname.slice(top.pathname.length));
      const target = wanted === '' || wanted.endsWith('/') ? `${wanted}index.html` : wanted;
      const anchor = decodeURIComponent(to.hash.slice(1));
      if (!existsSync(path.join(folder, target)) || !statSync(path.join(folder, target)).isFile()) {
        const near = closest(target, files);
        say(`${quote(address)} leads nowhere.${near ? ` Is ${quote(near)} meant?` : ''}`);
      } else if (anchor !== '' && anchors.has(target) && !anchors.get(target)!.has(anchor)) {
        say(`${quote(address)} leads to a place that the page does not have.`);
      }
    }
  }
  return {
    pages: html.length,
    bytes: sizes.reduce((sum, { bytes }) => sum + bytes, 0),
    kinds: KINDS.map(([kind]) => {
      const own = sizes.filter(({ file }) => kindOf(file) === kind);
      return { kind, files: own.length, bytes: own.reduce((sum, { bytes }) => sum + bytes, 0) };
    }).filter(({ files }) => files > 0),
    largest: sizes.toSorted((a, b) => b.bytes - a.bytes).slice(0, 5),
    links,
    hasNotFound: files.includes('404.html'),
    hasSitemap: files.includes('sitemap-index.xml'),
    dead,
  };
}

/**
 * A size as people read it.
 *
 * @example inBytes(1_234_567) // => '1.2 MB'
 */
export function inBytes(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  if (bytes < 1_000_000) return `${Math.round(bytes / 1000)} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/**
 * What was found, for a terminal.
 *
 * @param address where the site will be; undefined where nobody said
 */
export function siteReport(found: SiteReport, address: URL | undefined): string {
  const width = Math.max(...found.kinds.map(({ kind }) => kind.length), 8);
  const row = (name: string, n: number, bytes: number) =>
    `  ${name.padEnd(width)}  ${String(n).padStart(5)}  ${inBytes(bytes).padStart(8)}`;
  const all = found.kinds.reduce((sum, { files }) => sum + files, 0);
  const { dead, links } = found;
  return [
    ...found.kinds.map(({ kind, files, bytes }) => row(kind, files, bytes)),
    row('together', all, found.bytes),
    '',
    'The largest files:',
    ...found.largest.map(({ file, bytes }) => `  ${inBytes(bytes).padStart(8)}  ${file}`),
    '',
    dead.length === 0
      ? `✓ All ${links.all} links and loaded files are there; ${links.elsewhere} of them lead to other hosts and are not tried.`
      : `! ${dead.length} ${dead.length === 1 ? 'link leads' : 'links lead'} nowhere:`,
    ...dead.map((sentence) => `    ${sentence}`),
    found.hasNotFound
      ? '✓ 404.html is shown for addresses that do not exist, where the host is told to.'
      : '! There is no 404.html for addresses that do not exist.',
    address
      ? `✓ Made for ${address.href}. Anywhere else its links lead astray.`
      : '✓ Made for the top of any host. Below a path, such as example.org/sewing/, its links would lead astray.',
    found.hasSitemap
      ? '✓ sitemap-index.xml lists the pages for search engines.'
      : '· No sitemap: it needs the whole address. Say it as “address” in content/site.yaml, or with --address.',
  ].join('\n');
}
