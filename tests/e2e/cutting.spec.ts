/**
 * Cloth to cut and to buy. The table set by hand: a runner of 16 x 44 in and four napkins of 18 x 18 in. Linen of
 * 54 in is 51.84 in wide once it is washed at 4 per cent: only one napkin goes beside the runner, so that two more lie
 * behind: 44 + 18 = 62 in. On 56 in, which washes to 53.76 in, a second goes beside them (16 + 18 + 18 = 52 in): 44 in.
 */
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { copyKit } from '../copy-kit.ts';
import { wake } from './lesson.ts';
import { start } from './npm-start.ts';

const HEM = '/courses/mitred-corners/hem-and-mitre/';
const TABLE_SET = '/projects/table-set/';
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

const study = (page: Page) => page.locator('[data-study="layout"]');
const amount = (page: Page, what: string | RegExp) =>
  study(page).getByRole('row', { name: what }).getByRole('cell').filter({ visible: true });

test.describe('the layout study', () => {
  test('is there before any script runs, and a wider cloth takes less of it', async ({ page }) => {
    const workers: string[] = [];
    page.on('worker', (worker) => workers.push(worker.url()));
    await page.goto(HEM);
    await wake(study(page));
    await expect(amount(page, 'Length as laid out')).toHaveText(/^62\s*in$/);
    await expect(study(page).locator('.happened')).toContainText('No layout takes less: proven.');
    expect(workers).toEqual([]);

    const width = study(page).getByRole('slider', { name: 'Width, selvage to selvage' });
    for (let press = 0; press < 2; press++) await width.press('ArrowRight');
    await expect(width).toHaveAttribute('aria-valuetext', '56 inches');
    await expect(amount(page, 'Length as laid out')).toHaveText(/^44\s*in$/);
    // 44 / 0.96 + 1 = 46.8 in; the shop cuts by the quarter yard: 1 1/2 yd.
    await expect(amount(page, 'To buy')).toHaveText(/^1½\s*yd$/);
    await expect(study(page).locator('.happened')).toContainText('You buy 1½ yd');
    expect(workers).toHaveLength(1);

    await study(page).getByRole('button', { name: 'Back to the project’s own cloth' }).click();
    await expect(amount(page, 'Length as laid out')).toHaveText(/^62\s*in$/);
  });

  test('lists every piece and every cut, and says them with the drawing', async ({ page }) => {
    await page.goto(HEM);
    await wake(study(page));
    const pieces = study(page)
      .getByRole('table', { name: /^Where each piece lies/ })
      .getByRole('row');
    await expect(pieces).toHaveCount(1 + 6);
    await expect(pieces.nth(1)).toContainText(/1\. Runner\s*0\s*in\s*0\s*in\s*16\s*in\s*44\s*in/);
    const cuts = study(page).getByRole('listitem').filter({ hasText: 'measure' });
    await expect(cuts.first()).toHaveText(
      /^The cloth: measure 44\s*in and cut from selvage to selvage\. That is strip A\.$/,
    );
    await expect(study(page).getByRole('img', { name: 'Linen or cotton for the table' })).toBeVisible();
    await study(page).getByText('What this drawing shows').click();
    await expect(study(page)).toContainText('1. Runner: 0 inches from the left, 0 inches from the cut end');
  });

  test('says which piece is too large for a pre-cut, and what would help', async ({ page }) => {
    await page.goto(HEM);
    await wake(study(page));
    await study(page).getByRole('combobox', { name: 'Bought as' }).selectOption('fat-quarter');
    await expect(study(page).locator('.troubles')).toContainText(
      /Runner is 44 in long; fat quarter, 18 × 21 in has room for 18 in/,
    );
    await expect(study(page).locator('.happened')).toContainText('Not everything goes on this cloth.');
  });

  test('lays the pieces on a learner’s own offcuts first, and loses nothing that was typed', async ({ page }) => {
    await page.goto(HEM);
    await wake(study(page));
    const own = study(page).getByText('Offcuts of your own, and several bolts');
    await own.focus();
    await own.press('Enter');
    const offcuts = study(page).getByRole('textbox', { name: 'Offcuts you have' });
    // The runner is 16 x 44 in. Of the napkins two go beside each other on 51.84 in, so that four take two rows: 36 in.
    await offcuts.fill('16 x 44 in');
    await expect(study(page)).toContainText(/Read as: 16\s*in wide and 44\s*in long\./);
    await expect(amount(page, 'Of your offcuts')).toHaveText('1');
    await expect(amount(page, 'Length as laid out')).toHaveText(/^36\s*in$/);
    await expect(study(page).locator('.happened')).toContainText('With an offcut of yours, the pieces take');
    await expect(study(page).getByRole('img', { name: /offcut of 16\s*in × 44\s*in/ })).toBeVisible();
    await expect(
      study(page)
        .getByRole('table', { name: /^Where each piece lies on .*offcut/ })
        .getByRole('row'),
    ).toHaveCount(1 + 1);

    // In the other unit, beside a line that nobody can read.
    await offcuts.fill('406.4 x 1117.6 mm\nmy old shirt');
    await expect(study(page)).toContainText('Line 2, “my old shirt”: Write a width and a length, such as 18 x 22 in.');
    await expect(offcuts).toHaveAttribute('aria-invalid', 'true');
    await expect(offcuts).toHaveValue('406.4 x 1117.6 mm\nmy old shirt');
    await expect(amount(page, 'Length as laid out')).toHaveText(/^36\s*in$/);

    // The project's own cloth, and what was typed is still there.
    await study(page).getByRole('button', { name: 'Back to the project’s own cloth' }).click();
    await expect(amount(page, 'Length as laid out')).toHaveText(/^62\s*in$/);
    await expect(offcuts).toHaveValue('406.4 x 1117.6 mm\nmy old shirt');
    await study(page).getByRole('checkbox', { name: 'lay the pieces on these first' }).check();
    await expect(amount(page, 'Length as laid out')).toHaveText(/^36\s*in$/);

    // An empty stash.
    await offcuts.fill('');
    await expect(study(page)).toContainText('No offcut is written here, so everything comes from the bolt.');
    await expect(amount(page, 'Length as laid out')).toHaveText(/^62\s*in$/);
  });

  test('lays the pieces on the bolts that a shop has, and on cloth that is folded', async ({ page }) => {
    await page.goto(HEM);
    await wake(study(page));
    await study(page).getByText('Offcuts of your own, and several bolts').click();
    const bolts = study(page).getByRole('textbox', { name: 'Bolts in the shop' });
    await bolts.fill('44');
    await expect(amount(page, 'Length as laid out')).toHaveText(/^62\s*in$/);
    await expect(study(page).getByRole('slider', { name: 'Width, selvage to selvage' })).toHaveCount(0);
    // Only the runner goes on a bolt 16 in wide, perhaps with the practice square: 44 to 49 in. Two rows on the other.
    await bolts.fill('16 in x 1 1/2 yd\n44 in');
    await expect(amount(page, /^To buy of bolt 1, 16/)).toHaveText(/^1½\s*yd$/);
    // 49 / 0.96 + 1 = 52 in; 36 / 0.96 + 1 = 38.5 in.
    await expect(amount(page, /^To buy of bolt 2, 44/)).toHaveText(/^1¼\s*yd$/);

    await study(page).getByRole('checkbox', { name: 'lay the pieces on these first' }).uncheck();
    await study(page).getByText('freely, with scissors').click();
    await study(page)
      .getByRole('checkbox', { name: /^on the fold, selvage to selvage/ })
      .check();
    // Folded, 27 in: the runner, and a napkin above the other, each cut double: 44 + 2 x 18 in.
    await expect(amount(page, 'Length as laid out')).toHaveText(/^80\s*in$/);
    await expect(study(page).getByRole('row', { name: /Napkin, cut double/ })).toHaveCount(2);

    const { violations } = await new AxeBuilder({ page }).include('[data-study="layout"]').withTags(RULES).analyze();
    expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html.slice(0, 120)) }))).toEqual([]);
  });

  test('looks on for a shorter layout, tells how far it is, and can be stopped', async ({ page }) => {
    await page.goto('/authoring/');
    await wake(study(page));
    const sets = study(page).getByRole('slider', { name: 'Sets to cut' });
    for (let press = 0; press < 11; press++) await sets.press('ArrowRight');
    await study(page).getByText('freely, with scissors').click();
    await expect(study(page).getByRole('progressbar', { name: 'Looking for a shorter layout' })).toBeVisible();
    const stop = study(page).getByRole('button', { name: 'Stop looking' });
    await stop.click();
    await expect(stop).toBeHidden();
    await expect(
      study(page)
        .getByRole('table', { name: /^Where each piece lies/ })
        .getByRole('row'),
    ).toHaveCount(1 + 24);
  });
});

