/**
 * What a lesson page costs its reader: JavaScript shipped, hosts asked, and the time from moving a slider to the next
 * paint on a slow machine (a CPU slowed down four times).
 *
 *     npm run build && node tests/bench/lesson-page.ts
 */
import { gzipSync } from 'node:zlib';
import { chromium, type Locator, type Page } from '@playwright/test';
import { launchOptions } from '../browser.ts';
import { servePages } from './serve.ts';

const [SIZE, PLEAT, MAKE] = ['size-the-panel', 'pleat-the-strip', 'make-it-up'].map(
  (lesson) => `/courses/pocket-folio/${lesson}/`,
) as [string, string, string];
const OTHERS = ['/courses/mitred-corners/hem-and-mitre/', '/courses/standing-pouch/size-and-box/'];
const MOVES = 120;
/** Another program on the machine makes a round slow, and none makes one fast: the quietest round counts. */
const ROUNDS = 3;

const server = await servePages();
const browser = await chromium.launch(launchOptions());
try {
  for (const lesson of [SIZE, PLEAT, MAKE, ...OTHERS]) await weigh(lesson);
  // The strip's length in the study's table, and the sizes in that of the steps, stand for the page.
  await slide(PLEAT, {
    study: '[data-study="pleats"]',
    sliders: (page) => page.locator('[data-study="pleats"] input[type=range]'),
    follows: '[data-study="pleats"] tfoot',
  });
  await slide(MAKE, {
    study: '[data-study="make-up"]',
    sliders: async (page) => {
      await page.getByRole('button', { name: 'Your size' }).click();
      return page.getByRole('dialog').locator('input[type=range]');
    },
    follows: '[data-study="make-up"] table',
  });
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
    `${lesson}  JavaScript ${(total / 1000).toFixed(1)} kB gzip in ${scripts.size} files (at most 90 kB); ` +
      `other hosts asked: ${strangers.size === 0 ? 'none' : [...strangers].join(', ')}`,
  );
  await page.close();
}

type Sliding = {
  /** Is in view and awake before anything moves. */
  study: string;
  sliders: (page: Page) => Locator | Promise<Locator>;
  /** Shows when the page has followed: it is not under the hand. */
  follows: string;
};

/**
 * Moves each slider to and fro by the keyboard, as a learner who keeps at one, and times two things from the input: until
 * what is under the hand is painted, and until the whole page shows the new size.
 */
async function slide(lesson: string, sliding: Sliding): Promise<void> {
  const rounds: Round[] = [];
  while (rounds.length < ROUNDS) rounds.push(await slideOnce(lesson, sliding));
  const slow = ({ painted }: Round) => part(painted, 0.95);
  const { painted, followed, count } = rounds.toSorted((a, b) => slow(a) - slow(b))[0]!;
  console.log(
    `${lesson}  slider step at 4x slowdown, to paint: ${spread(painted)} (at most 50 ms), ${painted.length} steps on ` +
      `${count} sliders; until the whole page has followed: ${spread(followed)}; all rounds, 95 % to paint under ` +
      `${rounds.map((round) => slow(round).toFixed(1)).join(', ')} ms`,
  );
}

/** Times in ms, and how many sliders there were. */
type Round = { painted: number[]; followed: number[]; count: number };

async function slideOnce(lesson: string, { study, sliders: find, follows }: Sliding): Promise<Round> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(server.origin + lesson);
  await page.locator(study).scrollIntoViewIfNeeded();
  await page.locator(study).hover(); // a study sleeps until somebody comes near it
  await page.waitForFunction((asleep) => !document.querySelector(asleep), `astro-island[ssr] ${study}`);
  const sliders = await find(page);
  await sliders.first().waitFor();
  const client = await page.context().newCDPSession(page);
  await client.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.evaluate((follows) => {
    const [painted, followed]: [number[], number[]] = [[], []];
    Object.assign(globalThis, { painted, followed });
    let began = 0;
    addEventListener(
      'input',
      (event) => {
        began = event.timeStamp;
        requestAnimationFrame(() => {
          // A message sent in a frame arrives after that frame has been painted.
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => painted.push(performance.now() - event.timeStamp);
          port2.postMessage(0);
        });
      },
      { capture: true },
    );
    new MutationObserver(() => followed.push(performance.now() - began)).observe(document.querySelector(follows)!, {
      subtree: true,
      childList: true,
      characterData: true,
    });
  }, follows);
  const count = await sliders.count();
  for (let i = 0; i < count; i++) {
    await sliders.nth(i).focus();
    for (let move = 0; move < MOVES / count; move++) {
      await page.keyboard.press(move % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
      await page.waitForTimeout(60);
    }
    await page.waitForTimeout(400);
  }
  const told = await page.evaluate(() => {
    const { painted, followed } = globalThis as unknown as Record<'painted' | 'followed', number[]>;
    return { painted, followed };
  });
  await page.close();
  return { ...told, count };
}

function part(times: number[], p: number): number {
  const sorted = times.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * p))] ?? NaN;
}

function spread(times: number[]): string {
  return `median ${part(times, 0.5).toFixed(1)} ms, 95 % under ${part(times, 0.95).toFixed(1)} ms`;
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
