import { EventEmitter } from 'node:events';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { LoaderContext } from 'astro/loaders';
import { expect, test, vi } from 'vitest';
import { contentLoaders } from '../../../src/site/pages/loader.ts';
import { contentFolder, exchanged, GOOD } from '../content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const FOLD = 'content/courses/pleats/02-fold.mdx';

/** Other work on the machine may keep a reading waiting. */
const soon = { timeout: 10_000 };

/** As much of Astro as a loader sees: a shelf to put entries on, and news of changed files. */
function shelves(root: string) {
  const watcher = Object.assign(new EventEmitter(), { add: vi.fn() });
  const loaderOf = contentLoaders();
  const load = async (shelf: Parameters<typeof loaderOf>[0]) => {
    const entries = new Map<string, { id: string; data: Record<string, unknown> }>();
    await loaderOf(shelf).load({
      collection: shelf,
      config: { root: pathToFileURL(`${root}/`) },
      watcher,
      logger: { error: (message: string) => expect.unreachable(message) },
      parseData: ({ data }: { data: unknown }) => Promise.resolve(data),
      generateDigest: (text: string) => text,
      store: {
        clear: () => entries.clear(),
        keys: () => [...entries.keys()],
        has: (id: string) => entries.has(id),
        delete: (id: string) => entries.delete(id),
        set: (entry: { id: string; data: Record<string, unknown> }) => entries.set(entry.id, entry),
      },
    } as unknown as LoaderContext);
    return entries;
  };
  const save = (file: string, text: string) => {
    writeFileSync(path.join(root, file), text);
    watcher.emit('change', path.join(root, file));
  };
  return { load, save, watcher };
}

test('every file is on its shelf', async () => {
  const { load } = shelves(contentFolder());
  expect([...(await load('projects')).keys()]).toEqual(['folio']);
  expect([...(await load('courses')).keys()]).toEqual(['pleats']);
  const lessons = await load('lessons');
  expect([...lessons.keys()]).toEqual(['pleats/size', 'pleats/fold']);
  expect(lessons.get('pleats/fold')?.data).toEqual({
    title: 'Fold it',
    summary: 'All at once.',
    minutes: 30,
    course: 'pleats',
    slug: 'fold',
    fileName: '02-fold.mdx',
  });
  expect((await load('site')).get('site')?.data.name).toBe('The Long Table');
});

test('a changed number reaches the shelf', async () => {
  const { load, save } = shelves(contentFolder());
  const projects = await load('projects');
  save(PROJECT, GOOD[PROJECT]!.replace('title: Folio', 'title: Pocket folio'));
  await vi.waitFor(() => expect(projects.get('folio')?.data.title).toBe('Pocket folio'), soon);
});

test('a project that breaks keeps its last good state until it is mended', async () => {
  const { load, save } = shelves(contentFolder());
  const projects = await load('projects');
  const site = await load('site');
  const seen = async () => {
    save('content/site.yaml', `name: School ${Math.random()}\n`);
    const { name } = site.get('site')!.data;
    await vi.waitFor(() => expect(site.get('site')?.data.name).not.toBe(name), soon);
  };
  save(PROJECT, 'title: [\n');
  await seen();
  expect(projects.get('folio')?.data.title).toBe('Folio');
  save(PROJECT, GOOD[PROJECT]!.replace('title: Folio', 'title: Other').replace('2 * ease', '2 * eas'));
  await seen();
  expect(projects.get('folio')?.data.title).toBe('Folio');
  save(PROJECT, GOOD[PROJECT]!.replace('title: Folio', 'title: Other'));
  await vi.waitFor(() => expect(projects.get('folio')?.data.title).toBe('Other'), soon);
});

test('at the start, what cannot be read or worked out is left out', async () => {
  const folder = contentFolder({
    ...exchanged(PROJECT, '2 * ease', '2 * eas'),
    [FOLD]: GOOD[FOLD]!.replace('minutes: 30', 'minutes: long'),
  });
  const { load } = shelves(folder);
  expect([...(await load('lessons')).keys()]).toEqual(['pleats/size']);
  expect([...(await load('projects')).keys()]).toEqual([]);
});

test('a card that does not fit is no reason to hold the rest back', async () => {
  const { load } = shelves(contentFolder(exchanged(PROJECT, 'size: [card width, 2 in]', 'size: [9 in, 2 in]')));
  expect([...(await load('projects')).keys()]).toEqual(['folio']);
});

test('a new file and one that is gone are noticed', async () => {
  const root = contentFolder();
  const { load, save, watcher } = shelves(root);
  const lessons = await load('lessons');
  save('content/courses/pleats/03-hem.mdx', readFileSync(path.join(root, FOLD), 'utf8'));
  await vi.waitFor(() => expect([...lessons.keys()]).toContain('pleats/hem'), soon);
  rmSync(path.join(root, FOLD));
  watcher.emit('unlink', path.join(root, FOLD));
  await vi.waitFor(() => expect([...lessons.keys()]).not.toContain('pleats/fold'), soon);
});
