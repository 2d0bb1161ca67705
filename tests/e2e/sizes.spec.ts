/**
 * A learner's own size: typed, moved, shared by address, kept by the browser, and never lost by a bad value. Its rules are
 * tested one by one in tests/components/page/sizes.svelte.test.ts.
 *
 * The numbers of the swatch-card folio, worked out by hand: panel width = card width + 2 ease + 2 seam.
 * inch: 4 1/4 + 2 * 1/8 + 2 * 3/8 = 5 1/4. metric: 105 + 2 * 3 + 2 * 10 = 131.
 */
import { expect, test, type Page } from '@playwright/test';
import { inProse, PLEAT, SIZE, wake, yourSize } from './lesson.ts';

const width = (page: Page) => yourSize(page).getByRole('textbox', { name: 'Width of your cards, typed' });
const slider = (page: Page) => yourSize(page).getByRole('slider', { name: 'Width of your cards' });

test('the edition switch changes every number, and is remembered', async ({ page }) => {
  await page.goto(SIZE);
  await expect(inProse(page, 'panel width')).toHaveText(/^5¼\s*in$/);
  await page.getByText('metric', { exact: true }).click();
  await expect(inProse(page, 'panel width')).toHaveText(/^131\s*mm$/);
  await expect(page).toHaveURL(/edition=metric/);
  await wake(yourSize(page));
  await expect(width(page)).toHaveValue('105 mm');
  await page.goto(PLEAT);
  await expect(inProse(page, 'step')).toHaveText(/^20\s*mm$/);
});

test('a typed size is taken, in either unit, and the whole page follows', async ({ page }) => {
  await page.goto(SIZE);
  await wake(yourSize(page));
  await width(page).fill('4 3/4');
  await expect(inProse(page, 'panel width')).toHaveText(/^5¾\s*in$/);
  await width(page).fill('127 mm');
  await width(page).press('Enter');
  await expect(width(page)).toHaveValue('5 in');
  await expect(inProse(page, 'panel width')).toHaveText(/^6\s*in$/);
  await expect(page).toHaveURL(/card-width=5\+in/);

  // A worked sum in the text is refilled with the learner's numbers, for eyes and ears.
  await width(page).fill('6');
  const sum = page.locator('[data-worked="panel width"]').first();
  await expect(sum.locator('.tex')).toContainText(/6\s*in/);
  await expect(sum.locator('.tex')).toContainText(/=\s*7\s*in/);
  await expect(sum.locator('[data-words]')).toContainText('7 inches');
});

test('whatever is typed is answered kindly, nothing is lost, and the nearest size is offered', async ({ page }) => {
  await page.goto(SIZE);
  await wake(yourSize(page));
  for (const { typed, says } of [
    { typed: '', says: /Write a length/ },
    { typed: 'as wide as my hand', says: /is not a length/ },
    { typed: '99999999999999999999', says: /more than 100 m/ },
    { typed: '<script>document.title = "taken"</script>', says: /is not a length/ },
    { typed: '-4', says: /less than nothing/ },
    { typed: '9 in', says: /can be from 3\s*in to 6\s*in/ },
    { typed: '4 1/16', says: /goes in steps of ⅛\s*in/ },
  ]) {
    await width(page).fill(typed);
    await width(page).press('Enter');
    await expect(yourSize(page).getByText(says)).toBeVisible();
    await expect(width(page)).toHaveValue(typed);
    await expect(width(page)).toHaveAttribute('aria-invalid', 'true');
    await expect(inProse(page, 'panel width')).toHaveText(/^5¼\s*in$/);
    expect(await page.title()).not.toBe('taken');
  }

  // A size that cannot be taken comes with the nearest that can.
  await width(page).fill('9 in');
  await width(page).press('Tab');
  await yourSize(page).getByRole('button', { name: 'Take 6 in' }).click();
  await expect(width(page)).toHaveValue('6 in');
  await expect(inProse(page, 'panel width')).toHaveText(/^7\s*in$/);
});

test('the ruler moves in its own marks, by keys alone', async ({ page }) => {
  await page.goto(SIZE);
  await wake(yourSize(page));
  await slider(page).focus();
  await page.keyboard.press('ArrowRight');
  await expect(slider(page)).toHaveAttribute('aria-valuetext', '4 and 3 eighths inches');
  await expect(width(page)).toHaveValue('4 3/8 in');
  await page.keyboard.press('End');
  await expect(slider(page)).toHaveAttribute('aria-valuetext', '6 inches');
});

