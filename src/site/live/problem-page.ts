import type { MiddlewareHandler } from 'astro';
import root from 'virtual:content-root';
import { findContentProblems } from '../find-content-problems.ts';
import { isError } from '../problem.ts';

/**
 * In the live preview only: where a page cannot be made, or is not there, because content has a mistake, this page says
 * so. The list of mistakes stands in the panel, and the page comes back by itself once they are mended.
 */
export const onRequest: MiddlewareHandler = async (context, next) => {
  let failure: unknown;
  try {
    const response = await next();
    const isPage = response.headers.get('content-type')?.startsWith('text/html');
    if (!isPage) return response;
    const html = await response.text(); // what fails in the middle of a page fails here
    if (response.status !== 404 && response.status < 500) return new Response(html, response);
    failure = new Response(html, response);
  } catch (error) {
    failure = error;
  }
  const asksForPage = context.request.headers.get('accept')?.includes('text/html');
  if (!asksForPage || !findContentProblems(root).some(isError)) {
    if (failure instanceof Response) return failure;
    throw failure;
  }
  return new Response(page(context.url.pathname), {
    status: 503,
    headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' },
  });
};

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

function page(address: string): string {
  const base = import.meta.env.BASE_URL.replace(/\/$/, '');
  const panel = `${base}/@fs${new URL('panel.ts', import.meta.url).pathname}`;
  return `<!doctype html>
<html lang="en" data-waiting>
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>This page waits for a mend</title>
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
      <h1>This page waits for a mend</h1>
      <p><code>${escaped(address)}</code> cannot be shown because of a mistake in your files, listed below.</p>
      <p>It comes back by itself as soon as you save the mend. The <a href="${base}/">rest of the site</a> keeps working.</p>
    </main>
    <script type="module" src="${base}/@vite/client"></script>
    <script type="module" src="${panel}"></script>
  </body>
</html>`;
}
