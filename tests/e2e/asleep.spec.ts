/**
 * Questions stay plain text until somebody uses them, and the rest of a page wakes a moment after it is shown. What is
 * done before the scripts have come, here held back for a while, is not lost.
 */
import { expect, test, type Page } from '@playwright/test';
import { LINEN, MAKE, PLEAT, question, SIZE } from './lesson.ts';

/** Holds scripts back, those of all questions if no others are named, until the returned function is called. */
async function holdBack(page: Page, scripts = /\/Ask\w+\.[^/]*\.js$/): Promise<() => void> {
  let letGo = () => {};
  const held = new Promise<void>((resolve) => (letGo = resolve));
  await page.route(scripts, async (route) => {
    await held;
    await route.continue();
  });
  return letGo;
}

test('a lesson that is only read fetches no script for its questions', async ({ page }) => {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
  await page.goto(SIZE);
  await page.keyboard.press('End');
  await page.waitForLoadState('networkidle');
  expect(
    fetched.filter((path) => /\/(?:questions|Ask\w+|Practice|Predict|MyPiece|judging)\.[^/]*\.js$/.test(path)),
  ).toEqual([]);
});

test('the authoring reference fetches nothing for its examples until the edition changes or one is used', async ({
  page,
}) => {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
  const examples = () =>
    fetched.filter((path) => /\/(?:lesson|drawing|\w+Study|StepCard|UpdateInlineSizes)\.[^/]*\.js$/.test(path));
  await page.goto('/authoring/');
  await page.keyboard.press('End');
  await page.waitForLoadState('networkidle');
  expect(examples()).toEqual([]);

  await page.getByText('metric', { exact: true }).first().click();
  await expect(page.locator('.result [data-size]').first()).toContainText(/\d\s(?:mm|cm)/);
  await expect(page.locator('.result astro-island[ssr]', { has: page.locator('[data-study="pleats"]') })).toHaveCount(
    0,
  );
  expect(examples()).not.toEqual([]);
});

test('studies and lists sleep at the lesson’s size; in the other edition they wake and follow by themselves', async ({
  page,
}) => {
  await page.goto(LINEN);
  const study = page.locator('[data-study="layout"]');
  await study.scrollIntoViewIfNeeded();
  await page.waitForLoadState('networkidle');
  const asleep = page.locator('astro-island[ssr]', { has: study });
  await expect(asleep).toHaveCount(1);
  await expect(study).toContainText(/44\sin/);

  await page.getByText('metric', { exact: true }).first().click();
  await expect(asleep).toHaveCount(0);
  await study.scrollIntoViewIfNeeded();
  await expect(study).toContainText(/1104\smm/);
  await expect(study).not.toContainText(/44\sin/);
});

test('answers typed, chosen and pointed at before the questions are awake are taken up', async ({ page }) => {
  const letGo = await holdBack(page);
  await page.goto(SIZE);
  const typed = question(page, 'How wide must a pocket be between its two side seams?');
  await typed.getByRole('textbox').fill('4 1/2');
  await typed.getByRole('textbox').press('Enter');
  const terms = question(page, 'what does each mean?');
  await terms.getByRole('combobox', { name: 'ease' }).selectOption({ index: 2 });
  const chosen = await terms.getByRole('combobox', { name: 'ease' }).inputValue();
  const edges = question(page, 'Which edges do you sew before you turn?');
  await edges.locator('[data-spot="left"]').dispatchEvent('click');

  letGo();
  // What was checked is judged, and everything else stays.
  await expect(typed).toHaveAttribute('data-question', 'right');
  await expect(typed.getByRole('textbox')).toHaveValue('4 1/2');
  await expect(page.locator('astro-island[ssr]', { has: terms })).toHaveCount(0);
  await expect(terms.getByRole('combobox', { name: 'ease' })).toHaveValue(chosen);
  await expect(edges.getByRole('checkbox', { name: 'Left' })).toBeChecked();
});

