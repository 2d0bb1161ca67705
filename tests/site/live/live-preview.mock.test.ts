import { expect, test, vi } from 'vitest';
import type { ViteDevServer } from 'vite';
import type { Checked } from '../../../src/site/live/content-check.ts';
import { livePreview, MISTAKES_MODULE } from '../../../src/site/live/live-preview.ts';

const MISTAKE = { file: 'content/site.yaml', line: 1, column: 1, severity: 'error', message: 'Wrong.' } as const;
const ID = `\0${MISTAKES_MODULE}`;

const check = vi.hoisted(() => ({ checked: Promise.resolve<unknown>(undefined), listen: () => {}, look: () => {} }));
vi.mock('../../../src/site/live/content-check.ts', () => ({ contentCheckOf: () => check }));

/** As much of Vite as the preview sees: modules that are forgotten. */
function preview() {
  const forgotten: string[] = [];
  const moduleGraph = {
    getModuleById: (id: string) => id,
    getModulesByFile: () => undefined,
    invalidateModule: (id: string) => void forgotten.push(id),
  };
  const plugin = livePreview('/kit');
  const server = {
    environments: { ssr: { moduleGraph } },
    watcher: { add: () => {}, on: () => server.watcher },
    ws: { on: () => {} },
  };
  (plugin.configureServer as (server: ViteDevServer) => void)(server as unknown as ViteDevServer);
  return { load: plugin.load as unknown as (id: string) => Promise<string>, forgotten };
}

test('whether there are mistakes is told once the check is done', async () => {
  const { load } = preview();
  check.checked = Promise.resolve({ problems: [MISTAKE], kept: [], changed: [] } satisfies Checked);
  expect(await load(ID)).toBe('export default true;');
  check.checked = Promise.resolve({ problems: [{ ...MISTAKE, severity: 'warning' }], kept: [], changed: [] });
  expect(await load(ID)).toBe('export default false;');
});

test('no page waits for a long check, and the next one is told what it found', async () => {
  const { promise, resolve } = Promise.withResolvers<Checked>();
  check.checked = promise;
  const { load, forgotten } = preview();
  expect(await load(ID)).toBe('export default undefined;');
  expect(forgotten).toEqual([]);
  resolve({ problems: [MISTAKE], kept: [], changed: [] });
  await promise;
  expect(forgotten).toEqual([ID]);
  expect(await load(ID)).toBe('export default true;');
});
