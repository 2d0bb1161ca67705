/** Progress kept by the browser, handed in by a learner, and opened by the teacher. */
import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { answer, MAKE, question, SIZE, wake } from './lesson.ts';

const PROGRESS = '/courses/pocket-folio/progress/';
const CLASS = '/courses/pocket-folio/class/';
const room = (page: Page) => question(page, 'How wide must a pocket be between its two side seams?');

/** One slip, then the right answer: room in a pocket = card width + 2 ease = 4 1/4 + 2 * 1/8 = 4 1/2 in. */
async function learn(page: Page) {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  await answer(asked, '4 1/4');
  await answer(asked, '4 1/2');
  await expect(asked).toHaveAttribute('data-question', 'right');
}

/** One exercise with a slip, and a facing that was cut at its finished size: 3/4 in less than 5 1/4 in. */
async function practiseAndMeasure(page: Page) {
  const set = await wake(page.getByRole('region', { name: 'Practice' }));
  await set.getByRole('button', { name: 'Give me numbers' }).click();
  await answer(set, '1 in');
  await expect(set.getByText('0 of 3 in a row')).toBeVisible();
  const mine = await wake(page.locator('[data-measured]').filter({ hasText: 'Facing behind' }));
  await mine.getByRole('textbox', { name: 'Width' }).fill('4 1/2');
  await mine.getByRole('textbox', { name: 'Width' }).press('Enter');
  await expect(mine).not.toHaveAttribute('data-measured', 'open');
}

async function saved(page: Page, button: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  return readFile(await (await download).path(), 'utf8');
}

const row = (page: Page) => page.getByRole('row', { name: /Size the panel|panel/i }).first();

test('what was answered is saved, cleared and put back', async ({ page }) => {
  await learn(page);
  // A step of the making is kept for the whole project, and comes along.
  await page.goto(MAKE);
  await page.getByRole('checkbox', { name: 'I have done this step' }).first().check();
  // The card takes the tick up once it is awake.
  await expect.poll(() => page.evaluate(() => JSON.stringify(localStorage))).toContain('steps:swatch-folio');
  await page.goto(PROGRESS);
  await expect(row(page)).toContainText(/1 of \d+/);
  const file = await saved(page, 'Save my progress');
  await page.getByRole('button', { name: 'Clear my progress' }).click();
  await page.getByRole('button', { name: 'Clear everything' }).click();
  await expect(row(page)).toContainText(/0 of \d+/);
  expect(file).toContain('steps:swatch-folio');
  const put = page.getByLabel('Put a saved file back');
  await put.setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{"progress":1}') });
  await expect(page.getByText('That is not a file of your progress. Nothing was changed.')).toBeVisible();
  await put.setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer: Buffer.from(file) });
  await expect(page.getByText('Your progress is back.')).toBeVisible();
  await expect(row(page)).toContainText(/1 of \d+/);
  await page.goto(SIZE);
  await expect(room(page)).toHaveAttribute('data-question', 'right');
});

test('steps done in two tabs are all done', async ({ page, context }) => {
  const other = await context.newPage();
  const step = (tab: Page, n: number) => tab.getByRole('checkbox', { name: 'I have done this step' }).nth(n);
  for (const tab of [page, other]) await tab.goto(MAKE);
  await step(page, 0).check();
  await expect.poll(() => page.evaluate(() => JSON.stringify(localStorage))).toContain('steps:swatch-folio');
  await step(other, 1).check();
  await expect(step(page, 1)).toBeChecked();
  await other.reload();
  for (const n of [0, 1]) await expect(step(other, n)).toBeChecked();
});

test('a page without sizes says when nothing can be kept', async ({ page }) => {
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
  });
  await page.goto(PROGRESS);
  await page.getByText('metric', { exact: true }).click();
  await expect(page.getByText('Your browser has no room left.')).toHaveCount(1);
  const buffer = Buffer.from('{"progress":1,"kept":{"theme":"\\"dark\\""}}');
  await page
    .getByLabel('Put a saved file back')
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer });
  await expect(page.getByText('could not be kept: your browser has no room left. Nothing was changed.')).toBeVisible();
});

