/**
 * A page follows the hand: no step stays at an old size, and nothing jumps where somebody scrolls. Worked out by hand
 * from the project file: the folio is 1/4 in wider than its cards, for the ease at both sides.
 */
import { expect, test, type Page } from '@playwright/test';
import { MAKE, PLEAT, wakeAll } from './lesson.ts';

const width = (page: Page, id: string) => page.locator(`[data-step="${id}"] .now dd`);
/** What every step says, from the first to the last. */
const told = (page: Page) => page.locator('[data-step] dl').allTextContents();
/** The same once no step is being worked out any more. */
async function settled(page: Page): Promise<string[]> {
  await wakeAll(page);
  await expect.poll(async () => (await told(page)).join()).not.toContain('working it out');
  return told(page);
}

test('every step follows a slider that is moved to and fro, and back again', async ({ page }) => {
  // What a learner reads who comes with that size.
  await page.goto(`${MAKE}?card-width=4+1/2+in`);
  const wanted = await settled(page);
  await expect(width(page, 'close-flap')).toHaveText(/^4¾\s*in wide/);
  expect(wanted).toHaveLength(19);

  await page.goto(`${MAKE}?card-width=4+1/4+in`);
  const lessons = await settled(page);
  expect(lessons).not.toEqual(wanted);
  await page.getByRole('button', { name: 'Your size' }).click();
  const panel = page.getByRole('dialog');
  const slider = panel.getByRole('slider', { name: 'Width of your cards' });
  for (const key of ['Left', 'Right', 'Right', 'Left', 'Right', 'Right']) await slider.press(`Arrow${key}`);
  await expect.poll(() => told(page)).toEqual(wanted);

  // A drawing follows where it is looked at, be it far down the page.
  const last = page.locator('[data-step="close-flap"]');
  await last.scrollIntoViewIfNeeded();
  await expect(last.locator('.of-size')).toHaveAttribute('aria-busy', 'false');
  await expect(last.locator('svg[role="img"]')).toContainText(/4¾\s*in/);

  await panel.getByRole('button', { name: 'Back to the lesson’s size' }).click();
  await expect.poll(() => told(page)).toEqual(lessons);
  await expect(page.locator('[data-step] .of-size[aria-busy="true"]')).toHaveCount(0);
  await expect(last.locator('svg[role="img"]')).toContainText(/4½\s*in/);
});

test('a count of layers in the prose follows a slider that changes it, and comes back', async ({ page }) => {
  await page.goto(PLEAT);
  const layers = page.locator('[data-layers="layers of hold-pleats"]');
  const lessons = (await layers.textContent())!;
  expect(lessons).toMatch(/^\d+ layers, \d+ of them interfacing$/);
  await page.getByRole('button', { name: 'Your size' }).click();
  const panel = page.getByRole('dialog');
  const slider = panel.getByRole('slider', { name: 'Step from one pocket to the next' });
  // Pockets that step less lie on one another more.
  for (let i = 0; i < 2; i++) await slider.press('ArrowLeft');
  await expect(layers).toHaveText(/^\d+ layers, \d+ of them interfacing$/);
  await expect.poll(async () => parseInt((await layers.textContent())!)).toBeGreaterThan(parseInt(lessons));
  await panel.getByRole('button', { name: 'Back to the lesson’s size' }).click();
  await expect(layers).toHaveText(lessons);
});

test('what is out of sight takes the room it needs, at every width of the window', async ({ page }) => {
  await page.goto(MAKE);
  const prose = page.locator('.prose');
  /** Where each part of the lesson begins, from the top of the page, and how long the page is. */
  const tops = () =>
    prose.evaluate((prose) => [
      ...[...prose.children].map((part) => Math.round(part.getBoundingClientRect().top + scrollY)),
      document.documentElement.scrollHeight,
    ]);
  const height = page.viewportSize()!.height;
  for (const width of [page.viewportSize()!.width, 700, 360]) {
    await page.setViewportSize({ width, height });
    await expect(prose).toHaveClass(/laid-out/);
    const skipping = await tops();
    // With everything laid out.
    await prose.evaluate((prose) => prose.classList.remove('laid-out'));
    expect(skipping).toEqual(await tops());
    await prose.evaluate((prose) => prose.classList.add('laid-out'));
  }
});
