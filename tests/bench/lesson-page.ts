/**
 * What a lesson page costs its reader: JavaScript shipped, hosts asked, and the time from moving a slider to the next
 * paint on a slow machine (a CPU slowed down four times).
 *
 *     npm run build && node tests/bench/lesson-page.ts
 */
import { gzipSync } from 'node:zlib';
import { chromium, type Page } from '@playwright/test';
import { browserArguments, findBrowser } from '../browser.ts';
import { servePages } from './serve.ts';

const lessons = ['/courses/pocket-folio/size-the-panel/', '/courses/pocket-folio/pleat-the-strip/'];
const MOVES = 120;

const server = await servePages();
const browser = await chromium.launch({ executablePath: findBrowser(), args: browserArguments });
try {
  for (const lesson of lessons) await weigh(lesson);
  await slide('/courses/pocket-folio/pleat-the-strip/');
} finally {
  await browser.close();
  server.close();
}

/** Loads a lesson, scrolls through it so that every widget wakes, and adds up its scripts. */
async function weigh(lesson: string): Promise<void> {
  const page = await browser.newPage();
  const scripts = new Map<string, number>();
  const strangers = new Set<string>();
  page.on('response', async (response) => {
    const url = new URL(response.url());
    if (url.origin !== server.origin && url.protocol !== 'data:' && url.protocol !== 'blob:') strangers.add(url.host);
    if (response.request().resourceType() === 'script')
      scripts.set(url.pathname, gzipSync(await response.body()).length);
  });
  await page.goto(server.origin + lesson);
  await scrollThrough(page);
  const html = await page.content();
  const inline = [...html.matchAll(/<script(?![^>]*(?:src=|application\/json))[^>]*>([\s\S]*?)<\/script>/g)];
  const inlineBytes = inline.reduce((sum, [, text = '']) => sum + gzipSync(text).length, 0);
  const total = [...scripts.values()].reduce((a, b) => a + b, 0) + inlineBytes;
  console.log(
    `${lesson}  JavaScript ${(total / 1000).toFixed(1)} kB gzip in ${scripts.size} files (at most 80 kB); ` +
      `other hosts asked: ${strangers.size === 0 ? 'none' : [...strangers].join(', ')}`,
  );
  await page.close();
}

/** Moves each slider of the pleat study to and fro by the keyboard and times input to paint. */
async function slide(lesson: string): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(server.origin + lesson);
  const study = page.locator('[data-study="pleats"]');
  await study.scrollIntoViewIfNeeded();
  const sliders = study.locator('input[type=range]');
  await sliders.first().waitFor();
  await page.waitForFunction(() => !document.querySelector('astro-island[ssr] [data-study="pleats"]'));
  const client = await page.context().newCDPSession(page);
  await client.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.evaluate(() => {
    const times: number[] = [];
    Object.assign(globalThis, { paintTimes: times });
    addEventListener(
      'input',
      (event) =>
        requestAnimationFrame(() => {
          // A message sent in a frame arrives after that frame has been painted.
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => times.push(performance.now() - event.timeStamp);
          port2.postMessage(0);
        }),
      { capture: true },
    );
  });
  const count = await sliders.count();
  for (let move = 0; move < MOVES; move++) {
    const slider = sliders.nth(move % count);
    await slider.press(Math.floor(move / count) % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
    await page.waitForTimeout(30);
  }
  const times = await page.evaluate(() => (globalThis as unknown as { paintTimes: number[] }).paintTimes);
  times.sort((a, b) => a - b);
  const part = (p: number) => (times[Math.min(times.length - 1, Math.floor(times.length * p))] ?? NaN).toFixed(1);
  console.log(
    `${lesson}  slider step to paint at 4x slowdown: median ${part(0.5)} ms, 95 % under ${part(0.95)} ms ` +
      `(at most 50 ms), ${times.length} steps on ${count} sliders`,
  );
}

async function scrollThrough(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let y = 0; y < document.body.scrollHeight; y += 400) {
      scrollTo(0, y);
      await new Promise((resolve) => setTimeout(resolve, 60));
    }
  });
  await page.waitForLoadState('networkidle');
}
