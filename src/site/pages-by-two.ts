/**
 * A build runs in two processes, and both make its pages: Astro's own, and the command that started it, which has its
 * hands free once the content is checked (src/author/make-pages.ts). Without that command Astro makes them all.
 */
import { readdirSync } from 'node:fs';
import type { AstroIntegration, AstroPrerenderer, HookParameters } from 'astro';
import { CHECKED_BESIDE } from './integration.ts';

/** Where the other process finds what makes pages, and the style sheets of each kind of page. */
export type Opened = { bundle: string; sheets: [kind: string, sheets: unknown][] };

/** A page asked of the other process, by a number that its answer carries. */
export type Wanted = { page: number; url: string; route: string; component: string };

/** The answer: the page, or nothing where Astro has to make it after all. */
export type Made = { page: number; html?: Uint8Array };

type Kinds = HookParameters<'astro:build:setup'>['pages'];

/** Lets the command that has started this build make pages, too. */
export function pagesByTwo(): AstroIntegration {
  let folder: URL;
  let kinds: Kinds = new Map();
  return {
    name: 'pages-by-two',
    hooks: {
      'astro:config:done'({ config }) {
        folder = new URL('.prerender/', config.outDir);
      },
      'astro:build:setup'({ pages }) {
        kinds = pages;
      },
      'astro:build:start'({ setPrerenderer }) {
        if (!process.env[CHECKED_BESIDE] || !process.connected) return;
        const ask = otherProcess();
        setPrerenderer((own) => {
          const setup = async () => {
            const sheets = [...kinds].map(([kind, { styles }]): Opened['sheets'][number] => [kind, inOrder(styles)]);
            const entry = readdirSync(folder).find((file) => file.startsWith('prerender-entry'));
            if (entry) process.send?.({ bundle: new URL(entry, folder).href, sheets } satisfies Opened);
            await own.setup?.();
          };
          return { ...byTwo(own, ask), setup };
        });
      },
    },
  };
}

type Sheet = NonNullable<ReturnType<Kinds['get']>>['styles'][number];

/**
 * Puts the style sheets of a kind of page in Astro's order, and numbers them. Astro sorts them for every page and turns
 * those of equal rank round each time; with numbers of their own they stand on all pages alike.
 */
export function inOrder(sheets: Sheet[]): Sheet[] {
  const rank = (n: number) => (n === -1 ? Infinity : n);
  const by = (a: number, b: number) => (a === b ? 0 : a < b ? -1 : 1);
  sheets.sort((a, b) => by(rank(a.order), rank(b.order)) || by(rank(b.depth), rank(a.depth)));
  sheets.forEach((sheet, i) => (sheet.order = i));
  return sheets;
}

type Ask = (wanted: Omit<Wanted, 'page'>) => Promise<Uint8Array<ArrayBuffer> | undefined>;

/**
 * Astro's way to make pages, and another beside it.
 *
 * @param ask comes back with nothing where Astro has to make the page
 */
export function byTwo(own: AstroPrerenderer, ask: Ask): AstroPrerenderer {
  const isForOther = sides();
  const isSame = new Map<string, Promise<boolean>>();
  return {
    ...own,
    async render(request, options) {
      const { route, component, type } = options.routeData;
      if (options.collectMetadata || type !== 'page' || !isForOther(request.url)) return own.render(request, options);
      const made = ask({ url: request.url, route, component });
      // The first page of each kind is made by both. Where they differ, Astro goes on alone.
      if (!isSame.has(component)) isSame.set(component, areSame(made, own.render(request, options)));
      const html = await made;
      return html && (await isSame.get(component)) ? new Response(html) : own.render(request, options);
    },
  };
}

/**
 * Who makes a page. All of one course, or of one project, are for the same process, which then works out its sizes and
 * steps once; a new one goes to whoever has fewer pages so far.
 */
function sides(): (url: string) => boolean {
  const isForOther = new Map<string, boolean>();
  let [mine, others] = [0, 0];
  return (url) => {
    const [of] = /\/(courses|projects)\/[^/]+/.exec(url) ?? [];
    const other = of !== undefined && (isForOther.get(of) ?? others < mine);
    if (of !== undefined) isForOther.set(of, other);
    if (other) others += 1;
    else mine += 1;
    return other;
  };
}

function otherProcess(): Ask {
  const waiting = new Map<number, (html?: Uint8Array<ArrayBuffer>) => void>();
  process.on('message', ({ page, html }: Made) => {
    waiting.get(page)?.(html && new Uint8Array(html));
    waiting.delete(page);
  });
  process.once('disconnect', () => waiting.forEach((answer) => answer()));
  let page = 0;
  return (wanted) =>
    new Promise((answer) => {
      if (!process.connected) return answer(undefined);
      waiting.set(page, answer);
      process.send?.({ ...wanted, page: page++ } satisfies Wanted);
    });
}

async function areSame(made: Promise<Uint8Array | undefined>, own: ReturnType<AstroPrerenderer['render']>) {
  const rendered = await own;
  const response = rendered instanceof Response ? rendered : rendered.response;
  const html = await made;
  return html !== undefined && Buffer.compare(html, await response.bytes()) === 0;
}
