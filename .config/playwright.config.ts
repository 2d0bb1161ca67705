import { fileURLToPath } from 'node:url';
import { defineConfig, devices } from '@playwright/test';
import { browserArguments, findBrowser } from '../tests/browser.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const port = Number(process.env.TEST_PORT ?? 4410);
const browser = findBrowser();

/** Tests in a real browser, against the built site: `npm run e2e` builds it first. */
export default defineConfig({
  testDir: `${root}/tests/e2e`,
  outputDir: `${root}/test-results`,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  workers: 2,
  timeout: 45_000,
  expect: { timeout: 10_000 },
  reporter: 'list',
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    launchOptions: { ...(browser && { executablePath: browser }), args: browserArguments },
    trace: 'retain-on-failure',
  },
  projects: [
    { name: 'desktop', use: { ...devices['Desktop Chrome'], viewport: { width: 1280, height: 800 } } },
    {
      name: 'phone',
      use: { ...devices['Pixel 5'], viewport: { width: 360, height: 740 } },
      testIgnore: /authoring|printing/, // neither what an instructor sees while writing nor paper depends on the screen
    },
  ],
  webServer: {
    command: `node src/author/astro.ts preview --host 127.0.0.1 --port ${port}`,
    cwd: root,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
  },
});
