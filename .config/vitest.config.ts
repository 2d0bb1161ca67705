import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

/** Tests of a page's state: it is compiled as for a browser, and runs in a document. */
const inPage = 'tests/{components,author,fuzz}/**/*.svelte.test.ts';
/** Tests that put a module in place of another, each in a worker of its own. */
const mocked = 'tests/**/*.mock.test.ts';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    testTimeout: 90_000, // the tests of paper take long where another program is busy beside them
    projects: [
      {
        extends: true,
        test: {
          name: 'plain',
          environment: 'node',
          // What a file imports is there for the next one, too: nothing of it keeps what a test did.
          isolate: false,
          include: ['tests/{core,site,author,components,reference,fuzz}/**/*.test.ts'],
          exclude: [inPage, mocked],
        },
      },
      { extends: true, test: { name: 'mocked', environment: 'node', include: [mocked] } },
      {
        extends: true,
        plugins: [svelte({ configFile: false })],
        resolve: { conditions: ['browser'] },
        test: {
          name: 'in a page',
          environment: 'jsdom',
          environmentOptions: { jsdom: { url: 'http://127.0.0.1/lesson/' } },
          include: [inPage],
        },
      },
    ],
  },
});
