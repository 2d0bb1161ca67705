/**
 * Questions that are answered by choosing, ordering, pointing and matching. What is right: a mountain fold stands up
 * towards the reader; a pair that is turned is sewn round all edges but the one it is turned through; the glossary.
 */
import { expect, test, type Locator, type Page } from '@playwright/test';
import { LINEN, PLEAT, question, SIZE, wake } from './lesson.ts';

const check = (asked: Locator) => asked.getByRole('button', { name: 'Check', exact: true }).click();

test('one answer is chosen, and a wrong one is told what is wrong with it', async ({ page }) => {
  await page.goto(PLEAT);
  const asked = await wake(question(page, 'What is the first fold you make?'));
  await check(asked);
  await expect(asked.getByRole('status')).toContainText('Choose one first.');
  await asked.getByRole('radio', { name: /^A valley fold/ }).check();
  await check(asked);
  await expect(asked.getByRole('status')).toContainText('has to climb up in front. Its first fold is the one you see');
  await asked.getByRole('radio', { name: 'A mountain fold, the top of the first pocket' }).check();
  await check(asked);
  await expect(asked).toHaveAttribute('data-question', 'right');
  await page.reload();
  await expect(await wake(asked)).toHaveAttribute('data-question', 'right');
});

const ORDER = [
  'Fuse the interfacing to the wrong side',
  'Mark the fold lines on both long edges',
  'Fold and press, one pair of ticks after the other',
  /^Check that the tops are ¾\sin apart$/,
  'Baste both sides',
];
const pressing = (page: Page) => question(page, 'in which order do you work?');

test('steps are put in order by keyboard alone, and the page says where each now stands', async ({ page }) => {
  await page.goto(PLEAT);
  const asked = await wake(pressing(page));
  await check(asked);
  await expect(asked.locator('.feedback')).toContainText(/Not yet: .* in the wrong place/);
  for (const [place, step] of ORDER.entries()) {
    const item = asked.getByRole('listitem').filter({ has: page.getByText(step) });
    const up = item.getByRole('button', { name: 'Move up' });
    await up.focus();
    for (let press = 0; press < ORDER.length; press++) {
      if ((await item.locator('.place').innerText()) === String(place + 1)) break;
      await page.keyboard.press('Enter');
      await expect(up).toBeFocused();
    }
    await expect(item.locator('.place')).toHaveText(String(place + 1));
  }
  await expect(asked.getByRole('status').first()).toContainText(/now \d of 5/);
  await asked.getByRole('button', { name: 'Check', exact: true }).press('Enter');
  await expect(asked).toHaveAttribute('data-question', 'right');
});

test('a step is dragged to another place', { tag: '@phone' }, async ({ page }) => {
  await page.goto(PLEAT);
  const asked = await wake(pressing(page));
  const items = asked.getByRole('listitem');
  const first = (await items.first().locator('.step').innerText()).trim();
  const from = (await items.first().locator('.grip').boundingBox())!;
  await page.mouse.move(from.x + 10, from.y + 20);
  await page.mouse.down();
  for (const place of [1, 2]) {
    const to = (await items.nth(place).boundingBox())!;
    await page.mouse.move(from.x + 10, to.y + to.height / 2, { steps: 4 });
  }
  await page.mouse.up();
  await expect(items.nth(2).locator('.step')).toHaveText(first);
});

/** Clicks the middle of an edge in the drawing. */
async function pointAt(page: Page, asked: Locator, edge: string) {
  await asked.locator('svg').scrollIntoViewIfNeeded();
  const { x, y, width, height } = await asked
    .locator(`[data-spot="${edge}"]`)
    .evaluate((path) => path.getBoundingClientRect().toJSON() as DOMRect);
  await page.mouse.click(x + width / 2, y + height / 2);
}

test('edges are pointed at in the drawing or chosen from the list', { tag: '@phone' }, async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(question(page, 'Which edges do you sew before you turn?'));
  await pointAt(page, asked, 'left');
  await expect(asked.getByRole('checkbox', { name: 'Left' })).toBeChecked();
  await asked.getByRole('checkbox', { name: 'Top' }).press('Space');
  await check(asked);
  await expect(asked.getByRole('status')).toContainText('Not the top edge. Some are missing.');
  await pointAt(page, asked, 'top');
  await asked.getByRole('checkbox', { name: 'Right' }).check();
  await asked.getByRole('checkbox', { name: 'Bottom' }).check();
  await check(asked);
  await expect(asked).toHaveAttribute('data-question', 'right');
});

