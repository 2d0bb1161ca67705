/**
 * Practice with new numbers, and a ruler for one's own work: practice.svelte.test.ts and my-piece.svelte.test.ts in
 * tests/components/words have their rules one by one. Sums by hand, metric edition of the swatch-card folio: panel
 * width = card width + 2 ease + 2 seam = 105 + 2 * 3 + 2 * 10 = 131 mm; cut at its finished size it is 20 mm less.
 */
import { expect, test, type Locator, type Page } from '@playwright/test';
import { answer, inProse, PLEAT, question, SIZE, wake } from './lesson.ts';

const METRIC = `${SIZE}?edition=metric`;
const practice = (page: Page) => page.getByRole('region', { name: 'Practice' });

/** The answer, worked out from the list of what is given: card width, ease, seam. */
async function workedOut(set: Locator): Promise<number> {
  await expect(set.locator('dd')).toHaveCount(3);
  const [width = 0, ease = 0, seam = 0] = (await set.locator('dd').allInnerTexts()).map(Number.parseFloat);
  return width + 2 * ease + 2 * seam;
}

test('the worked solution of an exercise has its own numbers, and the page keeps its own', async ({ page }) => {
  await page.goto(METRIC);
  const set = await wake(practice(page));
  await set.getByRole('button', { name: 'Give me numbers' }).click();
  const wanted = await workedOut(set);
  await answer(set, String(wanted));
  await set.getByRole('button', { name: 'Show the worked solution' }).click();
  await expect(set.locator('.tex')).toContainText(new RegExp(`=\\s*${wanted}\\s*mm`));
  await expect(inProse(page, 'panel width')).toHaveText(/131\smm/);

  // Another edition draws other numbers, on its own marks.
  await set.getByRole('button', { name: 'Next numbers' }).click();
  await page.getByText('inch', { exact: true }).click();
  await expect(set.locator('dd').first()).toContainText('in');
  await expect(set.locator('dl')).not.toContainText('≈');
});

/** What an exercise of the strip's folds comes to, by hand, from what it lists. */
async function foldFrom(set: Locator): Promise<number> {
  const given = new Map<string, number>();
  for (const row of await set.locator('dl > div').all())
    given.set(await row.locator('dt').innerText(), Number.parseFloat(await row.locator('dd').innerText()));
  const mm = (label: RegExp) => [...given].find(([name]) => label.test(name))?.[1] ?? 0;
  const [depth, step] = [mm(/^Depth/), mm(/^Step/)];
  const edge = mm(/^Seam/) + mm(/^Lift/);
  const asked = await set.locator('[id$="-text"]').innerText();
  if (asked.includes('up to the next top')) return depth + step;
  return asked.includes('first fold') ? edge + depth : edge + 3 * depth + step;
}

const NEXT = 'Next question';
/** Lines are lettered from the raw edge. The first is a mountain fold, and then they go in turns. */
const VALLEYS = /^[BDFHJLN],/;

/** Answers what stands there, by keys alone: a sum, the first fold, or the valley folds. Returns which it was. */
async function byKeys(set: Locator, isRight: boolean): Promise<'sum' | 'choice' | 'folds'> {
  const asked = set.locator('[id$="-text"]');
  await expect(asked).toBeVisible();
  const text = await asked.innerText();
  if (text.includes('the first fold you make')) {
    const wanted = isRight ? /^A mountain fold, the top/ : /^A valley fold/;
    await set.getByRole('radio', { name: wanted }).press('Space');
    await set.getByRole('button', { name: 'Check' }).press('Enter');
    return 'choice';
  }
  if (text.includes('become the bottoms of pockets')) {
    for (const line of isRight
      ? await set.getByRole('checkbox', { name: VALLEYS }).all()
      : [set.getByRole('checkbox').first()])
      await line.press('Space');
    await set.getByRole('button', { name: 'Check' }).press('Enter');
    return 'folds';
  }
  await set.getByRole('textbox').fill(isRight ? String(await foldFrom(set)) : '1 mm');
  await set.getByRole('textbox').press('Enter');
  return 'sum';
}

