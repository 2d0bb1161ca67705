/** The copy for a stick: opened from a plain folder, below a path, and by the little server that lies beside it. */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { expect, test } from '@playwright/test';
import type { Page } from '@playwright/test';
import { examineSite } from '../../src/author/publish/examine.ts';
import { copyPortable } from '../../src/author/publish/portable.ts';
import { wake, yourSize } from './lesson.ts';

const kit = fileURLToPath(new URL('../..', import.meta.url));
let folder: string;

test.beforeAll(() => {
  folder = path.join(mkdtempSync(path.join(tmpdir(), 'sewing-stick-')), 'course');
  copyPortable(path.join(kit, 'dist'), folder, '/');
  copyFileSync(path.join(kit, 'src/author/publish/open.mjs'), path.join(folder, 'open.mjs'));
});
test.afterAll(() => rmSync(path.dirname(folder), { recursive: true, force: true }));

/** From the start to a lesson, by the links a reader takes. */
async function toLesson(page: Page, start: string): Promise<void> {
  await page.goto(start);
  await page.getByRole('link', { name: 'Pockets from one strip' }).first().click();
  await page
    .getByRole('link', { name: /Size the pocket panel/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Size the pocket panel');
}

/** A slider of the lesson moves the number in its sentence. */
async function works(page: Page): Promise<void> {
  await expect(page.getByRole('note').filter({ hasText: 'from a folder' })).toHaveCount(0);
  await wake(yourSize(page));
  await page.getByRole('slider', { name: 'Width of your cards' }).first().press('ArrowRight');
  await expect(page.locator('[data-size="card width"]').first()).toContainText(/4⅜\sin/);
}

test('every link of the built site leads somewhere, and of the copy too', () => {
  expect(examineSite(path.join(kit, 'dist'), '/').dead).toEqual([]);
  const copy = examineSite(folder, '/');
  expect(copy.dead).toEqual([]);
  expect(copy.links.all).toBeGreaterThan(100);
});

test('straight from the folder one reads, and is told what sleeps there', async ({ page }) => {
  await toLesson(page, pathToFileURL(path.join(folder, 'index.html')).href);
  await expect(page.getByRole('note')).toContainText('You read this from a folder');
  await expect(page.locator('[data-size="card width"]').first()).toContainText(/4¼\sin/);
  await expect(page.locator('svg[role="img"]').first()).toBeVisible();
  // The styles came along: the page has its own paper, and its own letters.
  expect(await page.evaluate(() => getComputedStyle(document.body).fontFamily)).toContain('Text');
  expect(await page.evaluate(() => [...document.fonts].some(({ status }) => status === 'loaded'))).toBe(true);
});

test('by the little server beside it everything works', async ({ page }) => {
  const server: ChildProcess = spawn(process.execPath, ['open.mjs'], {
    cwd: folder,
    env: { ...process.env, PORT: '0' },
  });
  try {
    let said = '';
    server.stdout?.on('data', (text) => (said += String(text)));
    await expect.poll(() => said).toContain('The site is open at');
    const [start = ''] = /http:\S+/.exec(said) ?? [];
    await toLesson(page, start);
    await works(page);
    const lost = await page.goto(`${start}nowhere/`);
    expect(lost?.status()).toBe(404);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('This page is not here');
    expect((await page.request.get(`${start}..%2f..%2fetc/passwd`)).status()).toBe(404);
    // A player seeks in a recording by asking for a part of it.
    const part = await page.request.get(start, { headers: { range: 'bytes=2-8' } });
    expect([part.status(), await part.text()]).toEqual([206, 'DOCTYPE']);
    const beyond = await page.request.get(start, { headers: { range: 'bytes=99999999-' } });
    expect(beyond.status()).toBe(200);
  } finally {
    server.kill();
  }
});

test('below a path of any host everything works', async ({ page }) => {
  const types: Record<string, string> = {
    '.html': 'text/html',
    '.js': 'text/javascript',
    '.css': 'text/css',
    '.svg': 'image/svg+xml',
  };
  const answer = async (request: IncomingMessage, response: ServerResponse) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const file = pathname.startsWith('/deep/down/') ? path.join(folder, pathname.slice('/deep/down/'.length)) : '';
    const bytes = await readFile(file).catch(() => undefined);
    response.writeHead(bytes ? 200 : 404, { 'content-type': types[path.extname(file)] ?? 'application/octet-stream' });
    response.end(bytes);
  };
  const server = createServer((request, response) => void answer(request, response));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  try {
    const { port } = server.address() as { port: number };
    await toLesson(page, `http://127.0.0.1:${port}/deep/down/index.html`);
    await works(page);
    // What is worked out beside the page finds its program, too.
    await page.goto(`http://127.0.0.1:${port}/deep/down/courses/mitred-corners/hem-and-mitre/index.html`);
    const study = page.locator('[data-study="layout"]');
    await wake(study);
    for (let press = 0; press < 10; press++)
      await study.getByRole('slider', { name: 'Width, selvage to selvage' }).press('ArrowLeft');
    await expect(study.locator('.happened')).toContainText('You buy 2 yd');
  } finally {
    server.close();
  }
});
