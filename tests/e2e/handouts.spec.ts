/** Documents to print: those that lie with the site, and those that a learner makes at their own size. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { poppler } from '../poppler.ts';
import { PLEAT, wake } from './lesson.ts';

const PROJECT = '/projects/swatch-folio/';
const COURSE = '/courses/pocket-folio/';

/** The choices for documents at one's own size, in sight and awake. */
async function choices(page: Page): Promise<Locator> {
  const section = page.getByRole('region', { name: 'Templates and lists to print' });
  await section.scrollIntoViewIfNeeded();
  await expect(section.locator('astro-island[ssr]')).toHaveCount(0);
  return section;
}

/** What of the writer has been fetched so far: its code, and the fonts that it sets. */
function writerOf(page: Page): () => string[] {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
  return () => fetched.filter((name) => /\/document[.-][\w-]+\.js$|\.ttf$/.test(name));
}

/** Blanks of any width as one plain blank. */
const spaced = (text: string): string => text.replace(/[\s\u202f\u2009]+/gu, ' ');

test('a course offers its documents on both papers in both editions, and none of the teacher’s', async ({ page }) => {
  await page.goto(COURSE);
  const section = page.getByRole('region', { name: 'To print' });
  await expect(section.getByRole('heading', { level: 3, name: 'Templates at true scale' })).toBeVisible();
  const links = await section
    .getByRole('link')
    .evaluateAll((all) => all.map((link) => (link as HTMLAnchorElement).href));
  expect(links.length % 4).toBe(0);
  for (const link of links) {
    const answer = await page.request.get(link);
    expect(answer.status(), link).toBe(200);
    expect((await answer.body()).subarray(0, 5).toString(), link).toBe('%PDF-');
  }
  expect(links.filter((link) => /answer-key|class-plan|teacher/.test(link))).toEqual([]);
  expect((await page.request.get('/handouts/pocket-folio/a4-inch/teacher/class-plan.pdf')).status()).toBe(404);
});

test('a lesson offers its worksheet', async ({ page }) => {
  await page.goto(PLEAT);
  const sheet = page.getByRole('link', { name: 'Worksheet: Pleat the strip: A4, metric, PDF' });
  const answer = await page.request.get(await sheet.evaluate((link) => (link as HTMLAnchorElement).href));
  expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-');
});

test('nothing of the writer is loaded for who only reads the page; who comes to the choices finds it ready', async ({
  page,
}) => {
  const writer = writerOf(page);
  await page.goto(PROJECT);
  const section = await choices(page);
  await expect(section).toContainText('At the lesson’s size');
  expect(writer()).toEqual([]);

  await section.getByRole('radio', { name: 'A4' }).hover();
  await expect.poll(() => writer().length).toBe(3);
});

test('a document at the lesson’s size lies with the site already; large print of it is made', async ({ page }) => {
  await page.goto(`${PROJECT}?edition=metric`);
  const section = await choices(page);
  await section.getByRole('button', { name: 'Cutting list' }).click();
  const save = section.getByRole('link', { name: /^Save “Cutting list”/ });
  await expect(save).toHaveText('Save “Cutting list” (PDF)');
  await expect(save).toHaveAttribute('href', '/handouts/pocket-folio/a4-metric/cutting-list.pdf');
  const answer = await page.request.get('/handouts/pocket-folio/a4-metric/cutting-list.pdf');
  expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-');

  await section.getByRole('checkbox', { name: 'Large print' }).check();
  await expect(save).toBeHidden();
  await section.getByRole('button', { name: 'Cutting list' }).click();
  await expect(save).toHaveText(/^Save “Cutting list”, \d+\s+pages \(PDF\)$/);
  await expect(save).toHaveAttribute('href', /^blob:/);
});

test('a learner prints templates of their own size, for which the writer is ready once they see the choices', async ({
  page,
}) => {
  const writer = writerOf(page);
  // 127 + 2 × 3 + 2 × 10 mm: the panel of a learner whose cards are 127 mm wide.
  await page.goto(`${PROJECT}?edition=metric&card-width=127+mm`);
  const section = await choices(page);
  await expect(section).toContainText('At your own size, in the metric edition');
  await expect.poll(() => writer().length).toBe(3);

  await section.getByRole('radio', { name: 'Letter' }).check();
  await section.getByRole('button', { name: 'Templates at true scale' }).click();
  const save = section.getByRole('link', { name: /^Save “Templates at true scale”, \d+ pages \(PDF\)$/ });
  await expect(save).toBeVisible();
  const folder = mkdtempSync(path.join(tmpdir(), 'own-'));
  const file = path.join(folder, 'own.pdf');
  const saved = async (link: Locator, name: string): Promise<string> => {
    const coming = page.waitForEvent('download');
    await link.click();
    const download = await coming;
    expect(download.suggestedFilename()).toBe(name);
    await download.saveAs(file);
    return spaced(poppler('pdftotext', '-layout', file, '-').toString());
  };
  try {
    const text = await saved(save, 'swatch-folio-templates-letter-metric.pdf');
    expect(text).toContain('153 mm × 733 mm');
    expect(poppler('pdffonts', file).toString()).toMatch(/Inter-Regular\s+CID TrueType\s+Identity-H\s+yes\s+yes\s+yes/);

    // Another paper is another document.
    await section.getByRole('radio', { name: 'A4' }).check();
    await expect(save).toBeHidden();
    // The steps, with the seconds at which the course’s recording shows them.
    await section.getByRole('button', { name: 'Step by step' }).click();
    const steps = await saved(
      section.getByRole('link', { name: /^Save “Step by step”/ }),
      'swatch-folio-step-sheet-a4-metric.pdf',
    );
    expect(steps).toContain('153 mm');
    expect(steps.match(/In the recording from \d+:\d\d to \d+:\d\d/g)!.length).toBeGreaterThan(10);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('the choices for a document can be read and reached by everyone', { tag: '@phone' }, async ({ page }) => {
  await page.goto(PROJECT);
  const section = page.getByRole('region', { name: 'Templates and lists to print' });
  await wake(section);
  await section.getByRole('button', { name: 'Cutting list' }).focus();
  await page.keyboard.press('Enter');
  await expect(section.getByRole('status')).toContainText('Save “Cutting list” (PDF)');
  const { violations } = await new AxeBuilder({ page }).include('[aria-labelledby="to-print"]').analyze();
  expect(violations).toEqual([]);
});
