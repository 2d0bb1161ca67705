/**
 * Lessons for everyone: by screen reader, by keyboard, on the narrowest screen, on paper, and without another host.
 * A lesson is opened twice: on a wide screen in inches, and on a phone in millimetres.
 */
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import {
  answer,
  chooseEdition,
  LINEN,
  MAKE,
  PLEAT,
  POUCH,
  question,
  SIZE,
  unfoldAll,
  wake,
  wakeAll,
  written,
} from './lesson.ts';

// WCAG 2.2, levels A and AA, as far as axe-core's rules can tell.
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Gives answers that cannot be read and that are wrong, and opens what is closed. */
async function use(page: Page, lesson: string) {
  await answer(written(page).first(), 'no length');
  await answer(written(page).nth(1), '1');
  if (lesson === MAKE) {
    await page.locator('[data-study="layers"]').getByText('Try another cloth').click();
    await page.locator('[data-step="pleat"]').getByRole('checkbox').check();
    await page.locator('[data-study="make-up"]').getByRole('button', { name: 'Do the next step' }).click();
  }
  await page.getByRole('button', { name: 'Your size' }).click();
  // On a phone the panel lies over the foot of the screen; a field half under it can be scrolled clear.
  await page.evaluate(() => scrollTo(0, 0));
}

/** What axe finds in the light. */
async function barriers(page: Page) {
  await page.emulateMedia({ colorScheme: 'light' });
  return found(await new AxeBuilder({ page }).withTags(RULES).analyze());
}

/**
 * What axe finds of the contrast in the dark and in a reader's own colours: nothing else differs there, and colours are
 * those of every screen.
 */
async function faint(page: Page) {
  const all: ReturnType<typeof found> = [];
  for (const media of [{ colorScheme: 'dark' as const }, { forcedColors: 'active' as const }]) {
    await page.emulateMedia(media);
    all.push(...found(await new AxeBuilder({ page }).withRules(['color-contrast']).analyze()));
  }
  await page.emulateMedia({ forcedColors: 'none' });
  return all;
}

type Analysis = Awaited<ReturnType<AxeBuilder['analyze']>>;
const found = ({ violations }: Analysis) =>
  violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html.slice(0, 120)) }));

/** From here on: what is asked of other hosts, and what the page complains of. */
function listen(page: Page, own: string): string[] {
  const heard: string[] = [];
  page.on('request', (request) => {
    if (/^https?:/.test(request.url()) && !request.url().startsWith(own)) heard.push(request.url());
  });
  page.on('console', (message) => {
    if (message.type() === 'error') heard.push(message.text());
  });
  page.on('pageerror', (error) => heard.push(error.message));
  return heard;
}

/** Wakes the whole page and looks at each of its drawings. */
async function readToTheEnd(page: Page) {
  await wakeAll(page);
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await unfoldAll(page);
  for (const drawing of await page.locator('.prose .of-size').all()) {
    await drawing.scrollIntoViewIfNeeded();
    await expect(drawing).toHaveAttribute('aria-busy', 'false');
  }
}

/** What reaches beyond the right edge of the screen. */
const tooWide = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('main *')]
      .filter((element) => element.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
      .filter((element) => !element.closest('svg, .table-scroll, .katex, .said-only, ol'))
      .map((element) => element.outerHTML.slice(0, 100)),
  );

/** Controls less than 44 px high; a word in a sentence is as high as its line (WCAG 2.5.8 excepts it). */
const tooSmall = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('main button:not(.term), main input:not(.said-only)')]
      .filter((element) => element.getClientRects().length > 0)
      .map((element) => ({ element, box: (element.closest('label') ?? element).getBoundingClientRect() }))
      .filter(({ box }) => box.height < 43.9)
      .map(({ element }) => element.outerHTML.slice(0, 120)),
  );

// Axe looks at every part of a long page.
test.describe.configure({ timeout: 240_000 });

for (const lesson of [SIZE, PLEAT, MAKE, POUCH, LINEN]) {
  test(`${lesson} has no barrier, asks no other host, breaks no policy, and prints without its controls`, async ({
    page,
    baseURL,
  }) => {
    const heard = listen(page, baseURL!);
    await page.goto(lesson);
    await readToTheEnd(page);
    expect(heard).toEqual([]);
    if (lesson === SIZE) expect(await tooSmall(page)).toEqual([]);

    await use(page, lesson);
    expect(await barriers(page)).toEqual([]);
    expect(await faint(page)).toEqual([]);

    await page.emulateMedia({ media: 'print' });
    await expect(page.getByRole('button', { name: 'Your size' })).toBeHidden();
    await expect(page.getByRole('slider').filter({ visible: true })).toHaveCount(0);
    await expect(page.locator('.study table').first()).toBeVisible();
    await expect(page.locator('[data-size]').first()).toBeVisible();
    if (lesson !== MAKE) return;
    // Every step prints with its size.
    await expect(page.getByRole('button', { name: 'Do the next step' })).toBeHidden();
    await expect(page.locator('[data-step="close-flap"] .now dd')).toBeVisible();
    await expect(page.locator('[data-step="pleat"]').getByRole('img')).toBeVisible();
  });

  test(
    `${lesson} on a phone has no barrier, never scrolls sideways at 320 px, and asks no other host`,
    { tag: '@phone-only' },
    async ({ page, baseURL }) => {
      const heard = listen(page, baseURL!);
      await page.goto(`${lesson}?edition=metric`);
      await readToTheEnd(page);
      expect(heard).toEqual([]);
      if (lesson === SIZE) expect(await tooSmall(page)).toEqual([]);

      await page.setViewportSize({ width: 320, height: 640 });
      for (const edition of ['metric', 'inch'] as const) {
        await chooseEdition(page, edition);
        for (const open of await written(page).all()) await answer(open, '7 13/16 in');
        expect(await tooWide(page), edition).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), edition).toBeLessThanOrEqual(320);
      }

      await page.setViewportSize({ width: 360, height: 740 });
      await use(page, lesson);
      expect(await barriers(page)).toEqual([]);
    },
  );
}

test('a question is answered and a fold made by keyboard alone', async ({ page }) => {
  await page.goto(PLEAT);
  const next = await wake(page.getByRole('button', { name: 'Make the next fold' }));
  await page.locator('[data-study="pleats"] input').first().focus();
  for (let tab = 0; tab < 12 && !(await next.evaluate((button) => button === document.activeElement)); tab++)
    await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-study="pleats"] .happened')).toContainText('Fold 1');
  const asked = await wake(question(page, 'How many folds do you make?'));
  for (let tab = 0; tab < 30; tab++) {
    if (await asked.getByRole('textbox').evaluate((box) => box === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  await page.keyboard.type('10');
  await page.keyboard.press('Enter');
  await expect(asked).toHaveAttribute('data-question', 'right');
});
