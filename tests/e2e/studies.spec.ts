/**
 * The two studies. The pleats' numbers worked out by hand: first fold = seam + lift + depth = 1/4 + 1/4 + 2 1/4 =
 * 2 3/4 in; the strip takes the depth of every pocket twice, so that 1/4 in more depth takes 5 * 2 * 1/4 = 2 1/2 in.
 */
import { expect, test, type Page } from '@playwright/test';
import { inProse, PLEAT, SIZE, wake, yourSize } from './lesson.ts';

const pleats = (page: Page) => page.locator('[data-study="pleats"]');
const allowances = (page: Page) => page.locator('[data-study="allowances"]');
const folds = (page: Page) => pleats(page).getByRole('table').locator('tbody tr');

test('the strip folds up step by step, from the flat strip to the last fold', async ({ page }) => {
  await page.goto(PLEAT);
  await wake(pleats(page));
  const next = pleats(page).getByRole('button', { name: 'Make the next fold' });
  await next.click();
  await expect(pleats(page).getByRole('slider', { name: 'Folds made' })).toHaveAttribute('aria-valuetext', '1');
  await expect(pleats(page).locator('.happened')).toContainText('Fold 1, a mountain fold, makes the top of pocket 1.');
  await expect(folds(page).nth(0)).toHaveClass(/now/);
  for (let fold = 2; fold <= 10; fold++) await next.click();
  await expect(pleats(page).locator('.happened')).toContainText('The panel is folded');
  await expect(next).toHaveAttribute('aria-disabled', 'true');

  // Fewer pockets: folds that are no longer there are forgotten.
  await pleats(page).getByRole('slider', { name: 'Number of pockets' }).press('Home');
  await expect(folds(page)).toHaveCount(8);
  await expect(pleats(page).getByRole('slider', { name: 'Folds made' })).toHaveAttribute('aria-valuetext', '8');
  await expect(inProse(page, 'pockets')).toHaveText('4');
});

test('a fold takes less than 400 ms, and no time for those who asked for less motion', async ({ page }) => {
  await page.goto(PLEAT);
  await wake(pleats(page));
  await page.clock.install();
  // From here on time passes only when it is told to, however slow this machine is.
  await page.clock.pauseAt(Date.now() + 60_000);
  const drawing = pleats(page).getByRole('img', { name: /being folded/ });
  const next = pleats(page).getByRole('button', { name: 'Make the next fold' });
  /** The drawing after so many milliseconds of the page's own clock. */
  const after = async (ms: number) => {
    await page.clock.runFor(ms);
    return drawing.evaluate((svg) => svg.innerHTML);
  };

  const flat = await after(0);
  await next.click();
  const half = await after(200);
  const done = await after(200);
  expect(new Set([flat, half, done]).size).toBe(3);
  expect(await after(400)).toBe(done);

  await page.emulateMedia({ reducedMotion: 'reduce' });
  await next.click();
  const still = await after(0);
  expect(still).not.toBe(done);
  expect(await after(400)).toBe(still);
});

test('a slider moves the strip, the table, the sentence and the whole page', async ({ page }) => {
  await page.goto(PLEAT);
  await wake(pleats(page));
  await expect(folds(page).first()).toContainText(/2⅞\s*in/);
  const depth = pleats(page).getByRole('slider', { name: 'Depth of a pocket' });
  await depth.press('ArrowRight');
  await depth.press('ArrowRight');
  await expect(folds(page).first()).toContainText(/3⅛\s*in/);
  await expect(pleats(page).locator('.happened')).toContainText(/2½\s*in longer than in the lesson/);
  await expect(page.locator('[data-worked="seam + lift + depth"] .tex')).toContainText(/=\s*3⅛\s*in/);
  await expect(page).toHaveURL(/depth=2\+1%2F2\+in/);
  await pleats(page).getByRole('button', { name: 'Back to the lesson’s strip' }).click();
  await expect(folds(page).first()).toContainText(/2⅞\s*in/);
  await expect(page).not.toHaveURL(/depth=/);
});

test(
  'on a phone one drawing is looked at, on a wide screen all three',
  { tag: '@phone' },
  async ({ page, isMobile }) => {
    await page.goto(PLEAT);
    await wake(pleats(page));
    const drawings = pleats(page).getByRole('img');
    if (isMobile) {
      await expect(drawings.filter({ visible: true })).toHaveCount(1);
      await pleats(page).getByText('Section', { exact: true }).click();
      await expect(drawings.filter({ visible: true })).toHaveCount(1);
      await expect(pleats(page).getByRole('img', { name: /cut through/ })).toBeVisible();
    } else {
      // Beside the column of sizes there is room for three from here on.
      await page.setViewportSize({ width: 1440, height: 800 });
      await expect(drawings.filter({ visible: true })).toHaveCount(3);
    }
  },
);

test('an allowance changes the cut size once for its edge, and twice for all', async ({ page }) => {
  await page.goto(SIZE);
  await wake(allowances(page));
  // A question below asks for its cut width.
  const held = page.locator('[data-held]', { has: allowances(page) });
  await held.getByRole('button', { name: 'Show it now' }).click();
  // The flap: folio width 4 1/2 less 1/8 at both sides is 4 1/4 finished, and 5 in cut.
  const row = (name: string) => allowances(page).getByRole('row', { name });
  await expect(row('Width').getByRole('cell').last()).toHaveText(/^5\s*in$/);
  await allowances(page).getByText('left', { exact: true }).click();
  await allowances(page).getByRole('slider', { name: 'Allowance at the left' }).press('ArrowRight');
  await expect(row('Width').getByRole('cell').last()).toHaveText(/^5\s*1⁄16\s*in$/);
  await allowances(page).getByText('all', { exact: true }).click();
  const all = allowances(page).getByRole('slider', { name: 'Allowance at every edge' });
  await all.press('Home');
  await expect(row('Width').getByRole('cell').last()).toHaveText(/^4¼\s*in$/);
  await expect(allowances(page).locator('.tex').first()).toContainText(/=\s*0\s*in\s*\+\s*4¼\s*in\s*\+\s*0\s*in/);
  await allowances(page).getByRole('button', { name: 'Back to the piece’s own numbers' }).click();
  await expect(row('Width').getByRole('cell').last()).toHaveText(/^5\s*in$/);
  // What was tried here is nobody else's business.
  await expect(inProse(page, 'panel width')).toHaveText(/^5¼\s*in$/);

  // A study of a piece that is left out says so, and comes back with it.
  await wake(yourSize(page));
  const flap = yourSize(page).getByRole('checkbox', { name: 'With the flap and the snap' });
  await flap.uncheck();
  await expect(page.getByText('Your project leaves out this piece: flap.')).toBeVisible();
  await flap.check();
  await expect(allowances(page)).toBeVisible();
  await expect(allowances(page).locator('.tex').first()).toContainText(/=\s*5\s*in/);
});
