/**
 * Questions that ask for a size. Answers worked out by hand from the swatch-card folio: room in a pocket = card width +
 * 2 ease = 4 1/4 + 2 * 1/8 = 4 1/2 in; metric 105 + 2 * 3 = 111 mm.
 */
import { expect, test, type Page } from '@playwright/test';
import { answer, inProse, PLEAT, question, SIZE, wake, yourSize } from './lesson.ts';

const room = (page: Page) => question(page, 'How wide must a pocket be between its two side seams?');

test('a right answer is said to be right, in either unit and within the tolerance', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  for (const text of ['4 1/2', '4.5"', '11.4 cm', '4 17/32 in']) {
    await answer(asked, text);
    await expect(asked.getByRole('status')).toContainText('Right');
    await expect(asked).toHaveAttribute('data-question', 'right');
  }
});

test('a wrong answer gets a hint, a second try, and then the worked solution', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  const solution = asked.getByRole('button', { name: 'Show the worked solution' });
  // The card alone, and then 4 1/2 + 1/2: a slip that can be told, and a wrong answer that cannot.
  await answer(asked, '4 1/4');
  await expect(asked.getByRole('status')).toContainText(/left out .*Try once more/);
  await expect(asked.getByText('There is a seam at the left of the card')).toBeVisible();
  await expect(solution).toBeHidden();
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

test('a slip of the ruler is told apart from a wrong idea', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  await answer(asked, '4 9/16');
  await expect(asked.getByRole('status')).toContainText('Very close, but a little too much. Check your rounding');
  // Panel width = 4 1/4 + 2 * 1/8 + 2 * 1/4 = 5 in. Without the ease, and with one seam only, it is 4 3/4 in: a hint
  // names both, and neither is claimed.
  const panel = await wake(question(page, 'How wide do you cut the pocket panel?'));
  await answer(panel, '4 3/4');
  await expect(panel.getByRole('status')).toContainText('Look again at the ease and the seam allowance.');
  // 5 in read off the other side of the tape: 12.7 cm.
  await answer(panel, '12.7');
  await expect(panel.getByRole('status')).toContainText(/centimetres/);
});

test('a wrong sum that the author expects is answered in the author’s words', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(question(page, 'How far is it from the top of the first pocket'));
  // 5 pockets a step of 3/4 in apart: 4 steps make 3 in, 5 would make 3 3/4 in.
  await answer(asked, '3 3/4');
  await expect(asked.getByRole('status')).toContainText('Count the steps between the pockets, not the pockets.');
});