test('a set rises with each right answer, asks other kinds between, and a slip leads back to the first', async ({
  page,
}) => {
  await page.goto(`${PLEAT}?edition=metric`);
  const set = await wake(practice(page));
  const [EASY, MIDDLE, HARD] = ['up to the next top', 'is the first fold', 'is the third fold'];
  const next = (called: string) => set.getByRole('button', { name: called }).press('Enter');
  const asks = (text: string | undefined) => expect(set.locator('[id$="-text"]')).toContainText(text!);
  const inARow = (count: number) => expect(set.getByText(`${count} of 5 in a row`)).toBeVisible();
  await set.getByRole('button', { name: 'Give me numbers' }).press('Enter');
  await expect(set.getByRole('combobox', { name: 'How fine the numbers are' })).toHaveValue('rising');

  await asks(EASY);
  await byKeys(set, true);
  await inARow(1);
  await next(NEXT);
  // A question of another kind, got wrong at first: it says what was wrong, and the row begins anew.
  const missed = await byKeys(set, false);
  expect(missed).not.toBe('sum');
  await expect(set.locator('.feedback')).toContainText('Try once more.');
  await inARow(0);
  await next('Another question');

  await asks(EASY);
  await byKeys(set, true);
  await next(NEXT);
  const first = await byKeys(set, true);
  expect(first).not.toBe(missed);
  await expect(set.locator('.feedback')).toContainText('Right');
  await inARow(2);
  // In the middle the page is loaded again, and goes on where it was.
  await page.reload();
  await wake(set);
  await inARow(2);
  await set.getByRole('button', { name: 'Go on' }).press('Enter');

  await asks(MIDDLE);
  await byKeys(set, true);
  await inARow(3);
  await next(NEXT);
  expect(await byKeys(set, true)).toBe(missed);
  await inARow(4);
  await next(NEXT);
  await asks(HARD);
  await byKeys(set, true);
  await expect(set.getByText('Done: 5 in a row.')).toBeVisible();
  // The solution is that of the question at hand.
  await set.getByRole('button', { name: 'Show the worked solution' }).press('Enter');
  await expect(set.locator('.tex:visible')).toHaveCount(1);
  await expect(set.locator('.tex:visible')).toContainText('3');
  // The same questions in the text know nothing of it.
  for (const text of ['What is the first fold you make?', 'become the bottoms of pockets'])
    await expect(question(page, text)).toHaveAttribute('data-question', 'open');
});

const mine = (page: Page) => page.locator('[data-measured]');
const size = (part: Locator, way: 'Width' | 'Height') => part.getByRole('textbox', { name: way });

async function compare(part: Locator, width: string, height: string) {
  await size(part, 'Width').fill(width);
  await size(part, 'Height').fill(height);
  await size(part, 'Height').press('Enter');
}

test('what a piece measures is explained by one mistake, and what can be done is said', async ({ page }) => {
  await page.goto(METRIC);
  // One line of all pieces; the facing is to be cut 131 by 183 mm.
  const part = await wake(mine(page).filter({ hasText: 'Facing behind the pockets' }));
  const said = part.locator('.said');
  const more = part.getByText('Why, and what you can do');
  await compare(part, '', '');
  await expect(said).toContainText('Write what you measured');
  await compare(part, '131', '');
  await expect(part).toHaveAttribute('data-measured', 'well');
  await expect(more).toHaveCount(0);
  await compare(part, '111 mm', '163');
  await expect(said).toContainText('cut at its finished size');
  await more.click();
  await expect(part.getByText('It explains width exactly, height exactly.')).toBeVisible();
  await expect(part.getByRole('heading', { name: 'What you can do' })).toBeVisible();
  const several = part.getByRole('heading', { name: 'It may be one of these' });
  await expect(several).toHaveCount(0);

  // More than one mistake makes it 121 mm wide.
  await compare(part, '121', '');
  await expect(part).toHaveAttribute('data-measured', 'ambiguous');
  await expect(said).toContainText('More than one mistake would give this size');
  await more.click();
  await expect(several).toHaveCount(1);
  await expect(part.locator('.remedies > li')).toHaveCount(2);
  await expect(part.locator('.remedies > li').first()).toContainText(/card width were 95\smm/);

  // Carrying on shows the whole page for the work as it is.
  await compare(part, '118', '');
  await more.click();
  await part.getByRole('button', { name: 'Show this page for my work' }).click();
  await expect(inProse(page, 'panel width')).toHaveText(/118\smm/);
  await part.getByRole('button', { name: 'Back to the plan' }).click();
  await expect(inProse(page, 'panel width')).toHaveText(/131\smm/);
});

test('carrying on lists what is to be cut otherwise from now on', async ({ page }) => {
  await page.goto(`${PLEAT}?edition=metric`);
  const part = await wake(mine(page));
  // 6 mm wider between its seams, so that the pieces that go with it are cut 137 mm wide, and not 131 mm.
  await compare(part, '117', '163');
  const changes = part.locator('.remedies ul').getByRole('listitem');
  await expect(changes.filter({ hasText: /^\s*Cover:/ })).toContainText(/cut 137\smm × 183\smm/);
  await expect(changes.filter({ hasText: /^\s*Facing/ })).toContainText(/cut 137\smm × 183\smm/);
  // The strip itself is cut already.
  await expect(changes.filter({ hasText: /^\s*Pocket strip/ })).toHaveCount(0);
});
