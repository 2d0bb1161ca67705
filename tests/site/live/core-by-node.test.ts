import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createServer } from 'vite';
import { afterAll, expect, test } from 'vitest';
import { coreByNode } from '../../../src/site/live/core-by-node.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const server = await createServer({
  root,
  configFile: false,
  logLevel: 'silent',
  appType: 'custom',
  server: { middlewareMode: true, watch: null, ws: false },
  optimizeDeps: { noDiscovery: true },
  cacheDir: path.join(root, '.cache/vite-tests'),
  plugins: [coreByNode(root)],
});
afterAll(() => server.close());

const PAGE = '/components/words/seam-study/seam.ts';

test('for pages Node loads the core, and Vite the rest', async () => {
  const made = (await server.ssrLoadModule(PAGE)) as object;
  expect(Object.keys(made).length).toBeGreaterThan(0);
  const files = [...server.environments.ssr.moduleGraph.fileToModulesMap.keys()];
  expect(files.some((file) => file.endsWith(PAGE))).toBe(true);
  expect(files.filter((file) => file.includes('/src/core/'))).toEqual([]);
});

test('browsers get the core from Vite', async () => {
  const sent = await server.environments.client.transformRequest(PAGE);
  expect(sent!.code).toContain('"/src/core/');
  expect(sent!.code).not.toContain('file:');
});