test('hints come one at a time and end in the sum', async ({ page }) => {
  await page.goto(SIZE);
  const asked = await wake(room(page));
  await answer(asked, '4 1/4');
  const hints = asked.getByRole('list', { name: 'Hints' }).getByRole('listitem');
  await expect(hints).toHaveCount(1);
  await asked.getByRole('button', { name: 'Another hint' }).click();
  await expect(hints.nth(1)).toContainText('You need');
  await asked.getByRole('button', { name: 'Another hint' }).click();
  await expect(hints.nth(2)).toContainText('The sum is card width + 2 × ease.');
  await expect(asked.getByRole('button', { name: 'Another hint' })).toHaveCount(0);
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

test('after a reload in the middle, tries and what was said are still there', async ({ page }) => {
  await page.goto(SIZE);
  await answer(await wake(room(page)), '4 1/4');
  await expect(room(page)).toHaveAttribute('data-question', 'again');
  await page.reload();
  await wake(room(page));
  await expect(room(page).getByRole('status')).toContainText(/left out/);
  await answer(room(page), '5');
  await expect(room(page)).toHaveAttribute('data-question', 'wrong');
});

for (const { typed, says } of [
  { typed: '', says: 'Write your answer first.' },
  { typed: '  ', says: 'Write your answer first.' },
  { typed: 'wide enough', says: 'is not a length' },
  { typed: '<script>document.title = "taken"</script>', says: 'is not a length' },
  { typed: '1e400', says: /not|Check|does not belong|more than/ },
  { typed: '99999999999999999999', says: 'more than 100 m' },
  { typed: '0', says: 'A size is more than nothing.' },
]) {
  test(`“${typed.slice(0, 20)}” is no try and is not lost`, async ({ page }) => {
    await page.goto(SIZE);
    const asked = await wake(room(page));
    await asked.getByRole('textbox').fill(typed);
    await asked.getByRole('textbox').press('Enter');
    await expect(asked.getByRole('status')).toContainText(says);
    await expect(asked).toHaveAttribute('data-question', 'unread');
    await expect(asked.getByRole('textbox')).toHaveValue(typed);
    await expect(asked.getByText('There is a seam at the left of the card')).toHaveCount(0);
    expect(await page.title()).not.toBe('taken');
    // The first real try is still the first.
    await answer(asked, '4');
    await expect(asked.getByRole('status')).toContainText('Try once more');
  });
}

test('answers are kept, with what was typed but not checked', async ({ page }) => {
  await page.goto(SIZE);
  await answer(await wake(room(page)), '4 1/2');
  const other = await wake(question(page, 'How wide do you cut the pocket panel?'));
  await other.getByRole('textbox').fill('5 and a bit');
  await page.reload();
  await wake(room(page));
  await expect(room(page)).toHaveAttribute('data-question', 'right');
  await expect(room(page).getByRole('textbox')).toHaveValue('4 1/2');
  await wake(other);
  await expect(other.getByRole('textbox')).toHaveValue('5 and a bit');
  await expect(other).toHaveAttribute('data-question', 'open');
});

test('what is typed before the page is awake is taken up', async ({ page }) => {
  await page.route(/AskSize.*\.js$/, async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 1500));
    await route.continue();
  });
  await page.goto(SIZE);
  await room(page).getByRole('textbox').fill('4 1/2');
  await wake(room(page));
  await expect(room(page).getByRole('textbox')).toHaveValue('4 1/2');
  await room(page).getByRole('button', { name: 'Check' }).click();
  await expect(room(page)).toHaveAttribute('data-question', 'right');
});

test('kept answers that are rubbish are as good as none', async ({ page }) => {
  await page.addInitScript((path) => {
    localStorage.setItem(`course-kit:answer:${path}#room`, '{"given":"5","tries":"many","checked":{"value":"x"}}');
    localStorage.setItem(`course-kit:answer:${path}#panel`, '[[');
  }, SIZE);
  await page.goto(SIZE);
  const asked = await wake(room(page));
  await expect(asked.getByRole('textbox')).toHaveValue('5');
  await expect(asked).toHaveAttribute('data-question', 'open');
  await answer(asked, '4 1/2');
  await expect(asked).toHaveAttribute('data-question', 'right');
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

test('how many is asked for in figures, without a unit', async ({ page }) => {
  await page.goto(PLEAT);
  await expect(inProse(page, 'pockets')).toHaveText('5');
  const asked = await wake(question(page, 'How many folds do you make?'));
  for (const text of ['many', 'about 10']) {
    await answer(asked, text);
    await expect(asked.getByRole('status')).toContainText('Write how many, in figures.');
  }
  await answer(asked, '5');
  await expect(asked.getByRole('status')).toContainText('Try once more');
  await answer(asked, '10');
  await expect(asked).toHaveAttribute('data-question', 'right');
});

test('an answered question lets the tape mark its step as done', async ({ page }) => {
  await page.goto(SIZE);
  await answer(await wake(question(page, 'You found your widest card.')), '4 1/4');
  await wake(room(page));
  await page.evaluate(() => document.getElementById('add-the-seams')?.scrollIntoView());
  const step = page
    .getByRole('navigation', { name: 'Steps of this lesson' })
    .getByRole('link', { name: /Measure what goes in/ });
  await expect(step).toHaveAccessibleName(/done/);
});
