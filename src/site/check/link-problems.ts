import { didYouMean, quote } from '../../core/measure/index.ts';
import { isLink, isPicture, RUNS } from '../content/lesson-html.ts';
import { ownPages } from './own-pages.ts';
import type { AtOffset } from '../content/diagnostic.ts';
import { slugOf, type Content, type LessonEntry } from '../content/read-content.ts';

/** The pages a link can lead to, each with its anchors; undefined where a page's anchors are not known here. */
export type Pages = ReadonlyMap<string, readonly string[] | undefined>;

/** Every page that the content makes, beside the site's own. */
export function pagesOf({ courses, lessons, projects }: Content): Pages {
  const pages = new Map<string, readonly string[] | undefined>([
    ['/', undefined],
    ['/authoring/', undefined],
    ['/authoring/first-lesson/', undefined],
    ['/authoring/publishing/', undefined],
    ['/authoring/changes/', undefined],
  ]);
  for (const { id } of projects) pages.set(`/projects/${id}/`, undefined);
  for (const { id } of courses) {
    pages.set(`/courses/${id}/`, undefined);
    for (const own of Object.keys(ownPages)) if (own !== 'index') pages.set(`/courses/${id}/${own}/`, undefined);
  }
  for (const lesson of lessons) pages.set(addressOf(lesson), ['main', ...lesson.lesson.anchors]);
  return pages;
}

const addressOf = ({ course, slug }: LessonEntry): string => `/courses/${course}/${slug}/`;

/** Links of a lesson that lead nowhere, or that lead nowhere once the site is published below a path. */
export function linkProblems(entry: LessonEntry, pages: Pages): AtOffset[] {
  return entry.lesson.links.flatMap(({ address, part }): AtOffset[] => {
    const warn = (message: string, fix?: string): AtOffset[] => [{ at: part.start, severity: 'warning', message, fix }];
    if (address.trim() === '') return warn('This link has no address.', 'Write [words](address).');
    if (!isLink(address)) return [{ at: part.start, severity: 'error', ...RUNS }];
    const spelt = /^https?(?!:\/\/)[:/]*(?=[\w-]+\.[\w-])/iu.exec(address);
    if (spelt) return warn(`${quote(address)} is no address.`, `Write https://${address.slice(spelt[0].length)}`);
    if (/^([a-z][a-z0-9+.-]*:|[/\\]{2})/i.test(address.trim())) return [];
    if (!URL.canParse(address, 'http://site.example/')) return warn(`${quote(address)} is no address.`);
    const outside = meantOutside(address);
    if (outside !== undefined) return warn(`${quote(address)} is taken for a page of this site.`, `Write ${outside}`);
    const own = addressOf(entry);
    const { pathname, hash } = new URL(address, `http://site.example${own}`);
    const file = /([^/]+)\.mdx$/.exec(pathname)?.[1];
    if (file !== undefined) {
      const page = `../${file.replace(/^\d+[-_ ]*/, '')}/${hash}`;
      return warn('A link leads to a page, and not to its file.', `Write ${page}`);
    }
    if (!pages.has(pathname)) {
      if (pages.has(`${pathname}/`)) return warn('The address of a page ends in /.', `Write ${withSlash(address)}`);
      const page = `/courses/${entry.course}/${slugOf(pathname.split('/').findLast((step) => step) ?? '')}/`;
      if (pages.has(page))
        return warn(`This link leads to ${pathname}, where no page is.`, `Write ${relative(own, page)}${hash}`);
      if (isPicture(address))
        return warn('A picture is shown with a ! before it.', `Write ![what it shows](${address}).`);
      if (OF_FILES.test(address) && !/\.html?$/i.test(address)) {
        const fix = `Write <Download of="${decoded(address).split('/').at(-1)}" says="…" />.`;
        return warn('A file is no page: a lesson hands it out by a word.', fix);
      }
      const known = [...pages.keys()];
      const near = didYouMean(pathname, known);
      return warn(`This link leads to ${pathname}, where no page is.`, near);
    }
    if (address.startsWith('/')) {
      return warn(
        'A link that starts with / leads astray where the site is published below a path.',
        `Write ${relative(own, pathname)}${hash}`,
      );
    }
    const anchors = pages.get(pathname);
    const anchor = decoded(hash.slice(1));
    if (anchor && anchors && !anchors.includes(anchor)) {
      const near = didYouMean(anchor, anchors);
      return warn(`There is no heading ${quote(`#${anchor}`)} on ${pathname === own ? 'this page' : pathname}.`, near);
    }
    return [];
  });
}

/** Endings of what may lie beside a lesson, which no host is called by. */
const OF_FILES = /\.(?:mdx?|ya?ml|html?|pdf|jpe?g|png|webp|avif|gif|svg|heic|zip|txt|docx?|xlsx?|odt|mp[34]|vtt|srt)$/i;

/** What an author means who leaves out how an address begins: a page of another host, or a letter box. */
function meantOutside(address: string): string | undefined {
  if (/^[\w.+-]+@[\w-]+(?:\.[\w-]+)+$/u.test(address)) return `mailto:${address}`;
  const [host = ''] = address.split(/[/?#]/u, 1);
  const isHost = /^www\./iu.test(host) || (/^[\w-]+(?:\.[\w-]+)*\.[a-z]{2,}$/iu.test(host) && !OF_FILES.test(host));
  return isHost ? `https://${address}` : undefined;
}

/** As it is where a percent sign begins no code. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

const withSlash = (address: string): string => address.replace(/(?=[?#]|$)/, '/');

/** From one page of the site to another, step by step: ../fold/ */
export function relative(from: string, to: string): string {
  const [own, other] = [from, to].map((address) => address.split('/').slice(1, -1)) as [string[], string[]];
  const differ = own.findIndex((step, i) => step !== other[i]);
  const shared = differ < 0 ? own.length : differ;
  const path =
    '../'.repeat(own.length - shared) +
    other
      .slice(shared)
      .map((step) => `${step}/`)
      .join('');
  return path || './';
}
