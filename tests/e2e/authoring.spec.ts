/** What an instructor sees while writing: `npm start` on a copy of the kit, files broken and mended while it runs. */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import type { Locator, Page } from '@playwright/test';
import { copyKit } from '../copy-kit.ts';

const PROJECT = 'content/projects/swatch-folio/project.yaml';
const COURSE = 'content/courses/pocket-folio/course.yaml';
const LESSON = 'content/courses/pocket-folio/01-size-the-panel.mdx';
const LESSON_PAGE = '/courses/pocket-folio/size-the-panel/';

test.describe.configure({ mode: 'serial', timeout: 120_000 });

type Started = { address: string; output(): string; stop(): Promise<void> };

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as { port: number };
  await new Promise((done) => server.close(done));
  return port;
}

/** Runs the README's command and waits until it prints its address. */
async function start(folder: string): Promise<Started> {
  const port = await freePort();
  const child: ChildProcess = spawn('npm', ['start', '--', '--port', String(port), '--host', '127.0.0.1'], {
    cwd: folder,
    detached: process.platform !== 'win32', // npm's own child has to end with it
    shell: process.platform === 'win32',
    env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: undefined },
  });
  let printed = '';
  child.stdout?.on('data', (text) => (printed += text));
  child.stderr?.on('data', (text) => (printed += text));
  await expect.poll(() => printed, { timeout: 60_000 }).toContain('Ctrl+C stops it.');
  return {
    address: `http://127.0.0.1:${port}`,
    output: () => printed,
    async stop() {
      const ended = new Promise((done) => child.once('exit', done));
      if (process.platform === 'win32') child.kill();
      else process.kill(-child.pid!, 'SIGTERM');
      await ended;
    },
  };
}

const panelOf = (page: Page): Locator => page.getByRole('region', { name: 'Mistakes in your files' });

test.describe('while the site is open', () => {
  let kit: Awaited<ReturnType<typeof copyKit>>;
  let site: Started;
  test.beforeAll(async () => {
    kit = await copyKit();
    site = await start(kit.folder);
  });
  test.afterAll(async () => {
    await site?.stop();
    await kit?.remove();
  });

  /** Changes a file of the copy for one test and puts it back afterwards. */
  async function changed(
    file: string,
    change: (text: string) => string,
    look: (mend: () => Promise<void>) => Promise<void>,
  ) {
    const full = path.join(kit.folder, file);
    const before = await readFile(full, 'utf8');
    const after = change(before);
    expect(after, 'the change has an effect').not.toBe(before);
    await writeFile(full, after);
    try {
      await look(() => writeFile(full, before));
    } finally {
      await writeFile(full, before);
    }
  }

  test('the command says where the site is and which files to edit', () => {
    expect(site.output()).toContain(`${site.address}/`);
    for (const file of [PROJECT, COURSE, LESSON]) expect(site.output()).toContain(file);
  });

  test('a number changed in the project file changes the page', async ({ page }) => {
    await page.goto(site.address + LESSON_PAGE);
    await expect(page.getByRole('main')).toContainText('7 1/4 in'.replace(' 1/4', '¼'));
    await changed(
      PROJECT,
      (text) => text.replace(/(card width:[^\n]*in: )[^,}]+/, '$16'),
      async () => {
        await expect(page.locator('[data-size="card width"]').first()).toHaveText(/^6\s?in$/u);
      },
    );
  });

  test('a mistake in a project file shows in the page with its place, and the page stays', async ({ page }) => {
    await page.goto(site.address + LESSON_PAGE);
    const panel = panelOf(page);
    await expect(panel).toBeHidden();
    await changed(
      PROJECT,
      (text) => text.replace('\npieces:', '\nsise: 3\npieces:'),
      async (mend) => {
        await expect(panel).toContainText('“sise” is not known here.');
        await expect(panel).toContainText(PROJECT);
        await expect(panel).toContainText(/\d+:1/);
        await expect(panel).toContainText('pages still show its last state without a mistake');
        await page.reload();
        await expect(page.getByRole('heading', { level: 1 })).toHaveText('Size the pocket panel');
        await expect(panel).toContainText('“sise” is not known here.');
        expect(site.output()).toContain('“sise” is not known here.');
        await mend();
        await expect(panel).toBeHidden();
      },
    );
  });

  test('a misspelt lesson word stands in its place, and the rest of the lesson is there', async ({ page }) => {
    await page.goto(site.address + LESSON_PAGE);
    await changed(
      LESSON,
      (text) => text.replace('<YourSize />', '<YourSice />'),
      async (mend) => {
        await expect(page.locator('mark[data-mistake]')).toContainText(
          'There is no lesson word <YourSice>. Did you mean <YourSize>?',
        );
        await expect(panelOf(page)).toContainText(LESSON);
        await expect(page.getByRole('heading', { level: 2 }).first()).toBeVisible();
        await mend();
        await expect(page.locator('mark[data-mistake]')).toHaveCount(0);
        await expect(panelOf(page)).toBeHidden();
      },
    );
  });

  test('a lesson that breaks off keeps its last readable state', async ({ page }) => {
    await page.goto(site.address + LESSON_PAGE);
    await changed(
      LESSON,
      (text) => text.replace('</Tip>', ''),
      async (mend) => {
        await expect(panelOf(page)).toContainText('<Tip> is opened here and never closed.');
        await page.reload();
        await expect(page.getByRole('heading', { level: 2 }).first()).toBeVisible();
        await mend();
        await expect(panelOf(page)).toBeHidden();
      },
    );
  });
});

test.describe('started with mistakes', () => {
  let kit: Awaited<ReturnType<typeof copyKit>>;
  let site: Started;
  let lesson: string;
  let project: string;
  test.beforeAll(async () => {
    kit = await copyKit();
    lesson = await readFile(path.join(kit.folder, LESSON), 'utf8');
    project = await readFile(path.join(kit.folder, PROJECT), 'utf8');
    await writeFile(path.join(kit.folder, PROJECT), 'title: [Folio\n');
    await writeFile(path.join(kit.folder, LESSON), lesson.replace('</Tip>', ''));
    site = await start(kit.folder);
  });
  test.afterAll(async () => {
    await site?.stop();
    await kit?.remove();
  });

  test('the site opens, says what is wrong, and comes right by itself', async ({ page }) => {
    expect(site.output()).toContain('1 mistake');
    await page.goto(`${site.address}/`);
    await expect(panelOf(page)).toContainText(PROJECT);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('The Long Table');

    await page.goto(site.address + LESSON_PAGE);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('This page waits for a mend');
    await expect(panelOf(page)).toContainText(
      'A bracket opened above is not closed before this line: ] or } is missing.',
    );

    await writeFile(path.join(kit.folder, PROJECT), project);
    await writeFile(path.join(kit.folder, LESSON), lesson);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Size the pocket panel');
    await expect(panelOf(page)).toBeHidden();
  });
});
