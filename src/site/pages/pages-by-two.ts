/**
 * A build runs in two processes, and both make its pages: Astro's own, and the command that started it, which has its
 * hands free once the content is checked (src/author/make-pages.ts). Without that command Astro makes them all.
 */
import { readdirSync } from 'node:fs';
import type { AstroIntegration, AstroPrerenderer, HookParameters } from 'astro';
import { CHECKED_BESIDE } from './beside.ts';

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
type Answer = Awaited<ReturnType<AstroPrerenderer['render']>>;
/** A page to be made, and who waits for it. */
type Task = {
  request: Request;
  options: Parameters<AstroPrerenderer['render']>[1];
  done: (answer: Promise<Answer>) => void;
};
type Make = (task: Task) => Promise<Answer>;

/** So many pages the other process has in store, that it need not wait while this one is at work. */
const IN_STORE = 8;

/**
 * Astro's way to make pages, and another beside it. All pages of one course, or of one project, are made by the same
 * process, which then works out its sizes and steps once; whoever runs out of pages takes the next one.
 *
 * @param ask comes back with nothing where Astro has to make the page
 */
export function byTwo(own: AstroPrerenderer, ask: Ask): AstroPrerenderer {
  const isSame = new Map<string, Promise<boolean>>();
  const ownWay: Make = async ({ request, options }) => own.render(request, options);
  const otherWay: Make = async (task) => {
    const { url } = task.request;
    const { route, component } = task.options.routeData;
    const made = ask({ url, route, component });
    // The first page of each kind is made by both. Where they differ, Astro goes on alone.
    if (!isSame.has(component)) isSame.set(component, areSame(made, ownWay(task)));
    const html = await made;
    return html && (await isSame.get(component)) ? new Response(html) : ownWay(task);
  };

  const forOne: Task[] = [];
  const forEither = new Map<string, Task[]>();
  let [othersStore, isAtWork] = [0, false];

  const takeTogether = (): Task[] => {
    const [of, tasks] = forEither.entries().next().value!;
    forEither.delete(of);
    return tasks;
  };
  const share = () => {
    while (othersStore < IN_STORE && forEither.size > 0) takeTogether().forEach(giveAway);
    if (!isAtWork) void work();
  };
  const giveAway = (task: Task) => {
    othersStore += 1;
    const answer = otherWay(task);
    task.done(answer);
    void answer.catch(() => {}).then(() => ((othersStore -= 1), share()));
  };
  /** One page after the other; between them there is time for what the other has made. */
  const work = async () => {
    isAtWork = true;
    while (forOne.length + forEither.size > 0) {
      if (forOne.length === 0) forOne.push(...takeTogether());
      const task = forOne.shift()!;
      const answer = ownWay(task);
      task.done(answer);
      await answer.catch(() => {});
      await new Promise(setImmediate);
    }
    isAtWork = false;
  };

  return {
    ...own,
    render(request, options) {
      if (options.collectMetadata || options.routeData.type !== 'page') return own.render(request, options);
      // Once Astro has asked for all that it will ask for.
      if (forOne.length + forEither.size === 0) setImmediate(share);
      const [of] = /\/(courses|projects)\/[^/]+/.exec(request.url) ?? [];
      return new Promise((done) => {
        const task = { request, options, done };
        if (of === undefined) forOne.push(task);
        else forEither.set(of, [...(forEither.get(of) ?? []), task]);
      });
    },
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
