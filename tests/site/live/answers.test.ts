/** The live preview goes on, and every request is answered, whatever fails behind it. */
import { EventEmitter } from 'node:events';
import { rmSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test, vi } from 'vitest';
import { livePreview } from '../../../src/site/live/live-preview.ts';
import { handoutsInSite } from '../../../src/site/print/handouts-integration.ts';
import { contentFolder } from '../content-folder.ts';

/** Other work on the machine may keep the check waiting. */
const soon = { timeout: 20_000 };

const run = (hook: unknown, given: object): unknown => (hook as (given: object) => unknown)(given);

test('a file that is gone when it is read does not end the preview', async () => {
  const root = contentFolder();
  const send = vi.fn();
  const watcher = Object.assign(new EventEmitter(), { add: vi.fn() });
  run(livePreview(root).configureServer, { watcher, environments: {}, ws: { on: vi.fn(), send } });
  await vi.waitFor(() => expect(send).toHaveBeenCalledWith('content:problems', expect.anything()), soon);
  send.mockClear();
  const said = vi.spyOn(console, 'error').mockImplementation(() => undefined);

  const gone = path.join(root, 'content/courses/pleats/09-gone.mdx');
  symlinkSync(path.join(root, 'nowhere'), gone);
  watcher.emit('add', gone);
  await vi.waitFor(
    () => expect(said).toHaveBeenCalledWith(expect.stringContaining('The content could not be read')),
    soon,
  );
  // The page is told to come anew, since a file changed, and keeps its list of mistakes.
  expect(send).not.toHaveBeenCalledWith('content:problems', expect.anything());
  said.mockRestore();

  rmSync(gone);
  watcher.emit('unlink', gone);
  await vi.waitFor(() => expect(send).toHaveBeenCalledWith('content:problems', expect.anything()), soon);
});

test('a document that cannot be sent is handed on as an error', async () => {
  const { hooks } = handoutsInSite();
  let handler: ((request: object, response: object, next: (error?: unknown) => void) => void) | undefined;
  await run(hooks['astro:config:done'], { config: { root: pathToFileURL(`${process.cwd()}/`) } });
  await run(hooks['astro:server:setup'], {
    server: { config: { base: '/' }, middlewares: { use: (given: typeof handler) => (handler = given) } },
  });
  const broken = new Error('The line broke.');
  const response = {
    setHeader: vi.fn(),
    removeHeader: vi.fn(),
    end: () => {
      throw broken;
    },
  };
  const next = vi.fn();
  handler!({ url: '/handouts/fonts/regular.ttf' }, response, next);
  await vi.waitFor(() => expect(next).toHaveBeenCalledWith(broken), { timeout: 20_000 });
  expect(response.removeHeader).toHaveBeenCalledWith('Content-Type');
});
