/**
 * Every kind of question, each by keyboard alone, with names for a screen reader, in the room of a phone (the phone
 * project runs this file too), after a reload in the middle, and in two tabs at once. Answers are those of choices.spec.ts,
 * questions.spec.ts and practice.spec.ts, where they are worked out.
 */
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { chooseEdition, LINEN, PLEAT, question, SIZE, wake } from './lesson.ts';

type Kind = {
  kind: string;
  lesson: string;
  /** Part of what is asked. */
  text: string;
  /** Gives the right answer by keys, and does not check it. */
  give: (page: Page, asked: Locator) => Promise<void>;
  /** The answer that was given stands there. */
  stands: (asked: Locator) => Promise<void>;
  check?: string;
};

/** Goes on by the tabulator until something has the focus. */
async function tabTo(page: Page, target: Locator) {
  for (let press = 0; press < 80; press++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  await expect(target).toBeFocused();
}

/** Sets the focus on what comes before a part of the page, as for somebody who has tabbed there. */
const beginBefore = (part: Locator) =>
  part.evaluate((section) => {
    const all = [...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary')];
    const seen = all.filter((element) => element.offsetParent !== null);
    seen[seen.findIndex((element) => section.contains(element)) - 1]?.focus();
  });

async function press(page: Page, target: Locator, key: string) {
  await tabTo(page, target);
  await page.keyboard.press(key);
}

/** Goes through the radios of a group by the arrows until one is chosen. */
async function arrowTo(page: Page, asked: Locator, wanted: Locator) {
  await press(page, asked.getByRole('radio').first(), 'Space');
  for (let i = 0; i < 8 && !(await wanted.isChecked()); i++) await page.keyboard.press('ArrowDown');
  await expect(wanted).toBeChecked();
}

const written = (text: string): Pick<Kind, 'give' | 'stands'> => ({
  async give(page, asked) {
    await tabTo(page, asked.getByRole('textbox'));
    await page.keyboard.type(text);
  },
  stands: (asked) => expect(asked.getByRole('textbox')).toHaveValue(text),
});

const chosen = (name: RegExp): Pick<Kind, 'give' | 'stands'> => ({
  give: (page, asked) => arrowTo(page, asked, asked.getByRole('radio', { name })),
  stands: (asked) => expect(asked.getByRole('radio', { name })).toBeChecked(),
});

const ticked = (names: readonly RegExp[]): Pick<Kind, 'give' | 'stands'> => ({
  async give(page, asked) {
    for (const name of names) await press(page, asked.getByRole('checkbox', { name }), 'Space');
  },
  async stands(asked) {
    await expect(asked.getByRole('checkbox', { checked: true })).toHaveCount(names.length);
    for (const name of names) await expect(asked.getByRole('checkbox', { name })).toBeChecked();
  },
});

const STEPS = [/^Fuse/, /^Mark/, /^Fold and press/, /^Check that/, /^Baste/];
const MEANINGS = {
  ease: /Room beyond/,
  allowance: /strip between/,
  'cut size': /size to cut/,
  'finished size': /between the stitch/,
};

const kinds: Kind[] = [
  { kind: 'a size', lesson: SIZE, text: 'How wide must a pocket be between', ...written('4 1/2') },
  { kind: 'a count', lesson: PLEAT, text: 'How many folds do you make?', ...written('10') },
  { kind: 'a choice', lesson: PLEAT, text: 'What is the first fold', ...chosen(/^A mountain fold, the top/) },
  {
    kind: 'an order',
    lesson: PLEAT,
    text: 'in which order do you work?',
    async give(page, asked) {
      for (const [place, step] of STEPS.entries()) {
        const item = asked.getByRole('listitem').filter({ has: page.locator('.step', { hasText: step }) });
        const up = item.getByRole('button', { name: 'Move up' });
        for (let i = 0; i < STEPS.length; i++) {
          if ((await item.locator('.place').innerText()) === String(place + 1)) break;
          // What was moved up lies before the focus: round the page and back would take long.
          await up.focus();
          await page.keyboard.press('Enter');
        }
      }
    },
    async stands(asked) {
      for (const [i, step] of STEPS.entries())
        await expect(asked.getByRole('listitem').nth(i).locator('.step')).toHaveText(step);
    },
  },
  { kind: 'edges', lesson: SIZE, text: 'Which edges do you sew', ...ticked([/^Bottom/, /^Right/, /^Left/]) },
  { kind: 'a fold', lesson: PLEAT, text: 'Where will the fourth fold lie?', ...chosen(/10⅜\sin/) },
  {
    kind: 'folds',
    lesson: PLEAT,
    text: 'become the bottoms of pockets',
    ...ticked([/^B,/, /^D,/, /^F,/, /^H,/, /^J,/]),
  },
  { kind: 'a side', lesson: LINEN, text: 'Where do you see the right side', ...ticked([/round the middle/]) },
  {
    kind: 'pairs',
    lesson: SIZE,
    text: 'what does each mean?',
    async give(page, asked) {
      for (const [term, meaning] of Object.entries(MEANINGS)) {
        const select = asked.getByRole('combobox', { name: term, exact: true });
        const options = await select.locator('option').allInnerTexts();
        await tabTo(page, select);
        for (let i = 0; i < options.findIndex((option) => meaning.test(option)); i++)
          await page.keyboard.press('ArrowDown');
      }
    },
    async stands(asked) {
      for (const [term, meaning] of Object.entries(MEANINGS))
        await expect(asked.getByRole('combobox', { name: term, exact: true }).locator('option:checked')).toHaveText(
          meaning,
        );
    },
  },
  { kind: 'a guess', lesson: SIZE, text: 'How much wider must you cut it?', ...chosen(/By 1½\sin/), check: 'Show me' },
];

const checkOf = ({ check = 'Check' }: Kind, asked: Locator) => asked.getByRole('button', { name: check, exact: true });

/** Goes to a question by the tabulator, and answers it. */
async function answerByKeys(page: Page, { text, give }: Kind): Promise<Locator> {
  const asked = question(page, text);
  await beginBefore(asked);
  await page.keyboard.press('Tab');
  await wake(asked);
  await give(page, asked);
  return asked;
}

/** What of a question lies beyond the edge of the screen. */
const beyond = (asked: Locator) =>
  asked.evaluate((section) => {
    const right = document.documentElement.clientWidth;
    const parts = [...section.querySelectorAll('*')].filter((part) => !part.closest('.said-only'));
    return parts.filter((part) => part.getBoundingClientRect().right > right + 1).map((part) => part.outerHTML);
  });

for (const lesson of [SIZE, PLEAT, LINEN]) {
  const here = kinds.filter((kind) => kind.lesson === lesson);
  const names = here.map(({ kind }) => kind).join(', ');

  test(`${names}: answered by keyboard alone, and every part has a name`, { tag: '@phone' }, async ({ page }) => {
    await page.goto(lesson);
    for (const kind of here) {
      await test.step(kind.kind, async () => {
        const asked = await answerByKeys(page, kind);
        await expect(asked).toHaveAccessibleName(new RegExp(kind.text.replace(/\?/g, '\\?')));
        await press(page, checkOf(kind, asked), 'Enter');
        await expect(asked).toHaveAttribute('data-question', 'right');
        await expect(asked.locator('.feedback')).toHaveRole('status');
        await expect(asked.locator('.feedback')).not.toBeEmpty();
        for (const control of await asked.locator('input, select, button').all())
          if (await control.isVisible()) await expect(control).toHaveAccessibleName(/\S/);
        // Whatever the screen, nothing of it lies beyond its edge.
        expect(await beyond(asked)).toEqual([]);
        await asked.evaluate((section) => section.setAttribute('data-looked-at', ''));
      });
    }
    const { violations } = await new AxeBuilder({ page }).include('[data-looked-at]').analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
  });

  test(`${names}: an answer in the middle is still there after a reload, and is right in another tab`, async ({
    page,
    context,
  }) => {
    await page.goto(lesson);
    for (const kind of here) await answerByKeys(page, kind);
    await page.reload();
    for (const { text, stands } of here) {
      const asked = await wake(question(page, text));
      await stands(asked);
      await expect(asked).toHaveAttribute('data-question', 'open');
    }

    const other = await context.newPage();
    await other.goto(lesson);
    for (const { text, stands } of here) await stands(await wake(question(other, text)));
    await page.bringToFront();
    for (const kind of here) {
      const [asked, there] = [question(page, kind.text), question(other, kind.text)];
      await checkOf(kind, asked).click();
      await expect(asked).toHaveAttribute('data-question', 'right');
      await expect(there).toHaveAttribute('data-question', 'right');
      await kind.stands(there);
    }
  });
}

const practice = (page: Page) => page.getByRole('region', { name: 'Practice' });

test('practice: by keyboard alone, after a reload, and in another tab', async ({ page, context }) => {
  await page.goto(`${SIZE}?edition=metric`);
  const set = practice(page);
  await beginBefore(set);
  await page.keyboard.press('Tab');
  await wake(set);
  await press(page, set.getByRole('button', { name: 'Give me numbers' }), 'Enter');
  const other = await context.newPage();
  await other.goto(`${SIZE}?edition=metric`);
  await wake(practice(other));
  await page.bringToFront();
  await expect(set.locator('dd')).toHaveCount(3);
  const [width = 0, ease = 0, seam = 0] = (await set.locator('dd').allInnerTexts()).map(Number.parseFloat);
  await beginBefore(set);
  await tabTo(page, set.getByRole('textbox'));
  await expect(set.getByRole('textbox')).toHaveAccessibleName('How wide is the panel cut, with these numbers?');
  await page.keyboard.type(String(width + 2 * ease + 2 * seam));
  await page.keyboard.press('Enter');
  for (const tab of [set, practice(other)]) await expect(tab.getByText('1 of 3 in a row')).toBeVisible();
  await page.reload();
  await wake(practice(page));
  await expect(practice(page).getByText('1 of 3 in a row')).toBeVisible();
  await expect(practice(page).getByRole('button', { name: 'Go on' })).toBeVisible();
});

test('my piece: by keyboard alone, after a reload, and in another tab', async ({ page, context }) => {
  await page.goto(`${PLEAT}?edition=metric`);
  const mine = page.locator('[data-measured]');
  const other = await context.newPage();
  await other.goto(`${PLEAT}?edition=metric`);
  await wake(other.locator('[data-measured]'));
  await page.bringToFront();
  await beginBefore(mine);
  await page.keyboard.press('Tab');
  await wake(mine);
  await tabTo(page, mine.getByRole('textbox', { name: /Width/ }));
  await expect(mine.getByRole('textbox', { name: /Width/ })).toHaveAccessibleName(/My piece measures: .* Width/);
  await page.keyboard.type('100');
  await page.keyboard.press('Enter');
  // Planned are 131 mm less two seams of 10 mm. What was compared is compared again wherever it is kept.
  await expect(mine.getByRole('row', { name: /Width/ })).toContainText('too small');
  const there = other.locator('[data-measured]');
  await expect(there.getByRole('row', { name: /Width/ })).toContainText('too small');
  await page.reload();
  await wake(mine);
  await expect(mine.getByRole('textbox', { name: /Width/ })).toHaveValue('100');
  await expect(mine.getByRole('row', { name: /Width/ })).toContainText('too small');
});

test('all my pieces: compared at once by keyboard alone, kept, and in both editions', async ({ page }) => {
  await page.goto(`${SIZE}?edition=metric`);
  const all = page.getByRole('region', { name: 'Check all my pieces' });
  const piece = (name: string) => all.getByRole('listitem').filter({ has: page.getByText(name, { exact: true }) });
  await beginBefore(all);
  await page.keyboard.press('Tab');
  await wake(all);
  // Every piece of the cut list has its line.
  const cut = page.getByRole('table', { name: 'Pieces to cut' }).getByRole('rowheader');
  await expect(all.locator('li[data-measured]')).toHaveCount(await cut.count());
  // Nothing written is answered kindly.
  await press(page, all.getByRole('button', { name: 'Compare all' }), 'Enter');
  await expect(all.getByRole('status')).toContainText('Write what your pieces measure');
  await beginBefore(all);
  // Planned are 131 by 183 mm (123 by 175 with seams of 6 mm, as my-piece.svelte.test.ts has it by hand).
  for (const [name, width, height] of [
    ['Facing behind the pockets', '131', '183'],
    ['Cover', '111', 'about so'],
    ['Flap', '5 1/4', ''],
  ] as const) {
    await tabTo(page, piece(name).getByRole('textbox', { name: `${name} Width` }));
    await page.keyboard.type(width);
    await tabTo(page, piece(name).getByRole('textbox', { name: `${name} Height` }));
    await page.keyboard.type(height);
  }
  await press(page, all.getByRole('button', { name: 'Compare all' }), 'Enter');
  await expect(all.getByRole('status')).toContainText(/1 of \d+ pieces are as they should be/);
  await expect(piece('Facing behind the pockets')).toContainText('All is well: it measures exactly what it should.');
  await expect(piece('Cover')).toHaveAttribute('data-measured', 'open');
  await expect(all.getByRole('status')).toContainText('Not to be read yet: Cover.');
  await expect(all.getByRole('status')).toContainText('Look again at Flap.');
  await page.reload();
  await expect(piece('Facing behind the pockets')).toHaveAttribute('data-measured', 'well');
  await expect(piece('Cover').getByRole('textbox', { name: 'Cover Height' })).toHaveValue('about so');
  // What it really measures is the same in the other edition, where other sizes are planned: 5 1/4 by 7 1/8 in.
  await chooseEdition(page, 'inch');
  await expect(piece('Facing behind the pockets')).not.toHaveAttribute('data-measured', /well|open/);
  await chooseEdition(page, 'metric');
  await expect(piece('Facing behind the pockets')).toHaveAttribute('data-measured', 'well');
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  const { violations } = await new AxeBuilder({ page }).include('.pieces').analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});
