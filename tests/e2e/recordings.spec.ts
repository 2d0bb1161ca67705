/**
 * A recording in a lesson, in a real browser with a real recording: the browser draws and records it itself, once, and
 * the test keeps it in its own folder. The site is a small one, built from the sound course of the fixtures.
 */
import { once } from 'node:events';
import { cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { execFile } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { copyKit } from '../copy-kit.ts';
import { chooseEdition, MAKE, PLEAT } from './lesson.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const KEPT = path.join(root, '.cache/test-recording/whole.webm');
const LESSON = '/courses/pleats/fold/';
/** In seconds. */
const LENGTH = 8;

const SAID = `WEBVTT

00:00.000 --> 00:01.000
hello everybody

00:01.000 --> 00:03.500
now fold the pleats of the strip the seam allowance is a quarter of an inch

00:03.500 --> 00:04.000
fold and press each pleat

00:04.000 --> 00:07.500
then lay the panel on the facing bottom edges together
`;
const SETTINGS = `title: The whole way
address: https://example.org/whole
address at a second: https://example.org/whole?from={second}
corrections:
  - { at: 0:05, note: 'The seam is [seam].' }
`;
const STEPS = `
steps:
  - { id: fold, pleat: strip, makes: panel }
  - { id: lay, lay: panel, on: facing, at: bottom, makes: pair, unless: flap }
`;

/** Draws a clock and records it, with what every browser has. */
async function record(page: Page): Promise<Buffer> {
  const bytes = await page.evaluate(async (seconds) => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 160, height: 90 });
    const pen = canvas.getContext('2d')!;
    const recorder = new MediaRecorder(canvas.captureStream(10), {
      mimeType: 'video/webm;codecs=vp8',
      videoBitsPerSecond: 60_000,
    });
    const parts: Blob[] = [];
    recorder.ondataavailable = ({ data }) => parts.push(data);
    const ended = new Promise((done) => (recorder.onstop = done));
    recorder.start();
    const begin = performance.now();
    await new Promise<void>((done) => {
      const draw = () => {
        const t = (performance.now() - begin) / 1000;
        pen.fillStyle = `hsl(${t * 40} 50% 80%)`;
        pen.fillRect(0, 0, 160, 90);
        pen.fillStyle = '#000';
        pen.font = '40px sans-serif';
        pen.fillText(t.toFixed(1), 40, 60);
        if (t < seconds) setTimeout(draw, 50);
        else done();
      };
      draw();
    });
    recorder.stop();
    await ended;
    return [...new Uint8Array(await new Blob(parts).arrayBuffer())];
  }, LENGTH);
  return Buffer.from(bytes);
}

const TYPES: Readonly<Record<string, string>> = {
  ...{ html: 'text/html', js: 'text/javascript', css: 'text/css', svg: 'image/svg+xml', woff2: 'font/woff2' },
  ...{ webm: 'video/webm', vtt: 'text/vtt', json: 'application/json' },
};

/** A plain host that hands out parts of files, as hosts do. */
function serve(folder: string): Server {
  return createServer((request, response) => {
    let file = path.join(folder, decodeURIComponent(new URL(request.url!, 'http://x').pathname));
    if (existsSync(file) && statSync(file).isDirectory()) file = path.join(file, 'index.html');
    if (!existsSync(file)) return void response.writeHead(404).end();
    const { size } = statSync(file);
    const [, first, last] = /bytes=(\d+)-(\d*)/.exec(request.headers.range ?? '') ?? [];
    const start = Number(first ?? 0);
    const end = last ? Number(last) : size - 1;
    const head = {
      'Content-Type': TYPES[path.extname(file).slice(1)] ?? 'application/octet-stream',
      'Accept-Ranges': 'bytes',
    };
    if (first === undefined) response.writeHead(200, { ...head, 'Content-Length': size });
    else
      response.writeHead(206, {
        ...head,
        'Content-Length': end - start + 1,
        'Content-Range': `bytes ${start}-${end}/${size}`,
      });
    createReadStream(file, { start, end }).pipe(response);
  }).listen(0, '127.0.0.1');
}

test.describe.configure({ mode: 'serial' });

let remove: (() => Promise<void>) | undefined;
let host: Server;
let address: string;
let dist: string;

