import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    environment: 'node',
    include: ['tests/{core,site,author,components,reference}/**/*.test.ts'],
    testTimeout: 30_000,
  },
});