test('the size is kept for the next lesson and the next visit, until it is put back', async ({ page }) => {
  await page.goto(SIZE);
  await wake(yourSize(page));
  await width(page).fill('5 in');
  await width(page).press('Enter');
  await page.goto(SIZE);
  await expect(inProse(page, 'panel width')).toHaveText(/^6\s*in$/);
  await wake(yourSize(page));
  await yourSize(page).getByRole('button', { name: 'Back to the lesson’s size' }).click();
  await expect(inProse(page, 'panel width')).toHaveText(/^5¼\s*in$/);
  await expect(width(page)).toHaveValue('4 1/4 in');
  await expect(page).not.toHaveURL(/card-width/);
});

test('an option takes its pieces out of the list', async ({ page }) => {
  await page.goto(SIZE);
  await wake(yourSize(page));
  const cutList = page.getByRole('table', { name: 'Pieces to cut' });
  await wake(cutList);
  await expect(cutList.getByRole('rowheader', { name: /^Flap/ })).toHaveCount(2);
  await yourSize(page).getByRole('checkbox', { name: 'With the flap and the snap' }).uncheck();
  await expect(cutList.getByRole('rowheader', { name: /^Flap/ })).toHaveCount(0);
  await expect(page).toHaveURL(/flap=no/);
});

test('an address with nonsense changes nothing and says so', async ({ page }) => {
  await page.goto(`${SIZE}?edition=furlong&card-width=<b>wide</b>&ease=99+m&pockets=1e9&flap=maybe&nobody=7`);
  await expect(inProse(page, 'panel width')).toHaveText(/^5¼\s*in$/);
  await expect(inProse(page, 'ease')).toHaveText(/^⅛\s*in$/);
  const notes = page.getByRole('status').filter({ hasText: 'The address' });
  await expect(notes.first()).toBeVisible();
  await expect(notes.first()).toContainText('Ease at each side of a card can be from');
  await notes.first().getByRole('button', { name: 'Understood' }).click();
  await expect(page.getByText('Ease at each side of a card can be from')).toHaveCount(0);
});

test('storage that is full is said once, and the page goes on', async ({ page }) => {
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
  });
  await page.goto(SIZE);
  await wake(yourSize(page));
  await width(page).fill('5 in');
  await expect(inProse(page, 'panel width')).toHaveText(/^6\s*in$/);
  await expect(page.getByText('Your browser has no room left.')).toHaveCount(1);
});

test('storage that is forbidden is said once, and the page goes on', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('forbidden', 'SecurityError');
      },
    });
  });
  await page.goto(SIZE);
  await wake(yourSize(page));
  await width(page).fill('5 in');
  await expect(inProse(page, 'panel width')).toHaveText(/^6\s*in$/);
  await expect(page.getByText('does not let the page keep anything')).toHaveCount(1);
});

test('storage that holds rubbish is as good as empty', async ({ page }) => {
  await page.addInitScript(() => {
    const rubbish = '{"values":{"card width":{"value":1e99,"edition":"inch"}},"options":7}';
    for (const key of ['size:swatch-folio', 'edition', 'theme', 'done:x'])
      localStorage.setItem(`course-kit:${key}`, rubbish);
  });
  await page.goto(SIZE);
  await wake(yourSize(page));
  await expect(width(page)).toHaveValue('4 1/4 in');
  await width(page).fill('5 in');
  await expect(inProse(page, 'panel width')).toHaveText(/^6\s*in$/);
});

test(
  '“your size” comes up from below, leaves the page to be read, and gives the focus back',
  { tag: '@phone' },
  async ({ page }) => {
    await page.goto(PLEAT);
    const open = page.getByRole('button', { name: 'Your size' });
    await wake(open);
    await open.click();
    const sheet = page.getByRole('dialog', { name: 'Your size' });
    await expect(sheet).toBeVisible();
    await expect(sheet.getByRole('heading', { name: 'Your size' })).toBeFocused();
    // Nothing lies over the page: it still scrolls.
    await page.mouse.move(100, 60);
    await page.mouse.wheel(0, 400);
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(0);
    await sheet.getByRole('textbox', { name: 'Step from one pocket to the next, typed' }).fill('1 in');
    await expect(inProse(page, 'step')).toHaveText(/^1\s*in$/);
    await page.keyboard.press('Escape');
    await expect(sheet).toBeHidden();
    await expect(open).toBeFocused();
  },
);

test('the address of a size can be copied, or taken by hand where copying is forbidden', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.reject(new Error('no')) } });
  });
  await page.goto(SIZE);
  await wake(yourSize(page));
  await width(page).fill('5 in');
  await yourSize(page).getByRole('button', { name: 'Copy the address of my size' }).click();
  await expect(yourSize(page).getByRole('textbox', { name: 'Address of my size' })).toHaveValue(/card-width=5\+in/);
});