test('a fold is pointed at on the flat strip, and a wrong line is told for what it is', async ({ page }) => {
  await page.goto(PLEAT);
  const asked = await wake(question(page, 'Where will the fourth fold lie?'));
  await check(asked);
  await expect(asked.getByRole('status')).toContainText('Point at the drawing, or choose from the list.');
  // 5/8 in up to the first pocket, and four times the depth of 2 1/4 in: 9 5/8 in, without the step.
  await pointAt(page, asked, 'without the step');
  await expect(asked.getByRole('radio', { name: /9⅝\sin/ })).toBeChecked();
  await check(asked);
  await expect(asked.getByRole('status')).toContainText('Up to the next pocket the strip climbs a depth and a step.');
  // 2 7/8 + 2 1/4 + 3 + 2 1/4 in.
  await pointAt(page, asked, 'right');
  await expect(asked.getByRole('radio', { name: /10⅜\sin/ })).toBeChecked();
  await check(asked);
  await expect(asked).toHaveAttribute('data-question', 'right');
  // At another size the same line is still the fourth fold; the list has its new sizes.
  await page.goto(`${PLEAT}?edition=metric`);
  await expect(await wake(asked)).toHaveAttribute('data-question', 'right');
  // 10 + 6 + 55 = 71 mm, and 55 + 75 + 55 mm more.
  await expect(asked.getByRole('radio', { name: /256\smm/ })).toBeChecked();
});

test('all folds of a kind are chosen by keyboard alone', async ({ page }) => {
  await page.goto(PLEAT);
  const asked = await wake(question(page, 'Which of the lines become the bottoms of pockets'));
  const lines = asked.getByRole('checkbox');
  await expect(lines).toHaveCount(10);
  await lines.first().focus();
  await page.keyboard.press('Space');
  await asked.getByRole('button', { name: 'Check' }).press('Enter');
  await expect(asked.getByRole('status')).toContainText('Fold 1 is a mountain fold. Some are missing.');
  await lines.first().press('Space');
  for (const i of [1, 3, 5, 7, 9]) await lines.nth(i).press('Space');
  await asked.getByRole('button', { name: 'Check' }).press('Enter');
  await expect(asked).toHaveAttribute('data-question', 'right');
});

test('what shows is pointed at on the work, and asked anew at another size', async ({ page }) => {
  await page.goto(LINEN);
  const asked = await wake(question(page, 'Where do you see the right side of the cloth?'));
  await asked.getByRole('checkbox', { name: '1, over the middle' }).press('Space');
  await check(asked);
  await expect(asked.getByRole('status')).toContainText('There you see the wrong side of this piece: Napkin.');
  await asked.getByRole('checkbox', { name: '1, over the middle' }).press('Space');
  // The hem, a hair inside the napkin's left edge.
  const hem = asked.locator('[data-spot="Napkin, right side"]');
  await hem.scrollIntoViewIfNeeded();
  const { x, y, height } = await hem.evaluate((path) => path.getBoundingClientRect().toJSON() as DOMRect);
  await page.mouse.click(x + 3, y + height / 2);
  await expect(asked.getByRole('checkbox', { name: '2, round the middle' })).toBeChecked();
  await check(asked);
  await expect(asked).toHaveAttribute('data-question', 'right');
  await page.goto(`${LINEN}?edition=metric`);
  await expect(await wake(asked)).toHaveAttribute('data-question', 'right');
  await expect(asked.getByRole('checkbox', { name: '2, round the middle' })).toBeChecked();
});

test('terms are matched with what the glossary says of them', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(question(page, 'what does each mean?'));
  const meanings = {
    ease: /Room beyond the size/,
    allowance: /strip between the stitch line/,
    'cut size': /size to cut a piece/,
    'finished size': /between the stitch lines/,
  };
  const give = async (term: string, meaning: RegExp) => {
    const select = asked.getByRole('combobox', { name: term, exact: true });
    const option = select.locator('option', { hasText: meaning });
    await select.selectOption((await option.getAttribute('value')) ?? '');
  };
  await check(asked);
  await expect(asked.getByRole('status')).toContainText('4 are open');
  for (const [term, meaning] of Object.entries(meanings)) await give(term, meaning);
  await give('ease', meanings.allowance);
  await check(asked);
  await expect(asked.getByRole('status')).toContainText('1 of 4 do not belong together');
  await give('ease', meanings.ease);
  await check(asked);
  await expect(asked).toHaveAttribute('data-question', 'right');
});

test('a guess is followed by what happens, in the edition that is shown', async ({ page }) => {
  await page.goto(`${SIZE}?edition=metric`);
  const asked = await wake(question(page, 'How much wider must you cut it?'));
  // The seam is 10 mm, so that two more are 20 mm.
  await asked.getByRole('radio', { name: /By 10\smm/ }).check();
  await asked.getByRole('button', { name: 'Show me' }).click();
  await expect(asked.getByRole('status')).toContainText(/By 20\smm: one 10\smm more at the left/);
  await expect(asked.getByRole('status')).not.toContainText('✓');
});
