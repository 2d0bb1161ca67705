/** Drawings as a real browser shows them, with the page's own fonts: large enough, apart, and the same in words. */
import { expect, test, type Page } from '@playwright/test';
import { chooseEdition, LINEN, MAKE, PLEAT, POUCH, SIZE, unfoldAll, wakeAll } from './lesson.ts';

/** What is wrong with the lettering of the drawings that can be seen, in words. */
const troubles = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    await document.fonts.ready;
    return [...document.querySelectorAll<SVGSVGElement>('figure.drawing svg')].flatMap((svg) => {
      const { width, height } = svg.viewBox.baseVal;
      const shown = svg.getBoundingClientRect().width / width;
      if (shown === 0) return [];
      const texts = [...svg.querySelectorAll('text')].map((text) => ({
        words: text.textContent,
        box: text.getBBox(),
        pixels: Number(text.getAttribute('font-size')) * shown,
      }));
      return texts.flatMap(({ words, box, pixels }, i) => {
        const found: string[] = [];
        if (pixels < 12) found.push(`“${words}” is shown at ${pixels.toFixed(1)} px`);
        if (box.x < -0.1 || box.x + box.width > width + 0.1 || box.y + box.height > height + 0.1) {
          found.push(`“${words}” stands outside`);
        }
        for (const other of texts.slice(i + 1)) {
          const [a, b] = [box, other.box];
          const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
          const high = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
          if (across > 0.05 && high > 0.05) found.push(`“${words}” overlaps “${other.words}”`);
        }
        return found;
      });
    });
  });

for (const lesson of [SIZE, PLEAT, MAKE, POUCH, LINEN]) {
  for (const width of [320, 1280]) {
    const tag = width === 320 ? '@phone-only' : [];
    test(`${lesson} has drawings that can be read at ${width} px, in either edition`, { tag }, async ({ page }) => {
      await page.setViewportSize({ width, height: 800 });
      await page.goto(`${lesson}?edition=inch`);
      for (const edition of ['inch', 'metric'] as const) {
        await chooseEdition(page, edition);
        await wakeAll(page);
        await unfoldAll(page);
        expect(await page.locator('figure.drawing svg').count()).toBeGreaterThan(0);
        await expect.poll(() => troubles(page)).toEqual([]);
      }
    });
  }
}

test('drawings are large enough and clear before any script has run', async ({ browser, baseURL }) => {
  const context = await browser.newContext({ javaScriptEnabled: false, viewport: { width: 320, height: 640 } });
  const page = await context.newPage();
  await page.goto(`${baseURL}${PLEAT}`);
  const shown = await page.locator('figure.drawing svg').filter({ visible: true }).all();
  expect(shown.length).toBeGreaterThan(0);
  for (const svg of shown) {
    const viewBox = (await svg.getAttribute('viewBox')) ?? '';
    const box = await svg.boundingBox();
    // Type is 3.2 of the sheet's units high.
    expect((3.2 * (box?.width ?? 0)) / Number(viewBox.split(' ')[2])).toBeGreaterThanOrEqual(12);
  }
  await context.close();
});

test('what a drawing shows can be read as text, with the same numbers', async ({ page }) => {
  await page.goto(`${PLEAT}?edition=metric`);
  await wakeAll(page);
  const figure = page
    .locator('figure.drawing')
    .filter({ has: page.getByRole('img', { name: 'Pocket strip', exact: true }) });
  // A question below asks for its sizes.
  await page.locator('[data-held]', { has: figure }).getByRole('button', { name: 'Show it now' }).click();
  await figure.getByText('What this drawing shows').click();
  const label = await figure.locator('text[data-shape="fold 1"]').textContent();
  const spoken = `${parseInt(label ?? '')} millimetres from the bottom edge`;
  await expect(figure.getByRole('listitem').filter({ hasText: spoken })).toHaveCount(1);
});

test(
  'home shows each course with what it makes, the easiest first; so does the course',
  { tag: '@phone' },
  async ({ page }) => {
    await page.goto('/');
    const courses = page.getByRole('region', { name: 'Courses' }).getByRole('listitem');
    await expect(courses.getByRole('link')).toHaveText([
      'Corners that lie flat',
      'A pouch that stands',
      'Pockets from one strip',
    ]);
    for (const [i, name] of ['Mitred table set, made', 'Notions pouch, made', 'Swatch-card folio, made'].entries()) {
      const picture = courses.nth(i).getByRole('img', { name });
      await expect(picture).toBeVisible();
      const { width, height } = (await picture.boundingBox())!;
      expect(Math.min(width, height)).toBeGreaterThan(40);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);

    await courses.getByRole('link', { name: 'Pockets from one strip' }).click();
    await expect(page.locator('header.opening').getByRole('img', { name: 'Swatch-card folio, made' })).toBeVisible();
  },
);