test('files and codes of a class become a table and a chart, and hostile ones are refused', async ({ page }) => {
  await learn(page);
  await practiseAndMeasure(page);
  await page.goto(PROGRESS);
  await page.getByRole('button', { name: 'Save a file to hand in' }).click();
  await expect(page.getByText('Write the name that your teacher knows you by.')).toBeVisible();
  await page.getByLabel('Your name in class').fill('<b>Ada</b>');
  const file = await saved(page, 'Save a file to hand in');
  await page.getByLabel('Your name in class').fill('=Ben');
  await page.getByRole('button', { name: 'Show a code' }).click();
  await expect(page.getByRole('img', { name: 'The code as a picture to scan' })).toBeVisible();
  const code = await page.getByLabel('The same as text').inputValue();
  // A joiner inside a name belongs to it; marks that come along when it is pasted do not.
  await page.getByLabel('Your name in class').fill('\u202bعلی\u200cرضا\u202c');
  await page.getByRole('button', { name: 'Show a code' }).click();
  await expect(page.getByLabel('The same as text')).not.toHaveValue(code);
  const joined = await page.getByLabel('The same as text').inputValue();

  await page.goto(CLASS);
  await expect(page.locator('meta[name="robots"]')).toHaveAttribute('content', 'noindex');
  await expect(page.getByText('Nothing proves who made a file or a code')).toBeVisible();
  await page.getByLabel('Files').setInputFiles([
    { name: 'ada.json', mimeType: 'application/json', buffer: Buffer.from(file) },
    { name: 'ada again.json', mimeType: 'application/json', buffer: Buffer.from(file) },
    { name: 'picture.json', mimeType: 'application/json', buffer: Buffer.alloc(300_000, 65) },
  ]);
  await expect(page.getByText('1 taken, 2 not.')).toBeVisible();
  await expect(page.getByText('ada again.json: It is here already.')).toBeVisible();
  await page.getByLabel('Or paste codes').fill(`${code}\n${joined}`);
  await page.getByRole('button', { name: 'Take the codes' }).click();
  await expect(page.getByRole('rowheader', { name: '<b>Ada</b>' })).toBeVisible();
  await expect(page.getByRole('rowheader', { name: '=Ben' })).toBeVisible();
  await expect(page.getByRole('rowheader', { name: 'علی\u200cرضا' })).toBeVisible();
  const tally = page.getByRole('row', { name: /How wide must a pocket be/ });
  await expect(tally).toContainText('0, 3, 0');
  await expect(tally).toContainText(/You left out the ease\. .+ \(3\)/);
  await expect(page.getByRole('row', { name: /practice How wide is the panel cut/ })).toContainText('0, 0, 3');
  await expect(
    page
      .getByRole('table')
      .nth(2)
      .getByRole('row', { name: /facing, cut/ }),
  ).toContainText(/\(3\)/);
  const csv = await saved(page, 'Save the table as CSV');
  expect(csv).toContain(`"'=Ben",`);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  for (const width of [1280, 360]) {
    await page.setViewportSize({ width, height: 740 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  }
});

test('a screenshot of a code is opened as a file is, and other pictures are refused', async ({ page }) => {
  await learn(page);
  await page.goto(PROGRESS);
  await page.getByLabel('Your name in class').fill('Cleo');
  await page.getByRole('button', { name: 'Show a code' }).click();
  const code = page.getByRole('img', { name: 'The code as a picture to scan' });
  await code.scrollIntoViewIfNeeded();
  // As a learner takes it: all that the screen shows.
  const screenshot = await page.screenshot();
  // As a photo of the screen: askew, and not quite sharp.
  await code.evaluate((drawing) =>
    Object.assign((drawing as SVGElement).style, { rotate: '9deg', filter: 'blur(0.4px)' }),
  );
  const photo = await page.screenshot({ type: 'jpeg', quality: 70 });
  await page.goto(CLASS);
  const nothing = await page.screenshot();
  const png = (name: string, buffer: Buffer, mimeType = 'image/png') => ({ name, mimeType, buffer });
  const files = page.getByLabel('Files');
  await files.setInputFiles([
    png('cleo.png', screenshot),
    png('nothing.png', nothing),
    png('no picture.png', Buffer.from('SEW1.abc')),
  ]);
  await expect(page.getByText('1 taken, 2 not.')).toBeVisible();
  await expect(page.getByText('nothing.png: No code could be read in this picture.')).toBeVisible();
  await expect(page.getByText('no picture.png: No code could be read in this picture.')).toBeVisible();
  await expect(page.getByRole('rowheader', { name: 'Cleo' })).toBeVisible();
  await files.setInputFiles([png('photo.jpg', photo, 'image/jpeg')]);
  // The same code once more: it was read, and is known.
  await expect(page.getByText('photo.jpg: It is here already.')).toBeVisible();
});

test('the pages are found from the course, and the learner’s has no barrier that axe finds', async ({ page }) => {
  await page.goto('/courses/pocket-folio/');
  await page.getByRole('link', { name: 'Open what your class handed in' }).click();
  await expect(page.getByRole('heading', { name: 'The class', level: 1 })).toBeVisible();
  await page.goBack();
  await page.getByRole('link', { name: /hand it in/ }).click();
  await expect(page.getByRole('heading', { name: 'Hand in' })).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});