test.beforeAll(async ({ browser }) => {
  test.setTimeout(300_000);
  if (!existsSync(KEPT)) {
    const page = await browser.newPage();
    await mkdir(path.dirname(KEPT), { recursive: true });
    await writeFile(KEPT, await record(page));
    await page.close();
  }
  const kit = await copyKit();
  remove = kit.remove;
  const content = path.join(kit.folder, 'content');
  await rm(content, { recursive: true });
  await cp(path.join(root, 'tests/fixtures/sound/content'), content, { recursive: true });
  const project = path.join(content, 'projects/folio/project.yaml');
  await writeFile(project, (await readFile(project, 'utf8')) + STEPS);
  const lesson = path.join(content, 'courses/pleats/02-fold.mdx');
  const words = '\n<Recording name="whole" />\n\n<Step id="fold" />\n\n<Step id="lay" />\n\n<YourSize />\n';
  await writeFile(lesson, (await readFile(lesson, 'utf8')) + words);
  const beside = path.join(content, 'courses/pleats/recordings');
  await mkdir(beside);
  await writeFile(path.join(beside, 'whole.vtt'), SAID);
  await writeFile(path.join(beside, 'whole.yaml'), SETTINGS);
  await cp(KEPT, path.join(beside, 'whole.webm'));
  await promisify(execFile)(process.execPath, ['src/author/astro.ts', 'build'], {
    cwd: kit.folder,
    env: { ...process.env, HANDOUTS: 'no' },
  });
  dist = path.join(kit.folder, 'dist');
  host = serve(dist);
  await once(host, 'listening');
  address = `http://127.0.0.1:${(host.address() as AddressInfo).port}`;
});
test.afterAll(async () => {
  host?.close();
  await remove?.();
});

const player = (page: Page) => page.getByRole('group', { name: 'Recording: The whole way' });
const time = (page: Page) => page.locator('video').evaluate((video: HTMLVideoElement) => video.currentTime);
const captions = (page: Page) =>
  page.locator('video').evaluate((video: HTMLVideoElement) => {
    const track = [...video.textTracks].find(({ kind }) => kind === 'captions');
    return [...(track?.cues ?? [])].map((cue) => (cue as VTTCue).text.replace(/[\u00a0\u2009\u202f]/g, ' '));
  });

/** Other hosts that were asked, and what the page complains of. */
function listen(page: Page): string[] {
  const heard: string[] = [];
  page.on('request', (request) => {
    if (/^https?:/.test(request.url()) && !request.url().startsWith(address)) heard.push(request.url());
  });
  page.on('console', (message) => message.type() === 'error' && heard.push(message.text()));
  page.on('pageerror', (error) => heard.push(error.message));
  return heard;
}

async function open(page: Page, query = ''): Promise<void> {
  await page.goto(`${address}${LESSON}${query}`);
  await player(page).hover();
  await expect(page.locator('[data-recording] astro-island')).not.toHaveAttribute('ssr', /.*/);
}

test('it plays a step when that is pressed, and nothing before', async ({ page }) => {
  const heard = listen(page);
  await open(page);
  expect(
    await page.locator('video').evaluate((video: HTMLVideoElement) => video.paused && video.currentTime === 0),
  ).toBe(true);
  const steps = page.getByRole('navigation', { name: 'Steps in The whole way' });
  const second = steps.getByRole('button').nth(1);
  await expect(second).toContainText('Lay the panel on the facing');
  await second.click();
  await expect.poll(() => time(page)).toBeGreaterThan(4);
  await expect(second).toHaveAttribute('aria-current', 'step');
  // The text runs along.
  await expect(page.locator('.said .now')).toContainText('then lay the panel');
  // And what is put right stands beside it at its second.
  await expect(player(page).getByRole('status')).toContainText(/Put right: The seam is ¼\s*in\./);
  // Back to where the step begins, however far it has come, and from there to the one before.
  await page.keyboard.press('p');
  await page.keyboard.press('p');
  await expect.poll(() => time(page)).toBeLessThan(3.5);
  await page.keyboard.press('s');
  expect(await page.locator('video').evaluate((video: HTMLVideoElement) => video.playbackRate)).toBe(0.75);
  expect(heard).toEqual([]);
});

test('a step of the lesson leads to its stretch, and it stops where the step ends', async ({ page }) => {
  await open(page);
  await page.getByRole('checkbox', { name: 'Stop after each step' }).check();
  await page.getByRole('link', { name: /Watch this step ?: Fold the pleats/ }).press('Enter');
  await expect(page.locator('video')).toBeInViewport();
  await expect.poll(() => time(page)).toBeGreaterThan(1);
  await expect
    .poll(() => page.locator('video').evaluate((video: HTMLVideoElement) => video.paused), { timeout: 15_000 })
    .toBe(true);
  const at = await time(page);
  expect(at).toBeGreaterThan(3);
  expect(at).toBeLessThan(5);
});

test('captions and text follow the edition and the size', async ({ page }) => {
  await open(page);
  await expect
    .poll(() => captions(page))
    .toContain('now fold the pleats of the strip the seam allowance is a quarter of an inch');
  await chooseEdition(page, 'metric');
  await expect
    .poll(() => captions(page))
    .toContain('now fold the pleats of the strip the seam allowance is a quarter of an inch (yours: 6 mm)');
  await expect(page.locator('.said')).toContainText(/a quarter of an inch\s*\(yours: 6\s*mm\)/);
});

