/**
 * How long a learner waits for the templates at their own size, from the press of the button to the link that saves
 * the file, on a machine four times as slow: pressed in the very moment of coming to the choices, with everything still
 * to load; pressed two seconds after the choices came in sight; and again on other paper.
 *
 * The browser's own slowdown reaches the page but not the worker that makes the document. So the page's whole process
 * is halted again and again, longer and longer until it is four times as slow.
 *
 *     npm run build && node tests/bench/own-sheets.ts
 */
import { Worker, isMainThread, workerData } from 'node:worker_threads';
import { chromium, type BrowserContext, type Locator, type Page } from '@playwright/test';
import { launchOptions } from '../browser.ts';
import { servePages } from './serve.ts';

/** So many milliseconds a process runs between two halts. */
const GO = 5;

type Brake = { processes: number[]; /** One number: how many milliseconds a halt takes. */ halt: Int32Array };

if (isMainThread) await measure();
else brake(workerData as Brake);

/** Halts processes and lets them go on, as long as this thread lives. */
function brake({ processes, halt }: Brake): void {
  const clock = new Int32Array(new SharedArrayBuffer(4));
  const send = (signal: NodeJS.Signals) => {
    for (const id of processes) process.kill(id, signal);
  };
  for (;;) {
    send('SIGSTOP');
    Atomics.wait(clock, 0, 0, halt[0]);
    send('SIGCONT');
    Atomics.wait(clock, 0, 0, GO);
  }
}

async function measure(): Promise<void> {
  const server = await servePages();
  const browser = await chromium.launch(launchOptions());
  try {
    const papers = ['Letter', 'A4', 'Letter', 'A4'];
    for (const looks of [0, 2000]) {
      const context = await browser.newContext();
      const page = await opened(context, `${server.origin}/projects/swatch-folio/?card-width=5+in`);
      const client = await browser.newBrowserCDPSession();
      const { processInfo } = await client.send('SystemInfo.getProcessInfo');
      const processes = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
      await page.evaluate(sum);
      const quick = await page.evaluate(sum);
      const halt = new Int32Array(new SharedArrayBuffer(4));
      halt[0] = 2 * GO;
      const workerData: Brake = { processes, halt };
      const braking = new Worker(new URL(import.meta.url), { workerData });
      try {
        let slow: number;
        do {
          halt[0] += 1;
          slow = (await page.evaluate(sum)) / quick;
        } while (slow < 4);
        console.log(`the page runs ${slow.toFixed(1)} times as slow`);
        const section = await inSight(page);
        const button = section.getByRole('button', { name: 'Templates at true scale' });
        const save = section.getByRole('link', { name: /^Save/ });
        await page.waitForTimeout(looks);
        for (const paper of papers.slice(0, looks === 0 ? 1 : papers.length)) {
          if (looks > 0) await section.getByRole('radio', { name: paper }).check();
          await button.click();
          await save.waitFor();
          const pages = /\d+(?=\s+pages)/.exec((await save.textContent()) ?? '')?.[0];
          const wait = (await waits(page)).at(-1) ?? NaN;
          const when = looks === 0 ? 'pressed at once' : 'after a look at the choices';
          console.log(`${pages} pages, ${when}: ${wait.toFixed(0)} ms from click to file (at most 1000 ms)`);
        }
      } finally {
        await braking.terminate();
        for (const id of processes) process.kill(id, 'SIGCONT');
        await context.close();
      }
    }
  } finally {
    await browser.close();
    server.close();
  }
}

/** Opens the page, with a watch on every wait from a button's click to the link. */
async function opened(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  await page.addInitScript(() => {
    const waits: number[] = [];
    Object.assign(globalThis, { waits });
    let pressed: number | undefined;
    addEventListener('click', ({ target, timeStamp }) => {
      if (target instanceof Element && target.closest('.own-sheets button')) pressed = timeStamp;
    });
    new MutationObserver(() => {
      if (pressed === undefined || !document.querySelector('.own-sheets a[download]')) return;
      waits.push(performance.now() - pressed);
      pressed = undefined;
    }).observe(document, { childList: true, subtree: true });
  });
  await page.goto(address);
  return page;
}

/** Scrolls to the choices, and waits until they are awake. */
async function inSight(page: Page): Promise<Locator> {
  const section = page.getByRole('region', { name: 'Templates and lists to print' });
  await section.scrollIntoViewIfNeeded();
  await page.waitForFunction(
    () => !document.querySelector('[aria-labelledby="to-print"] astro-island')?.hasAttribute('ssr'),
  );
  return section;
}

/** The waits so far, in ms. */
function waits(page: Page): Promise<number[]> {
  return page.evaluate(() => (globalThis as unknown as { waits: number[] }).waits);
}

/** Some work for the page, and how many ms it takes. */
function sum(): number {
  const start = performance.now();
  let total = 0;
  for (let i = 0; i < 5e7; i++) total += Math.sqrt(i);
  return total > 0 ? performance.now() - start : 0;
}