test('a learner’s own list follows the size', async ({ page }) => {
  await page.goto(TABLE_SET);
  const list = page.locator('[data-list="maker"]');
  await wake(list);
  const linen = list.getByRole('row', { name: /Linen or cotton/ });
  // 62 / 0.96 + 1 = 65.6 in.
  await expect(linen).toContainText(/2\s*yd, 54\s*in wide/);
  // A runner of 72 in is cut 74 in long: 74 / 0.96 + 1 = 78.1 in.
  await page.goto(`${TABLE_SET}?length-of-the-runner=72+in`);
  await wake(list);
  await expect(linen).toContainText(/2¼\s*yd, 54\s*in wide/);
  await expect(list.getByRole('row', { name: /Thread/ })).toContainText(/1 spool of 100\s*yd/);
});

test('the list for a class is not on the public site', async ({ page }) => {
  const answer = await page.request.get('/courses/mitred-corners/shopping/');
  expect(answer.status()).toBe(404);
  await page.goto('/courses/mitred-corners/');
  await expect(page.getByRole('heading', { name: 'For the teacher' })).toBeVisible();
  await expect(page.getByRole('link', { name: /^For a class/ })).toHaveCount(0);
});

test.describe('for the teacher', () => {
  test.describe.configure({ mode: 'default', timeout: 120_000 });
  let kit: Awaited<ReturnType<typeof copyKit>>;
  let site: Awaited<ReturnType<typeof start>>;
  test.beforeAll(async () => {
    test.setTimeout(120_000);
    kit = await copyKit();
    // A print for the pouch, that goes on from its front to its back.
    const file = path.join(kit.folder, 'content/projects/notions-pouch/project.yaml');
    const text = (await readFile(file, 'utf8'))
      .replace('label: Print for the outside }', 'label: Print for the outside, repeat: { in: 4, mm: 100 } }')
      .replace('cutting: { ', 'cutting: { match: [{ pieces: [front, back] }], ');
    await writeFile(file, text);
    site = await start(kit.folder, { TEACHER_PAGES: 'yes' });
  });
  test.afterAll(async () => {
    await site?.stop();
    await kit?.remove();
  });

  test('a print that is matched is told to whoever buys it', async ({ page }) => {
    await page.goto(`${site.address}/projects/notions-pouch/`);
    await expect(page.locator('[data-list="maker"]').getByRole('row', { name: /Print for the outside/ })).toContainText(
      /The print begins again every 4\s*in\. Match it on Front and Back\./,
    );
  });

  test('a class buys, pays, gets ready and is planned; the table can be saved', async ({ page }) => {
    await page.goto(`${site.address}/courses/mitred-corners/`);
    await page.getByRole('link', { name: /^For a class/ }).click();
    const list = page.locator('[data-list="class"]');
    // The live preview loads a page once more when it has got its packages ready.
    await page.waitForLoadState('networkidle');
    await expect(() => wake(list)).toPass();
    const linen = list.getByRole('row', { name: /Linen or cotton/ });
    await expect(linen).toBeVisible();

    // One maker: 2 yd at 16.80 a yard, and a spool at each of 4 machines at 2.90.
    await list.getByRole('spinbutton', { name: 'Makers' }).fill('1');
    await list.getByRole('spinbutton', { name: 'Spare sets' }).fill('0');
    await expect(linen).toContainText(/2\s*yd/);
    await expect(list.getByRole('row', { name: 'Together' })).toContainText('€45.20');

    // The price of another shop: 20 a yard. And one that is none.
    const price = list.getByRole('textbox', { name: /Price of Linen or cotton/ });
    await price.fill('20');
    await price.press('Tab');
    await expect(list.getByRole('row', { name: 'Together' })).toContainText('€51.60');
    await price.fill('-3');
    await price.press('Tab');
    await expect(list.getByRole('status').first()).toHaveText('A price is a number of 0 or more.');
    await expect(list.getByRole('row', { name: 'Together' })).toContainText('€51.60');
    await list.getByRole('spinbutton', { name: 'Makers' }).fill('0');
    await expect(list.getByRole('status').first()).toContainText('Makers: a whole number from 1 to 500.');

    await list.getByRole('spinbutton', { name: 'Makers' }).fill('12');
    await list.getByRole('spinbutton', { name: 'Irons' }).fill('1');
    await expect(list).toContainText(/one more iron saves the class \d+ minutes/);
    await expect(list.getByRole('table', { name: /^Session 1, / })).toBeVisible();

    const coming = page.waitForEvent('download');
    await list.getByRole('button', { name: 'Save as a table (CSV)' }).click();
    const download = await coming;
    expect(download.suggestedFilename()).toBe('table-set-class-of-12.csv');
    const text = await readFile(await download.path(), 'utf8');
    expect(text.startsWith('\ufeff"What","Material","For","Buy","Amount","Unit",')).toBe(true);
    expect(text).toMatch(/\r\n"Linen or cotton for the table",.*,"yd",20,"1 yd",\d+(\.\d+)?,"EUR",/);

    const { violations } = await new AxeBuilder({ page }).include('main').withTags(RULES).analyze();
    expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html.slice(0, 120)) }))).toEqual([]);

    await page.emulateMedia({ media: 'print' });
    await expect(list.getByRole('spinbutton').filter({ visible: true })).toHaveCount(0);
    await expect(linen).toBeVisible();
  });
});
