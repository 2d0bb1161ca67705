import type { MiddlewareHandler } from 'astro';
import { languageTag } from '../content/schemas.ts';

/**
 * In the live preview only: where a page cannot be made, or is not there, because content has a mistake, this page says
 * so. The list of mistakes stands in the panel, and the page comes back by itself once they are mended. While the check
 * still runs nobody knows yet, and the page says that.
 */
export const onRequest: MiddlewareHandler = async (context, next) => {
  const { pathname } = context.url;
  const isPage = pathname.endsWith('/'); // and not a picture; a static page is told nothing of what the browser accepts
  const waiting = async (isKnown = true) =>
    new Response(page(pathname, await language(), isKnown ? MEND : CHECK), {
      status: 503,
      headers: { 'content-type': 'text/html; charset=utf-8' },
    });
  if (!isPage) return next();
  try {
    if (await lacksProject(pathname)) return await waiting();
    const response = await next();
    // A picture that the site makes smaller has such an address, too.
    if (!isHtml(response)) return response;
    const html = await response.text(); // what fails in the middle of a page fails here
    if (response.status !== 404) return new Response(html, response);
    const mistakes = await hasMistakes();
    return mistakes === false ? new Response(html, response) : await waiting(mistakes ?? false);
  } catch (error) {
    const mistakes = await hasMistakes();
    if (mistakes === false) throw error;
    return waiting(mistakes ?? false);
  }
};

const isHtml = ({ headers }: Response): boolean => headers.get('content-type')?.startsWith('text/html') ?? false;

/**
 * Whether the content has a mistake; undefined while it is being checked. Astro keeps this module as long as it runs; what
 * is so now comes only with a new import.
 */
const hasMistakes = async (): Promise<boolean | undefined> => (await import('virtual:content-mistakes')).default;

/** As every page names it. */
async function language(): Promise<string> {
  const { getSite } = await import('../pages/index.ts');
  return languageTag(getSite());
}

/** Each word of such a lesson would fail by itself, so it is not even begun. */
async function lacksProject(pathname: string): Promise<boolean> {
  const { getCourse, pageUrl } = await import('../pages/index.ts');
  const [, id] = /\/courses\/([^/]+)\/[^/]+\/$/.exec(pathname) ?? [];
  const lesson = id === undefined ? undefined : getCourse(id)?.lessons.find(({ url }) => pageUrl(url) === pathname);
  return lesson?.projectId !== undefined && lesson.project === undefined;
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** What is said of a page that cannot be shown. */
type Said = { title: string; why: string; then: string };

const MEND: Said = {
  title: 'This page waits for a mend',
  why: 'cannot be shown because of a mistake in your files, listed below.',
  then: 'It comes back by itself as soon as you save the mend.',
};

const CHECK: Said = {
  title: 'This page waits for the check',
  why: 'cannot be shown. A mistake in your files may be the reason: they are still being checked.',
  then: 'Mistakes are listed below once they are found, and the page comes by itself as soon as it can.',
};

function page(address: string, language: string, { title, why, then }: Said): string {
  const base = import.meta.env.BASE_URL.replace(/\/$/, '');
  const panel = `${base}/@fs${new URL('panel.ts', import.meta.url).pathname}`;
  return `<!doctype html>
<html lang="${language}" data-waiting>
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>${title}</title>
    <style>
      :root { color-scheme: light dark; --paper: light-dark(#fbf7ee, #171d22); --ink: light-dark(#23303b, #efe9dc);
        --ink-quiet: light-dark(#5a6672, #9fb0bc); --thread: light-dark(#a8402b, #f0a58f); --teal: light-dark(#1f5c6b, #7cc6d6); }
      body { margin: 0; font: 1.0625rem/1.5 system-ui, sans-serif; color: var(--ink); background: var(--paper); }
      main { max-width: 38rem; margin: 4rem auto; padding: 0 1rem; }
      a { color: var(--teal); }
    </style>
  </head>
  <body>
    <main>
      <h1>${title}</h1>
      <p><code>${escaped(address)}</code> ${why}</p>
      <p>${then} The <a href="${base}/">rest of the site</a> keeps working.</p>
    </main>
    <script type="module" src="${base}/@vite/client"></script>
    <script type="module" src="${panel}"></script>
  </body>
</html>`;
}
