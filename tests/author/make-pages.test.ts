import { EventEmitter } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { ChildProcess } from 'node:child_process';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { makePages } from '../../src/author/make-pages.ts';
import type { Made, Opened, Wanted } from '../../src/site/pages/pages-by-two.ts';

let folder: string;
beforeAll(async () => (folder = await mkdtemp(path.join(os.tmpdir(), 'pages-'))));
afterAll(() => rm(folder, { recursive: true }));

/** A bundle like Astro's, whose pages say which style sheet they were given. */
const BUNDLE = `
let sheets;
const pages = {
  '/plain/': () => new Response('plain, with ' + sheets.get('kind').styles[0]),
  '/moved/': () => new Response(null, { status: 301 }),
  '/broken/': () => { throw new Error('broken'); },
  '/picture/': () => { globalThis.astroAsset.addStaticImage({ src: 'a.png' }); return new Response('picture'); },
};
export const app = {
  setInternals: ({ pagesByKeys }) => (sheets = pagesByKeys),
  setOptions() {},
  render: async ({ url }, { routeData }) => routeData.prerender && pages[new URL(url).pathname](),
};
export const manifest = { routes: [{ routeData: { route: '/[page]', component: 'page.astro', prerender: true } }] };
`;

test('a page is made where it can be, and given back where only Astro can', async () => {
  const file = path.join(folder, 'prerender-entry.mjs');
  await writeFile(file, BUNDLE);
  const build = Object.assign(new EventEmitter(), { connected: true, send: (made: Made) => build.emit('made', made) });
  makePages(build as unknown as ChildProcess);
  const answers = new Map<number, string | undefined>();
  build.emit('message', { bundle: pathToFileURL(file).href, sheets: [['kind', ['sheet.css']]] } satisfies Opened);
  const all = new Promise<void>((resolve) =>
    build.on('made', ({ page, html }: Made) => {
      answers.set(page, html && new TextDecoder().decode(html));
      if (answers.size === 5) resolve();
    }),
  );
  const ask = (page: number, name: string, component = 'page.astro') =>
    build.emit('message', { page, url: `http://localhost/${name}/`, route: '/[page]', component } satisfies Wanted);
  ask(1, 'plain');
  ask(2, 'moved');
  ask(3, 'broken');
  ask(4, 'picture');
  ask(5, 'plain', 'another.astro');
  await all;
  expect(Object.fromEntries(answers)).toEqual({
    1: 'plain, with sheet.css',
    2: undefined,
    3: undefined,
    4: undefined,
    5: undefined,
  });
});