test('a choice made and checked before the question is awake is judged', async ({ page }) => {
  const letGo = await holdBack(page);
  await page.goto(PLEAT);
  const asked = question(page, 'What is the first fold you make?');
  await asked.getByRole('radio', { name: 'A mountain fold, the top of the first pocket' }).check();
  await asked.getByRole('button', { name: 'Check' }).click();
  letGo();
  await expect(asked).toHaveAttribute('data-question', 'right');
});

test('a step ticked before its card is awake is done, and stays so', async ({ page }) => {
  const letGo = await holdBack(page, /\/StepCard\.[^/]*\.js$/);
  await page.goto(MAKE);
  const card = page.locator('[data-step]').first();
  await card.getByRole('checkbox').check();
  letGo();
  await expect(page.locator('astro-island[ssr]', { has: card })).toHaveCount(0);
  await expect(card.getByRole('checkbox')).toBeChecked();
  await page.reload();
  await expect(card).toHaveClass(/\bdone\b/);
});

test('a slider moved and a drawing chosen before their study is awake are taken up', async ({ page }) => {
  const letGo = await holdBack(page, /\/PleatStudy\.[^/]*\.js$/);
  await page.setViewportSize({ width: 360, height: 800 });
  await page.goto(PLEAT);
  const study = page.locator('[data-study="pleats"]');
  const slider = study.getByRole('slider').first();
  const before = await slider.inputValue();
  await slider.press('ArrowRight');
  const strip = study.getByRole('radio', { name: 'Strip' });
  await expect(study.getByRole('radio', { name: 'Front' })).toBeChecked();
  await study.locator('label', { hasText: 'Strip' }).click(); // as a finger does: the mark itself is hidden
  letGo();
  await expect(page.locator('astro-island[ssr]', { has: study })).toHaveCount(0);
  await expect(slider).not.toHaveValue(before);
  await expect(page).toHaveURL(/\?./);
  await expect(strip).toBeChecked();
  await expect(study.locator('.view').first()).toHaveClass(/\bchosen\b/);
});

test('a button pressed before its part of the page is awake is pressed', async ({ page }) => {
  const letGo = await holdBack(page, /\/Progress\.[^/]*\.js$/);
  await page.goto('/courses/pocket-folio/progress/');
  await page.getByRole('button', { name: 'Save a file to hand in' }).click();
  letGo();
  await expect(page.getByText('Write the name that your teacher knows you by.')).toBeVisible();
});

test('files opened before the teacher’s page is awake are read', async ({ page }) => {
  const letGo = await holdBack(page, /\/Class\.[^/]*\.js$/);
  await page.goto('/courses/pocket-folio/class/');
  const buffer = Buffer.from('{}');
  await page.getByLabel('Files').setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer });
  letGo();
  await expect(page.getByText('0 taken, 1 not.')).toBeVisible();
});

test('sizes in answers and units beside lines are in the edition that is shown, used or not', async ({ page }) => {
  await page.goto(`${SIZE}?edition=metric`);
  const guess = question(page, 'How much wider must you cut it?');
  await expect(guess.getByRole('radio', { name: /By 10\smm/ })).toBeAttached();
  await expect(page.locator('astro-island[ssr]', { has: guess })).toHaveCount(1);
  const unit = question(page, 'How wide must a pocket be').locator('.unit');
  expect(await unit.evaluate((mark) => getComputedStyle(mark, '::before').content)).toBe('"mm"');
});

test('when a question cannot be fetched the page says so, and keeps what was typed for the next try', async ({
  page,
}) => {
  let isAway = true;
  await page.route(/\/AskSize\.[^/]*\.js/, (route) => (isAway ? route.abort() : route.continue()));
  await page.goto(SIZE);
  const asked = question(page, 'How wide must a pocket be between its two side seams?');
  await asked.getByRole('textbox').fill('4 1/2');
  await expect(page.getByRole('alert')).toContainText('Try again when you are connected.');
  isAway = false;
  await asked.getByRole('button', { name: 'Check' }).click();
  await expect(asked).toHaveAttribute('data-question', 'right');
  await expect(page.getByRole('alert')).toHaveCount(0);
});
