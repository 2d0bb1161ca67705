/** Lessons for everyone: by screen reader, by keyboard, on the narrowest screen, on paper, and without another host. */
import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { answer, LINEN, MAKE, PLEAT, POUCH, question, SIZE, wake, wakeAll, written } from './lesson.ts';

// WCAG 2.2, levels A and AA, as far as axe-core's rules can tell.
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

for (const lesson of [SIZE, PLEAT, MAKE, POUCH, LINEN]) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test(`${lesson} has no barrier that axe finds, ${colorScheme}`, async ({ page }) => {
      await page.emulateMedia({ colorScheme });
      await page.goto(lesson);
      await wakeAll(page);
      await answer(written(page).first(), 'no length');
      await answer(written(page).nth(1), '1');
      await page.getByRole('button', { name: 'Your size' }).click();
      // On a phone the panel lies over the foot of the screen; a field half under it can be scrolled clear.
      await page.evaluate(() => scrollTo(0, 0));
      const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
      expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html.slice(0, 120)) }))).toEqual([]);
    });
  }

  test(`${lesson} never scrolls sideways at 320 px, in either edition`, async ({ page }) => {
    await page.setViewportSize({ width: 320, height: 640 });
    for (const edition of ['inch', 'metric']) {
      await page.goto(`${lesson}?edition=${edition}`);
      await wakeAll(page);
      for (const open of await written(page).all()) await answer(open, '7 13/16 in');
      const wide = await page.evaluate(() =>
        [...document.querySelectorAll('main *')]
          .filter((element) => element.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
          .filter((element) => !element.closest('svg, .table-scroll, .katex, .said-only, ol'))
          .map((element) => element.outerHTML.slice(0, 100)),
      );
      expect(wide).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    }
  });

  test(`${lesson} asks no other host and breaks no policy`, async ({ page, baseURL }) => {
    const strangers: string[] = [];
    const troubles: string[] = [];
    page.on('request', (request) => {
      if (/^https?:/.test(request.url()) && !request.url().startsWith(baseURL!)) strangers.push(request.url());
    });
    page.on('console', (message) => {
      if (message.type() === 'error') troubles.push(message.text());
    });
    page.on('pageerror', (error) => troubles.push(error.message));
    for (const edition of ['inch', 'metric']) {
      await page.goto(`${lesson}?edition=${edition}`);
      await wakeAll(page);
      await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
      for (const drawing of await page.locator('.of-size').all()) {
        await drawing.scrollIntoViewIfNeeded();
        await expect(drawing).toHaveAttribute('aria-busy', 'false');
      }
    }
    expect(strangers).toEqual([]);
    expect(troubles).toEqual([]);
  });

  test(`${lesson} prints its numbers and not its controls`, async ({ page }) => {
    await page.goto(lesson);
    await wakeAll(page);
    await page.emulateMedia({ media: 'print' });
    await expect(page.getByRole('button', { name: 'Your size' })).toBeHidden();
    await expect(page.getByRole('slider').filter({ visible: true })).toHaveCount(0);
    await expect(page.locator('.study table').first()).toBeVisible();
    await expect(page.locator('[data-size]').first()).toBeVisible();
  });
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

test('what can be touched is at least 44 px high', async ({ page }) => {
  await page.goto(SIZE);
  await wakeAll(page);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('main button, main input:not(.said-only)')]
      .filter((element) => element.getClientRects().length > 0)
      .map((element) => ({ element, box: (element.closest('label') ?? element).getBoundingClientRect() }))
      .filter(({ box }) => box.height < 43.9)
      .map(({ element }) => element.outerHTML.slice(0, 120)),
  );
  expect(small).toEqual([]);
});
