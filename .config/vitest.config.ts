import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

/** Tests of a page's state: it is compiled as for a browser, and runs in a document. */
const inPage = 'tests/{components,author}/**/*.svelte.test.ts';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    testTimeout: 30_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'plain',
          environment: 'node',
          include: ['tests/{core,site,author,components,reference}/**/*.test.ts'],
          exclude: [inPage],
        },
      },
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
