/**
 * Questions that ask for a size; tests/components/words/ask-size.svelte.test.ts has their rules one by one. Answers worked out by hand from the swatch-card folio: room in a pocket = card width +
 * 2 ease = 4 1/4 + 2 * 1/8 = 4 1/2 in; metric 105 + 2 * 3 = 111 mm.
 */
import { expect, test, type Page } from '@playwright/test';
import { answer, PLEAT, question, SIZE, wake, yourSize } from './lesson.ts';

const room = (page: Page) => question(page, 'How wide must a pocket be between its two side seams?');

test('a wrong answer gets a hint, a second try, and then the worked solution', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  const solution = asked.getByRole('button', { name: 'Show the worked solution' });
  // The card alone, and then 4 1/2 + 1/2: a slip that can be told, and a wrong answer that cannot.
  await answer(asked, '4 1/4');
  await expect(asked.getByRole('status')).toContainText(/left out .*Try once more/);
  await expect(asked.getByText('There is a seam at the left of the card')).toBeVisible();
  await expect(solution).toBeHidden();
  // Hints come one at a time and end in the sum.
  const hints = asked.getByRole('list', { name: 'Hints' }).getByRole('listitem');
  await expect(hints).toHaveCount(1);
  for (const [i, hint] of ['You need', 'The sum is card width + 2 × ease.'].entries()) {
    await asked.getByRole('button', { name: 'Another hint' }).click();
    await expect(hints.nth(i + 1)).toContainText(hint);
  }
  await expect(asked.getByRole('button', { name: 'Another hint' })).toHaveCount(0);
  // The same answer again is no second try.
  await asked.getByRole('button', { name: 'Check' }).click();
  await expect(solution).toBeHidden();
  await answer(asked, '5');
  await expect(asked.getByRole('status')).toContainText(/worked solution shows the way/);
  await solution.click();
  await expect(asked.locator('.tex')).toContainText(/4¼\s*in/);
  await expect(asked.locator('.tex')).toContainText(/=\s*4½\s*in/);
  await answer(asked, '4½');
  await expect(asked.getByRole('status')).toContainText('Right');
});

test('a wrong sum that the author expects is answered in the author’s words', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(question(page, 'How far is it from the top of the first pocket'));
  // 5 pockets a step of 3/4 in apart: 4 steps make 3 in, 5 would make 3 3/4 in.
  await answer(asked, '3 3/4');
  await expect(asked.getByRole('status')).toContainText('Count the steps between the pockets, not the pockets.');
});

test('when what judges cannot be fetched, the answer stays and costs no try', async ({ page }) => {
  await page.route(/judging.*\.js$/, (route) => route.abort());
  await page.goto(SIZE);
  const asked = await wake(room(page));
  await answer(asked, '4 1/4');
  await expect(asked.getByRole('status')).toContainText('Check again when you are connected.');
  await expect(asked.getByRole('textbox')).toHaveValue('4 1/4');
  await expect(asked.getByRole('list', { name: 'Hints' })).toHaveCount(0);
});

test('a second tab of the lesson shows what was answered in the first', async ({ page, context }) => {
  await page.goto(SIZE);
  const other = await context.newPage();
  await other.goto(SIZE);
  await wake(room(other));
  await answer(await wake(room(page)), '4 1/2');
  await expect(room(other)).toHaveAttribute('data-question', 'right');
  await expect(room(other).getByRole('textbox')).toHaveValue('4 1/2');
});

test('after a reload in the middle, tries, what was said and what was not checked are still there', async ({
  page,
}) => {
  await page.goto(SIZE);
  await answer(await wake(room(page)), '4 1/4');
  await expect(room(page)).toHaveAttribute('data-question', 'again');
  const other = await wake(question(page, 'How wide do you cut the pocket panel?'));
  await other.getByRole('textbox').fill('5 and a bit');
  await page.reload();
  await wake(room(page));
  await expect(room(page).getByRole('status')).toContainText(/left out/);
  await answer(room(page), '5');
  await expect(room(page)).toHaveAttribute('data-question', 'wrong');
  await wake(other);
  await expect(other.getByRole('textbox')).toHaveValue('5 and a bit');
  await expect(other).toHaveAttribute('data-question', 'open');
});

