import { fileURLToPath } from 'node:url';
import { defineConfig, devices } from '@playwright/test';
import { launchOptions } from '../tests/browser.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const port = Number(process.env.TEST_PORT ?? 4410);

/** Tests in a real browser, against the built site: `npm run e2e` builds it first. */
export default defineConfig({
  testDir: `${root}/tests/e2e`,
  outputDir: `${root}/test-results`,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  workers: 2,
  timeout: 120_000, // a test looks at a whole page, and another program may be busy beside it
  expect: { timeout: 20_000 }, // met at once, but for a machine that is busy
  reporter: 'list',
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    launchOptions: launchOptions(),
    // A trace of every test takes as much of the processor as the tests themselves. `--trace on` asks for one.
    trace: 'off',
    screenshot: 'only-on-failure',
  },
  // A test runs once, on the desktop. Where a phone's screen or a finger makes a difference it says so by a tag:
  // @phone runs on both, @phone-only on the phone alone.
  projects: [
    {
      name: 'desktop',
      use: { ...devices['Desktop Chrome'], viewport: { width: 1280, height: 800 } },
      grepInvert: /@phone-only/,
    },
    {
      name: 'phone',
      use: { ...devices['Pixel 5'], viewport: { width: 360, height: 740 } },
      grep: /@phone/,
    },
  ],
  webServer: {
    // The little server that goes with a published site. A page asks for sixty files, and it answers the soonest.
    command: 'node src/author/publish/open.mjs dist',
    env: { PORT: String(port) },
    cwd: root,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
  },
});
