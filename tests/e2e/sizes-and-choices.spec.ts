/**
 * A project in several sizes, with one of several to choose, as a learner uses it: tests/fixtures/sized beside the demo
 * courses. Worked out by hand: cut width = wide + ease + 2 seam. inch: 5 + 1/8 + 3/4 = 5 7/8 in the lesson’s medium, 4 7/8
 * small, 6 7/8 large. metric: 100 + 3 + 20 = 123 small.
 */
import { cp } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { copyKit } from '../copy-kit.ts';
import { openBuilt } from './built-site.ts';
import { inProse, wake, yourSize } from './lesson.ts';

const LESSON = '/courses/purses/choose/';
const fixture = fileURLToPath(new URL('../fixtures/sized', import.meta.url));
const cutWidth = (page: Page) => inProse(page, 'cut width');
const size = (page: Page, name: string) => yourSize(page).getByRole('radio', { name, exact: true });
/** The radio lies under its label, which is what a hand meets. */
const choose = (page: Page, name: string) => yourSize(page).getByText(name, { exact: true }).first().click();
const cutList = (page: Page) => page.getByRole('table', { name: 'Pieces to cut' });

test.describe('a project in sizes', { tag: '@phone' }, () => {
  test.describe.configure({ mode: 'default', timeout: 300_000 });
  let kit: Awaited<ReturnType<typeof copyKit>>;
  let site: Awaited<ReturnType<typeof openBuilt>> | undefined;

  // The built site, as learners get it.
  test.beforeAll(async () => {
    kit = await copyKit();
    await cp(fixture, path.join(kit.folder, 'content'), { recursive: true });
    site = await openBuilt(kit.folder);
  });
  test.afterAll(async () => {
    site?.close();
    await kit?.remove();
  });

  const open = async (page: Page, query = '') => {
    await page.goto(`${site?.address}${LESSON}${query}`);
    await wake(yourSize(page));
  };

  test('a size is chosen, the whole page follows, and it is kept and shared', async ({ page }) => {
    await open(page);
    await expect(size(page, 'medium')).toBeChecked();
    await expect(cutWidth(page)).toHaveText(/^5⅞\s*in$/);
    await choose(page, 'large');
    await expect(size(page, 'large')).toBeChecked();
    await expect(cutWidth(page)).toHaveText(/^6⅞\s*in$/);
    await expect(cutList(page).getByRole('row', { name: /^Panel/ })).toContainText(/6⅞\s*in/);
    await expect(page).toHaveURL(/size=large/);

    await page.reload();
    await expect(cutWidth(page)).toHaveText(/^6⅞\s*in$/);
    await wake(yourSize(page));
    await expect(size(page, 'large')).toBeChecked();

    // An address goes before what was kept.
    await open(page, '?size=small&edition=metric');
    await expect(cutWidth(page)).toHaveText(/^123\s*mm$/);
    await yourSize(page).getByRole('button', { name: 'Back to the lesson’s size' }).click();
    await expect(cutWidth(page)).toHaveText(/^148\s*mm$/);
    await expect(size(page, 'medium')).toBeChecked();
  });

  test('a slider goes on from the chosen size', async ({ page }) => {
    await open(page, '?edition=inch');
    await size(page, 'small').focus();
    await page.keyboard.press('Space');
    const ease = yourSize(page).getByRole('textbox', { name: 'Room for what goes in, typed' });
    await ease.fill('1/2');
    await ease.press('Enter');
    // 4 + 1/2 + 3/4.
    await expect(cutWidth(page)).toHaveText(/^5¼\s*in$/);
    await choose(page, 'large');
    await expect(size(page, 'large')).toBeChecked();
    await expect(cutWidth(page)).toHaveText(/^7¼\s*in$/);
  });

  test('one of several is chosen, and brings its pieces and its steps', async ({ page }) => {
    await open(page, '?edition=inch');
    await wake(cutList(page));
    await expect(cutList(page).getByRole('row', { name: /^Lining/ })).toHaveCount(0);
    const making = page.locator('main');
    await expect(making).toContainText('Finish the outside');
    await choose(page, 'Lined');
    await expect(yourSize(page)).toContainText('Its seams lie between both cloths.');
    await expect(cutList(page).getByRole('row', { name: /^Lining/ })).toHaveCount(1);
    await expect(making).not.toContainText('Finish the outside');
    await expect(page).toHaveURL(/inside=lined/);
  });

  test('a size that is not there is said, and the lesson’s size stays', async ({ page }) => {
    await page.goto(`${site?.address}${LESSON}?size=enormous&inside=leather&edition=inch`);
    await expect(page.getByRole('status').filter({ hasText: 'The address' }).first()).toBeVisible();
    await expect(cutWidth(page)).toHaveText(/^5⅞\s*in$/);
  });

  test('everybody can choose: by name, by keys, in the room there is', async ({ page }) => {
    await open(page, '?edition=inch');
    const { violations } = await new AxeBuilder({ page }).include('.size-panel').analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(over).toBeLessThanOrEqual(0);
    await size(page, 'medium').focus();
    await page.keyboard.press('ArrowRight');
    await expect(size(page, 'large')).toBeChecked();
    await expect(cutWidth(page)).toHaveText(/^6⅞\s*in$/);
  });
});