test('what cannot be read is no try and is not lost', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  const typed = '<script>document.title = "taken"</script>';
  await asked.getByRole('textbox').fill(typed);
  await asked.getByRole('textbox').press('Enter');
  await expect(asked.getByRole('status')).toContainText('is not a length');
  await expect(asked).toHaveAttribute('data-question', 'unread');
  await expect(asked.getByRole('textbox')).toHaveValue(typed);
  await expect(asked.getByText('There is a seam at the left of the card')).toHaveCount(0);
  expect(await page.title()).not.toBe('taken');
  // The first real try is still the first.
  await answer(asked, '4');
  await expect(asked.getByRole('status')).toContainText('Try once more');
});

test('when the size changes, the answer is judged anew and the text stays', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  await answer(asked, '4 1/2');
  await wake(yourSize(page));
  await yourSize(page).getByRole('textbox', { name: 'Width of your cards, typed' }).fill('5 in');
  await expect(asked).toHaveAttribute('data-question', 'moved');
  await expect(asked.getByRole('status')).toContainText('Your size changed: the answer is now different.');
  await expect(asked.getByRole('textbox')).toHaveValue('4 1/2');
  await answer(asked, '5 1/4');
  await expect(asked).toHaveAttribute('data-question', 'right');
});

test('in the other edition an answer that was right stays right, and the sum is shown in millimetres', async ({
  page,
}) => {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  await answer(asked, '111 mm');
  await page.getByText('metric', { exact: true }).click();
  await asked
    .getByRole('button', { name: 'Show the worked solution' })
    .or(asked.getByText('different'))
    .first()
    .waitFor();
  await answer(asked, '111');
  await expect(asked).toHaveAttribute('data-question', 'right');
  await asked.getByRole('button', { name: 'Show the worked solution' }).click();
  await expect(asked.locator('.tex')).toContainText(/=\s*111\s*mm/);
});

test('an answered question lets the tape mark its step as done', async ({ page }) => {
  await page.goto(SIZE);
  await answer(await wake(question(page, 'You found your widest card.')), '4 1/4');
  await wake(room(page));
  await page.evaluate(() => document.getElementById('add-the-seams')?.scrollIntoView());
  const step = page
    .getByRole('navigation', { name: 'Sections of this lesson' })
    .getByRole('link', { name: /Measure what goes in/ });
  await expect(step).toHaveAccessibleName(/done/);
});

test('a result that is asked for is kept back until it is answered, or somebody wants to see it', async ({ page }) => {
  await page.goto(SIZE);
  const held = page.locator('[data-held]', { has: page.locator('[data-worked="panel width"]') });
  const result = page.locator('.working [data-worked="panel width"] .tex > p').last();
  await expect(held.getByText('You are asked for this below.')).toBeVisible();
  await expect(result).toBeHidden();
  // How it is worked out stands there.
  await expect(page.locator('.working [data-worked="panel width"] .tex > p').first()).toBeVisible();
  await answer(await wake(question(page, 'How wide do you cut the pocket panel?')), '5 1/4');
  await expect(result).toBeVisible();
  await expect(held).toHaveCount(0);
  await page.reload();
  await expect(result).toBeVisible();

  await page.goto(PLEAT);
  const study = page.locator('[data-held]', { has: page.locator('[data-study="pleats"]') });
  const first = study.getByRole('row', { name: /^1/ });
  await expect(first.getByRole('cell').first()).toBeHidden();
  await study.getByRole('button', { name: 'Show it now' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Show it now' }).first()).not.toBeFocused();
  await expect(page.locator('[data-study="pleats"]').getByRole('cell', { name: 'mountain' }).first()).toBeVisible();
});
