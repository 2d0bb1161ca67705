/** What an instructor sees while writing: `npm start` on a copy of the kit, files broken and mended while it runs. */
import { existsSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import type { Locator, Page } from '@playwright/test';
import { copyKit } from '../copy-kit.ts';
import { start, type Started } from './npm-start.ts';

const PROJECT = 'content/projects/swatch-folio/project.yaml';
const COURSE = 'content/courses/pocket-folio/course.yaml';
const LESSON = 'content/courses/pocket-folio/01-size-the-panel.mdx';
const LAST_LESSON = 'content/courses/pocket-folio/02-pleat-the-strip.mdx';
const LESSON_PAGE = '/courses/pocket-folio/size-the-panel/';
const LAST_LESSON_PAGE = '/courses/pocket-folio/pleat-the-strip/';

test.describe.configure({ mode: 'default', timeout: 120_000 });

/** Asks for the page anew; the live preview may be doing the same at that moment, which would break off ours. */
const again = (page: Page) => expect(() => page.reload()).toPass();

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
    const width = page.locator('[data-size="card width"]').first();
    await expect(width).toContainText(/4¼\sin/);
    // A page that has only just come is not listening for changes yet.
    await page.waitForLoadState('networkidle');
    await changed(
      PROJECT,
      (text) => text.replace(/^( {2}card width:[^]*?in: )4 1\/4/m, '$14 1/2'),
      async (mend) => {
        await expect(width).toContainText(/4½\sin/);
        await mend();
        await expect(width).toContainText(/4¼\sin/);
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
        await again(page);
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

  test('a number typed in a sentence is remarked on beside it, and in the list', async ({ page }) => {
    await page.goto(site.address + LESSON_PAGE);
    await changed(
      LESSON,
      (text) => text.replace('\n<YourSize />', '\nCut the panel 5 1/4 in wide.\n\n<YourSize />'),
      async (mend) => {
        const paragraph = page.getByRole('paragraph').filter({ hasText: 'Cut the panel 5 1/4 in wide.' });
        await expect(paragraph.locator('mark')).toContainText('“5 1/4 in” is typed, so it stays when');
        await expect(panelOf(page)).toContainText('“5 1/4 in” is typed, so it stays when');
        await mend();
        await expect(page.locator('mark[data-mistake]')).toHaveCount(0);
        await expect(panelOf(page)).toBeHidden();
      },
    );
  });

  test('a program in a lesson is told and never run', async ({ page }) => {
    const ran = path.join(kit.folder, 'ran.txt');
    const program = `{/* a */ process.getBuiltinModule('node:fs').writeFileSync(${JSON.stringify(ran)}, '') /* b */}`;
    await page.goto(site.address + LESSON_PAGE);
    await changed(
      LESSON,
      (text) => `${text}\n${program}\n`,
      async (mend) => {
        await expect(panelOf(page)).toContainText('Braces { } have a meaning of their own in a lesson.');
        await again(page);
        await expect(page.getByRole('heading', { level: 2 }).first()).toBeVisible();
        expect(existsSync(ran)).toBe(false);
        await mend();
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
        await again(page);
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
  const good = new Map<string, string>();
  const write = (file: string, text: string) => writeFile(path.join(kit.folder, file), text);

  test.beforeAll(async () => {
    kit = await copyKit();
    for (const file of [PROJECT, LAST_LESSON]) good.set(file, await readFile(path.join(kit.folder, file), 'utf8'));
    await write(PROJECT, 'title: [Folio\n');
    await write(LAST_LESSON, `${good.get(LAST_LESSON)}\n<Tip>\n`);
    site = await start(kit.folder);
  });
  test.afterAll(async () => {
    await site?.stop();
    await kit?.remove();
  });

  test('the site opens, says what is wrong, and comes right by itself', async ({ page }) => {
    const heading = page.getByRole('heading', { level: 1 });
    await expect.poll(() => site.output()).toContain('2 mistakes in 2 files.');
    await page.goto(`${site.address}/`);
    await expect(heading).toHaveText('The Long Table');
    await expect(panelOf(page)).toContainText(PROJECT);
    await expect(panelOf(page)).toContainText(LAST_LESSON);

    // A lesson whose numbers are missing cannot be shown.
    await page.goto(site.address + LESSON_PAGE);
    await expect(heading).toHaveText('This page waits for a mend');
    await expect(panelOf(page)).toContainText(
      'A bracket opened above is not closed before this line: ] or } is missing.',
    );

    await write(PROJECT, good.get(PROJECT)!);
    await expect(heading).toHaveText('Size the pocket panel');

    // A lesson that breaks off shows what is wrong in place of its text.
    await page.goto(site.address + LAST_LESSON_PAGE);
    await expect(heading).toHaveText('Pleat the strip');
    await expect(page.locator('mark[data-mistake]')).toContainText('<Tip> is opened here and never closed.');
    await write(LAST_LESSON, good.get(LAST_LESSON)!);
    await expect(page.locator('mark[data-mistake]')).toHaveCount(0);
    await expect(panelOf(page)).toBeHidden();
  });
});
