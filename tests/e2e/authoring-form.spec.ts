/** The author's form: a project as a form while `npm start` runs, used by an instructor who has an editor open too. */
import { request as ask } from 'node:http';
import { globSync, readFileSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import type { Page } from '@playwright/test';
import { copyKit } from '../copy-kit.ts';
import { start, type Started } from './npm-start.ts';

const PROJECT = 'content/projects/swatch-folio/project.yaml';
const FORM = '/authoring/form/swatch-folio/';
const dist = fileURLToPath(new URL('../../dist', import.meta.url));

test('the built site has no form', async ({ request }) => {
  expect((await request.get(FORM)).status()).toBe(404);
  expect((await request.get(`${FORM}file.json`)).status()).toBe(404);
  const files = globSync('**/*.{html,js,css,json}', { cwd: dist });
  expect(files.length).toBeGreaterThan(20);
  expect(files.filter((file) => readFileSync(path.join(dist, file), 'utf8').includes('authoring/form/'))).toEqual([]);
});

test.describe('while the site is open for writing', () => {
  test.describe.configure({ mode: 'default', timeout: 120_000 });
  let kit: Awaited<ReturnType<typeof copyKit>>;
  let site: Started;
  let asGiven: string;
  const full = () => path.join(kit.folder, PROJECT);
  const onDisk = () => readFile(full(), 'utf8');
  const edit = (text: string) => writeFile(full(), text);

  test.beforeAll(async () => {
    kit = await copyKit();
    asGiven = await onDisk();
    site = await start(kit.folder);
  });
  test.afterEach(() => edit(asGiven));
  test.afterAll(async () => {
    await site?.stop();
    await kit?.remove();
  });

  const open = async (page: Page) => {
    await page.goto(site.address + FORM);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Swatch-card folio', { timeout: 60_000 });
    await page.waitForLoadState('networkidle');
  };
  /** A measure is called by its name and what it comes to, another entry by its name alone. */
  const entry = (page: Page, name: string) =>
    page.getByRole('group', { name: new RegExp(`^${name}(?= [\\d¼½¾⅛⅜⅝⅞]|$)`) });
  const cut = (page: Page, piece: string) =>
    page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: piece, exact: true }) });
  /** The lines of the file that differ from the ones it came with. */
  const difference = async () => {
    const [before, after] = [asGiven.split('\n'), (await onDisk()).split('\n')];
    expect(after).toHaveLength(before.length);
    return after.filter((line, i) => line !== before[i]).map((line) => line.trim());
  };

  test('a number is changed: the sums follow while it is typed, the file when the box is left', async ({ page }) => {
    await open(page);
    await page.evaluate(() => Object.assign(window, { stillTheSamePage: true }));
    const seam = entry(page, 'seam');
    await expect(cut(page, 'Facing behind the pockets')).toContainText(/5¼\sin × 7⅛\sin/);
    await seam.getByLabel('in', { exact: true }).fill('1/4');
    await expect(cut(page, 'Facing behind the pockets')).toContainText(/5\sin × 6⅞\sin/);
    expect(await difference()).toEqual([]);

    await page.keyboard.press('Tab');
    await expect(page.getByText('Written to line 31: 3/8 is 1/4 now.')).toBeVisible();
    expect(await difference()).toEqual([
      'seam: { in: 1/4, mm: 10, label: Seam allowance, note: Wide enough for many layers and for corners that are turned. }',
    ]);
    // The other edition is a value of its own.
    await expect(cut(page, 'Facing behind the pockets')).toContainText(/131\smm × 183\smm/);
    await expect(seam.getByLabel('mm', { exact: true })).toBeFocused();

    await page.getByRole('button', { name: 'Put it back' }).click();
    await expect(page.getByText('Written to line 31: 1/4 is 3/8 now.')).toBeVisible();
    expect(await onDisk()).toBe(asGiven);
    expect(await page.evaluate(() => 'stillTheSamePage' in window)).toBe(true);
  });

  test('what cannot be read is not written, and said beside the box', async ({ page }) => {
    await open(page);
    const box = entry(page, 'seam').getByLabel('in', { exact: true });
    await box.fill('1/4 inchs');
    await box.press('Enter');
    await expect(entry(page, 'seam')).toContainText(
      'Not written. “inchs” is not a unit of length. Do you mean “inch”?',
    );
    await expect(box).toHaveAttribute('aria-invalid', 'true');
    await expect(box).toHaveValue('1/4 inchs');
    expect(await onDisk()).toBe(asGiven);
    await box.press('Escape');
    await expect(box).toHaveValue('3/8');
  });

  test('a card that no longer fits is found, beside the entry and in the list, and the list leads to the box', async ({
    page,
  }) => {
    await open(page);
    await expect(page.getByText('Both editions add up, with and without each option.')).toBeVisible();
    const pockets = entry(page, 'panel width').getByLabel('is', { exact: true });
    await pockets.fill('card width + 2 * seam');
    const findings = page.getByRole('region', { name: 'Findings' });
    await expect(findings).toContainText(/does not fit/);
    await findings.getByRole('button', { name: /^Show/ }).first().click();
    await expect(page.locator('[data-place]:focus')).toBeVisible();
    // The box was left, so the change is in the file: that a card no longer fits is the author's to weigh.
    await page.getByRole('button', { name: 'Put it back' }).click();
    await expect(findings).toContainText('Both editions add up');
    expect(await onDisk()).toBe(asGiven);
  });

  test('a measure is added, and a value to one that is there', async ({ page }) => {
    await open(page);
    await page.getByText('Add a measure', { exact: true }).click();
    await page.getByLabel('Name', { exact: true }).fill('hanging loop');
    await page.getByLabel('Value', { exact: true }).fill('3 inchs');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await expect(page.getByRole('alert')).toContainText('“inchs” is not a unit of length.');
    await page.getByLabel('Value', { exact: true }).fill('3');
    await page.getByLabel('Value', { exact: true }).press('Enter');
    await expect(entry(page, 'hanging loop')).toBeVisible();
    expect((await onDisk()).replace('\n  hanging loop: 3', '')).toBe(asGiven);
  });

  test('the editor changes another line meanwhile: both changes stay', async ({ page }) => {
    await open(page);
    const box = entry(page, 'seam').getByLabel('mm', { exact: true });
    await box.fill('11');
    await edit(asGiven.replace('title: Swatch-card folio', 'title: Autumn folio'));
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Autumn folio');
    await expect(box).toHaveValue('11');
    await box.press('Enter');
    await expect(page.getByText('Written to line 31')).toBeVisible();
    expect(await difference()).toEqual([
      'title: Autumn folio',
      'seam: { in: 3/8, mm: 11, label: Seam allowance, note: Wide enough for many layers and for corners that are turned. }',
    ]);
  });

  test('the editor changes the same value meanwhile: it is shown, and nothing is written over', async ({ page }) => {
    await open(page);
    const seam = entry(page, 'seam');
    const box = seam.getByLabel('mm', { exact: true });
    const theirs = asGiven.replace('seam: { in: 3/8, mm: 10,', 'seam: { in: 3/8, mm: 8,');
    await box.fill('11');
    await edit(theirs);
    await expect(seam).toContainText('Somebody changed this in the file: it says “8” now. You typed “11”.');
    await box.press('Enter');
    expect(await onDisk()).toBe(theirs);
    await seam.getByRole('button', { name: 'Keep “8”' }).click();
    await expect(box).toHaveValue('8');
    expect(await onDisk()).toBe(theirs);

    await box.fill('11');
    await edit(asGiven.replace('seam: { in: 3/8, mm: 10,', 'seam: { in: 3/8, mm: 9,'));
    await expect(seam).toContainText('it says “9” now');
    await seam.getByRole('button', { name: 'Write “11”' }).click();
    await expect(page.getByText('Written to line 31: 9 is 11 now.')).toBeVisible();
    expect(await difference()).toEqual([
      'seam: { in: 3/8, mm: 11, label: Seam allowance, note: Wide enough for many layers and for corners that are turned. }',
    ]);
  });

  test('a file with a mistake keeps its last good state, marked so, and is not written to', async ({ page }) => {
    await open(page);
    await edit(asGiven.replace('\npieces:', '\npeices:'));
    await expect(page.getByRole('alert')).toContainText('“peices” is not known here. Did you mean “pieces”?');
    await expect(page.getByRole('alert')).toContainText('This page shows the last state without it');
    await expect(entry(page, 'seam').getByLabel('mm', { exact: true })).toBeDisabled();
    await expect(cut(page, 'Cover')).toBeVisible();
    await edit(asGiven);
    await expect(page.getByRole('alert')).toHaveCount(0);
    await expect(entry(page, 'seam').getByLabel('mm', { exact: true })).toBeEnabled();
  });

  test('pieces and steps are drawn as they are worked on, and every step is told in both editions', async ({
    page,
  }) => {
    await open(page);
    await page.getByText('Pieces', { exact: true }).click();
    await entry(page, 'flap').first().getByLabel('from', { exact: true }).focus();
    await expect(page.getByRole('region', { name: 'Drawing' }).getByRole('img')).toHaveAccessibleName(/^Flap/);
    const steps = page.getByRole('region', { name: 'Step by step' });
    await steps.getByRole('button', { name: /Fold the pleats/ }).click();
    await expect(steps.getByRole('img')).toBeVisible();
    await expect(steps.getByRole('row', { name: /Fold the pleats/ })).toContainText(
      /5¼\sin × 7⅛\sin.*131\smm × 183\smm/s,
    );
  });

  test('what a recording says otherwise is found beside the drawings, and a word that was misheard is put right once', async ({
    page,
  }) => {
    const [heard, course] = ['recordings/make-it-up.vtt', 'course.yaml'].map((file) =>
      path.join(kit.folder, 'content/courses/pocket-folio', file),
    ) as [string, string];
    const [asSaid, asListed] = await Promise.all([readFile(heard, 'utf8'), readFile(course, 'utf8')]);
    const wrong = asSaid.replace(
      'it is three eighths of an inch smaller',
      'trim the sole bridges it is half an inch smaller',
    );
    expect(wrong).not.toBe(asSaid);
    try {
      await writeFile(heard, wrong);
      await open(page);
      const said = page.getByRole('region', { name: 'Said in recordings' });
      await expect(said).toContainText('make-it-up');
      await said.getByRole('button', { name: '“sole bridges” is “selvages”' }).click();
      await expect(said).toContainText(/Written to line \d+ of content\/courses\/pocket-folio\/course.yaml/);
      await expect(said.getByRole('button')).toHaveCount(0);
      expect(await readFile(course, 'utf8')).toBe(`${asListed.trimEnd()}\nmisheard:\n  sole bridges: selvages\n`);

      // The seam is said to be three eighths of an inch, and another is written: the form says so beside the number.
      await edit(asGiven.replace('seam: { in: 3/8, mm: 10', 'seam: { in: 1/2, mm: 12'));
      await expect(said).toContainText(/is said of Seam allowance, which is 1\/2 in/, { timeout: 30_000 });
    } finally {
      await Promise.all([writeFile(heard, asSaid), writeFile(course, asListed)]);
    }
  });

  test('everyone can use it', async ({ page }) => {
    await open(page);
    await page.getByText('Steps', { exact: true }).click();
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    await page.setViewportSize({ width: 360, height: 740 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
  });

  /** A request with headers of one's own, as a page elsewhere or another machine would cause it. */
  const from = (headers: Record<string, string>, body?: string) =>
    new Promise<number | undefined>((done, fail) => {
      const { hostname, port } = new URL(site.address);
      const method = body === undefined ? 'GET' : 'POST';
      const sent = ask({ hostname, port, path: `${FORM}file.json`, method, headers }, (response) => {
        response.resume();
        done(response.statusCode);
      });
      sent.on('error', fail);
      sent.end(body);
    });

  test('only pages of this site, on this machine, may read and write', async () => {
    const { host, origin } = new URL(site.address);
    const json = { 'content-type': 'application/json' };
    const change = JSON.stringify({ place: ['measures', 'seam', 'mm'], was: '10', value: '11' });
    expect(await from({ host })).toBe(200);
    expect(await from({ host: 'evil.example' })).toBe(403);
    expect(await from({ host, origin: 'https://evil.example', ...json }, change)).toBe(403);
    expect(await from({ host, ...json }, change)).toBe(403);
    expect(await from({ host, origin, 'content-type': 'text/plain' }, change)).toBe(403);
    expect(await from({ host, origin, ...json }, '{"place":[]}')).toBe(400);
    expect(await onDisk()).toBe(asGiven);
    expect(await from({ host, origin, ...json }, change)).toBe(200);
    expect(await onDisk()).toContain('seam: { in: 3/8, mm: 11,');
  });
});
