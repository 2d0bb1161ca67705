/**
 * How long a browser takes to make the templates at a learner's size, from the press of the button to the finished
 * file: the first time, with the writer to load, and again. The browser can slow down a page, but not the worker that
 * makes the document; a machine four times as slow takes four times as long.
 *
 *     npm run build && node tests/bench/own-sheets.ts
 */
import { chromium } from '@playwright/test';
import { browserArguments, findBrowser } from '../browser.ts';
import { servePages } from './serve.ts';

const server = await servePages();
const browser = await chromium.launch({ executablePath: findBrowser(), args: browserArguments });
try {
  const page = await browser.newPage();
  await page.goto(`${server.origin}/projects/swatch-folio/`);
  const section = page.getByRole('region', { name: 'Templates and lists to print' });
  await section.scrollIntoViewIfNeeded();
  await page.waitForFunction(
    () => !document.querySelector('[aria-labelledby="to-print"] astro-island')?.hasAttribute('ssr'),
  );
  for (const time of ['first', 'again']) {
    await section.getByRole('radio', { name: time === 'first' ? 'A4' : 'Letter' }).check();
    const start = performance.now();
    await section.getByRole('button', { name: 'Templates at true scale' }).click();
    const save = section.getByRole('link', { name: /^Save/ });
    await save.waitFor();
    console.log(`${time}: ${(performance.now() - start).toFixed(0)} ms, ${await save.textContent()}`);
  }
} finally {
  await browser.close();
  server.close();
}
