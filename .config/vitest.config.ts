import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const STATE = 'tests/components/**/*.svelte.test.ts';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    environment: 'node',
    testTimeout: 30_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'plain',
          include: ['tests/{core,site,author,components,reference}/**/*.test.ts'],
          exclude: [STATE],
        },
      },
      {
        // State is compiled as for a page: on a server nothing follows anything.
        extends: true,
        plugins: [svelte({ configFile: false })],
        environments: { ssr: { consumer: 'client', resolve: { conditions: ['browser'] } } },
        test: { name: 'state', include: [STATE], server: { deps: { inline: ['svelte'] } } },
      },
    ],
  },
});