test('it remembers where the reader was', async ({ page }) => {
  await open(page);
  await page.getByRole('navigation', { name: 'Steps in The whole way' }).getByRole('button').nth(1).click();
  await expect.poll(() => time(page)).toBeGreaterThan(4.2);
  // The end of a recording is not worth remembering: it must not have played on.
  await page.locator('video').evaluate((video: HTMLVideoElement) => {
    video.pause();
    video.currentTime = 4.5;
  });
  await page.reload();
  await expect.poll(() => time(page)).toBeGreaterThan(3.9);
  expect(await page.locator('video').evaluate((video: HTMLVideoElement) => video.paused)).toBe(true);
});

test('once opened it works without a connection @phone', async ({ page, context }) => {
  await open(page);
  await page.locator('video').evaluate(async (video: HTMLVideoElement) => {
    // A short recording is fetched whole.
    await video.play();
    while (video.buffered.length === 0 || video.buffered.end(video.buffered.length - 1) < 7)
      await new Promise((r) => setTimeout(r, 50));
    video.pause();
  });
  await context.setOffline(true);
  await page.getByRole('navigation', { name: 'Steps in The whole way' }).getByRole('button').nth(1).click();
  await expect.poll(() => time(page)).toBeGreaterThan(4);
  await expect(page.getByRole('alert')).toHaveCount(0);
  await context.setOffline(false);
});

test('it has no barrier, fits a phone, and every control is big enough for a thumb @phone', async ({ page }) => {
  await open(page);
  const { violations } = await new AxeBuilder({ page })
    .include('[data-recording]')
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html.slice(0, 100))])).toEqual([]);
  const small = await page
    .locator('[data-recording] button, [data-recording] .chapters a')
    .evaluateAll((controls) =>
      controls.filter((one) => one.getBoundingClientRect().height < 43.9).map((one) => one.outerHTML.slice(0, 90)),
    );
  expect(small).toEqual([]);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide).toBeLessThanOrEqual(0);
  await expect(page.getByRole('region', { name: 'What is said in The whole way' })).toBeVisible();
});

test('the player is worked by the keyboard alone', async ({ page }) => {
  await open(page);
  await page.getByRole('button', { name: 'Next step' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => time(page)).toBeGreaterThanOrEqual(1);
  await page.keyboard.press('n');
  await expect.poll(() => time(page)).toBeGreaterThanOrEqual(4);
});

test('links lead to where it is published at the second, and ask that host for nothing before', async ({ page }) => {
  const heard = listen(page);
  await open(page);
  await expect(page.getByRole('link', { name: /Watch where it is published ?: Lay/ })).toHaveAttribute(
    'href',
    /^https:\/\/example\.org\/whole\?from=[34]$/,
  );
  expect(heard).toEqual([]);
});

test('the build carries the recording byte for byte, with its captions', async () => {
  const folder = path.join(dist, 'recordings/pleats/whole');
  expect(await readFile(path.join(folder, 'whole.webm'))).toEqual(await readFile(KEPT));
  expect(await readFile(path.join(folder, 'captions-metric.vtt'), 'utf8')).toMatch(/a quarter of an inch \(6\s*mm\)/);
  expect(await readFile(path.join(folder, 'chapters.vtt'), 'utf8')).toContain('Lay the panel on the facing');
  expect(existsSync(path.join(folder, 'for-the-author.txt'))).toBe(false);
});

test('without the recording itself its words are a transcript with times @phone', async ({ page, isMobile }) => {
  await page.goto(MAKE);
  const said = page.getByRole('region', { name: 'What is said in Making up the folio' });
  await expect(said).toContainText('now we pleat the pocket strip');
  // A phone keeps it folded until it is asked for.
  const telling = said.getByText('now we pleat the pocket strip');
  if (isMobile) await expect(telling).toBeHidden();
  await expect(page.locator('[data-recording] video')).toHaveCount(0);
  await page.getByRole('link', { name: /Read what is said at this step ?: Fold the pleats/ }).click();
  await expect(page.locator(':target')).toHaveText('Fold the pleats of the pocket strip');
  await expect(page.locator(':target')).toBeInViewport();
  await expect(telling).toBeVisible();
  await chooseEdition(page, 'metric');
  await expect(said).toContainText(/four and a half inches\s*\(yours: 111\s*mm\)/);
});

test('a lesson without a recording ships nothing of it', async ({ page }) => {
  const fetched: string[] = [];
  page.on('response', (response) => {
    if (/\.(js|css)$/.test(new URL(response.url()).pathname)) fetched.push(response.url());
  });
  await page.goto(PLEAT, { waitUntil: 'networkidle' });
  expect(fetched.length).toBeGreaterThan(5);
  for (const url of fetched) {
    expect(url).not.toMatch(/recording/i);
    const text = await (await page.request.get(url)).text();
    expect(text).not.toMatch(/data-recording|addTextTrack|Watch this step|\.recording\b/);
  }
});
