/**
 * Every part of a page shows the edition that is chosen, whether it was used, looked at or neither: a page is built in
 * inches, and here read in millimetres. A reader who scrolls down sees no inch.
 */
import { expect, test, type Page } from '@playwright/test';
import { chooseEdition, LINEN, MAKE, PLEAT, POUCH, SIZE } from './lesson.ts';

/** What a part of the page says in inches, and not in millimetres beside them. */
async function inchesIn(page: Page, island: number): Promise<string[]> {
  return page.evaluate((island) => {
    const part = document.querySelectorAll('astro-island')[island]!;
    const texts: string[] = [];
    const all = document.createTreeWalker(part, NodeFilter.SHOW_TEXT);
    while (all.nextNode()) {
      const text = (all.currentNode as Text).data;
      const element = all.currentNode.parentElement!;
      if (element.closest('astro-island') !== part || element.closest('script, style, [hidden], .said')) continue; // what was said stays as it was said
      // What is folded can be opened; what the page hides for good cannot.
      const isShown = element.checkVisibility() || element.closest('details')?.checkVisibility() === true;
      if (isShown && /(?:[\d¼½¾⅛⅜⅝⅞][\s\u202f]*in\b(?! a row))|inches/u.test(text) && !/mm/u.test(text))
        texts.push(text.trim());
    }
    return texts;
  }, island);
}

const lessons = { SIZE, PLEAT, MAKE, POUCH, LINEN };

for (const [name, lesson] of Object.entries(lessons)) {
  for (const way of ['by the switch', 'by the address']) {
    test(`${name} in the other edition, ${way}`, async ({ page }) => {
      await page.goto(way === 'by the address' ? `${lesson}?edition=metric` : lesson);
      if (way === 'by the switch') await chooseEdition(page, 'metric');
      const islands = await page.locator('astro-island').count();
      expect(islands).toBeGreaterThan(5);
      for (let n = 0; n < islands; n++) {
        const part = page.locator('astro-island').nth(n);
        await part.evaluate((island) =>
          island.firstElementChild?.scrollIntoView({ block: 'center', behavior: 'instant' }),
        );
        await expect.soft
          .poll(() => inchesIn(page, n), { message: (await part.getAttribute('component-url')) ?? '', timeout: 40_000 })
          .toEqual([]);
      }
    });
  }
}

test('an own size is followed, too, by what nobody has used', async ({ page }) => {
  await page.goto(`${PLEAT}?depth=2+1/2+in`);
  const texts = (all: string[]) => all.map((text) => text.replaceAll(/[\s\u202f]+/gu, ' ').trim());
  const lines = page.locator('[data-asks="bottoms"] label');
  // From the raw edge: 3/8 + 1/4 + 2 1/2 in, and then 2 1/2, 3 1/4, 2 1/2 in and so on.
  const wanted = ['A, 3⅛ in', 'B, 5⅝ in', 'C, 8⅞ in', 'D, 11⅜ in'];
  await expect.poll(async () => texts(await lines.allTextContents()).slice(0, 4)).toEqual(wanted);
});
