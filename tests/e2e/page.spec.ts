/** The page on every screen: nothing wider than the narrowest, nothing that covers what is read, numbers that stand clear. */
import { globSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test, type Page } from '@playwright/test';
import { LINEN, MAKE, PLEAT, POUCH, SIZE, unfoldAll, wake, wakeAll } from './lesson.ts';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));
/** Every page of the built site. */
const pages = globSync('**/*.html', { cwd: dist })
  .filter((file) => readFileSync(path.join(dist, file), 'utf8').includes('<main'))
  .map((file) => `/${file.replaceAll(path.sep, '/').replace(/index\.html$/, '')}`)
  .toSorted();
const LESSONS = [SIZE, PLEAT, MAKE, POUCH, LINEN];
const EDITIONS = ['inch', 'metric'] as const;

test.describe.configure({ timeout: 240_000 });

test('no page scrolls sideways at 320 px', async ({ page }) => {
  expect(pages.length).toBeGreaterThan(15);
  await page.setViewportSize({ width: 320, height: 640 });
  for (const address of pages)
    for (const edition of EDITIONS) {
      await page.goto(`${address}?edition=${edition}`);
      await unfoldAll(page);
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(width, `${address}, ${edition}`).toBeLessThanOrEqual(320);
    }
});

/** Numbers of rulers that touch each other or stand out of their ruler, and rulers as high as none is; each by name. */
const crowded = (page: Page) =>
  page.evaluate(() => {
    const seen = (element: Element) => element.getClientRects().length > 0;
    return [...document.querySelectorAll('.ruler-slider')].filter(seen).flatMap((ruler) => {
      const tape = ruler.querySelector('.tape')!.getBoundingClientRect();
      const boxes = [...ruler.querySelectorAll('.mark')]
        .filter(seen)
        .map((mark) => ({ text: mark.textContent, box: mark.getBoundingClientRect() }))
        .toSorted((a, b) => a.box.left - b.box.left);
      const bad = boxes.filter(
        ({ box }, i) =>
          box.left < tape.left || box.right > tape.right || box.left < (boxes[i - 1]?.box.right ?? -Infinity) + 3,
      );
      const name = ruler.querySelector('label')?.textContent;
      return [...bad.map(({ text }) => `${name}: ${text}`), ...(tape.height > 96 ? [`${name}: too high`] : [])];
    });
  });

/** Labels of the lesson's tape that lie over one another or do not go into their place. */
const crowdedOnTape = (page: Page) =>
  page.evaluate(() => {
    const boxes = [...document.querySelectorAll('nav.tape :is(.label, .number)')]
      .filter((label) => getComputedStyle(label).clipPath === 'none')
      .map((label) => ({ text: label.textContent, box: label.getBoundingClientRect() }));
    const over = (a: DOMRect, b: DOMRect) =>
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 &&
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5;
    return boxes.filter(({ box }, i) => boxes.slice(0, i).some((one) => over(box, one.box))).map(({ text }) => text);
  });

for (const lesson of LESSONS) {
  test(`${lesson}: the numbers of every ruler stand clear of each other, 320 to 1280 px`, async ({ page }) => {
    let rulers = 0;
    for (const edition of EDITIONS) {
      await page.setViewportSize({ width: 320, height: 740 });
      await page.goto(`${lesson}?edition=${edition}`);
      await wake(page.getByRole('button', { name: 'Your size' }));
      await page.getByRole('button', { name: 'Your size' }).click();
      // In the other edition than it was built with the page wakes what has rulers.
      if (edition === 'metric') await expect(page.locator('astro-island[ssr]:has(.ruler-slider)')).toHaveCount(0);
      await expect(page.getByRole('dialog', { name: 'Your size' }).getByRole('slider').first()).toBeVisible();
      await page.evaluate(() => {
        for (const one of document.querySelectorAll('details')) one.open = true;
        for (const one of document.querySelectorAll<HTMLElement>('.prose > *')) one.style.contentVisibility = 'visible';
      });
      for (const width of [320, 360, 390, 414, 480, 600, 768, 900, 1024, 1200, 1280]) {
        await page.setViewportSize({ width, height: 740 });
        expect(await crowded(page), `${edition}, ${width} px`).toEqual([]);
        expect(await crowdedOnTape(page), `${edition}, ${width} px`).toEqual([]);
      }
      rulers += await page.locator('.ruler-slider').count();
    }
    expect(rulers).toBeGreaterThan(4);
  });

  test(`${lesson}: “your size” covers neither text nor a control`, async ({ page }) => {
    for (const width of [360, 1024, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      await page.goto(lesson);
      for (const share of [0, 0.3, 0.6, 1]) {
        await page.evaluate((at) => scrollTo({ top: at * document.body.scrollHeight, behavior: 'instant' }), share);
        const covered = await page.evaluate(() => {
          const button = [...document.querySelectorAll('button')].find(
            (one) => one.textContent.trim() === 'Your size',
          )!;
          const own = button.getBoundingClientRect();
          const bar = document.querySelector('.bar')!;
          // In the bar it covers no more than the bar does; below it, nothing of the text.
          const foot = bar.getClientRects().length > 0 && innerWidth < 992 ? bar.getBoundingClientRect().bottom : 0;
          return [...document.querySelectorAll('.prose :is(p, button, input, li, td, svg)')]
            .map((one) => ({ one, box: one.getBoundingClientRect() }))
            .filter(({ box }) => box.width > 0 && box.bottom > foot)
            .filter(
              ({ box }) =>
                Math.min(box.right, own.right) > Math.max(box.left, own.left) &&
                Math.min(box.bottom, own.bottom) > Math.max(box.top, own.top, foot),
            )
            .map(({ one }) => one.outerHTML.slice(0, 80));
        });
        expect(covered, `${width} px at ${share}`).toEqual([]);
      }
    }
  });
}

test('beside the text stand the sizes, and the drawing of what is read', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.goto(PLEAT);
  await wakeAll(page);
  const beside = page.locator('.size-at-hand');
  await expect(beside.getByText('Number of pockets')).toBeVisible();
  // Before the first drawing the finished thing stands there.
  await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
  await expect(beside.locator('.whole svg')).toBeVisible();
  const atTheLessonsSize = await beside.locator('.whole svg').innerHTML();
  const asked = page.getByText('What is the first fold you make?');
  await asked.evaluate((text) => text.scrollIntoView({ block: 'center', behavior: 'instant' }));
  await expect(beside.locator('.passed svg')).toBeVisible();
  await expect(beside.locator('.whole')).toBeHidden();
  // What the page keeps back until it is answered is not told here.
  await expect(beside.locator('.passed [data-result]')).toHaveCount(0);
  const before = await beside.locator('.passed svg').innerHTML();
  await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
  await page.getByRole('button', { name: 'Your size' }).click();
  await page.getByRole('textbox', { name: 'Depth of a pocket, typed' }).last().fill('2 1/2');
  await page.keyboard.press('Enter');
  await asked.evaluate((text) => text.scrollIntoView({ block: 'center', behavior: 'instant' }));
  await expect.poll(() => beside.locator('.passed svg').innerHTML()).not.toBe(before);
  // The finished thing is drawn at the learner's size, too.
  const whole = beside.locator('.whole svg');
  await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
  await expect(whole).toBeVisible();
  await expect.poll(() => whole.innerHTML()).not.toBe(atTheLessonsSize);
});

test('a step tells what to do and what it measures before its drawing', async ({ page }) => {
  await page.goto(MAKE);
  const step = page.locator('[data-step="pleat"]');
  const [words, picture] = [step.locator('.words'), step.locator('.picture')];
  const isBefore = await words.evaluate(
    (one, other) => Boolean(one.compareDocumentPosition(other) & Node.DOCUMENT_POSITION_FOLLOWING),
    await picture.elementHandle(),
  );
  expect(isBefore).toBe(true);
});

test('on a phone the next step is unfolded, the others when they are tapped', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(MAKE);
  const first = page.locator('[data-step="stiffen"]');
  const second = page.locator('[data-step="pleat"]');
  await expect(first.getByRole('checkbox')).toBeVisible();
  await expect(second.getByRole('checkbox')).toBeHidden();
  // What can hurt is named before it is unfolded.
  await expect(second.getByText('Hot iron').first()).toBeVisible();
  await first.getByRole('checkbox').check();
  await expect(second.getByRole('checkbox')).toBeVisible();
  // Nothing folds under the hand.
  await expect(first.getByRole('checkbox')).toBeVisible();
  await page.getByRole('button', { name: 'Show step 3' }).click();
  await expect(page.locator('[data-step="pocket-snap"]').getByRole('checkbox')).toBeVisible();
  await page.reload();
  await expect(second.getByRole('checkbox')).toBeVisible();
  await expect(first.getByRole('checkbox')).toBeHidden();
  await page.emulateMedia({ media: 'print' });
  await expect(first.getByRole('img')).toBeVisible();
});

test('the longest lesson takes fewer than twenty screens of a phone, and is skipped by section', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(MAKE);
  await wakeAll(page);
  const screens = await page.evaluate(() => document.documentElement.scrollHeight / innerHeight);
  expect(screens).toBeLessThan(20);
  // What can hurt is never folded away, and neither is what was put right in a recording.
  await expect(page.locator('.prose .caution')).not.toHaveCount(0);
  for (const caution of await page.locator('.prose .caution').all()) await expect(caution).toBeVisible();
  const recording = page.locator('[data-recording]');
  const said = recording.getByRole('region', { name: /^What is said/ });
  await expect(said.locator('.correction')).not.toHaveCount(0);
  for (const correction of await said.locator('.correction').all()) await expect(correction).toBeVisible();
  await expect(said.locator('.paragraph').first()).toBeHidden();
  await recording.getByRole('button', { name: 'Show what is said' }).click();
  await recording.getByRole('link', { name: /Fold the pleats/ }).click();
  await expect(said.getByRole('heading', { name: /Fold the pleats/ }).first()).toBeInViewport();
  // It is shown as long as the address leads into it, and hidden all the same when that is wished.
  await recording.getByRole('button', { name: 'Hide what is said' }).click();
  await expect(said.locator('.paragraph').first()).toBeHidden();
  await expect(recording.getByRole('button', { name: 'Show what is said' })).toHaveAttribute('aria-expanded', 'false');
  // The first study stands open; another says what it finds, and opens when it is asked to.
  await expect(page.locator('[data-study="make-up"]').getByRole('img').first()).toBeVisible();
  const seam = page.locator('[data-study="seam"]');
  await expect(seam.getByRole('slider').first()).toBeHidden();
  await expect(seam.locator('.happened')).toBeVisible();
  await seam.getByRole('button', { name: 'Try it' }).click();
  await expect(seam.getByRole('slider').first()).toBeVisible();

  // By thumb: the names of all sections, one tap away.
  await page.getByRole('button', { name: 'Sections of this lesson' }).click();
  const sections = page.getByRole('navigation', { name: 'Names of the sections' });
  await sections.getByRole('link', { name: 'Close it' }).click();
  await expect(sections).toBeHidden();
  await expect(page.getByRole('heading', { name: 'Close it' })).toBeInViewport();
  // By keyboard: from a heading to the next.
  const onward = page.locator('#sew-it-round + a');
  await onward.focus();
  await expect(onward).toBeInViewport();
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/#when-seams-drift$/);
  await expect(page.getByRole('heading', { name: 'When seams drift' })).toBeInViewport();
});

test('the home page and the course lead back to where one was; the last lesson tells what comes next', async ({
  page,
}) => {
  const offer = page.getByText('Go on where you were:');
  await page.goto('/');
  await expect(offer).toBeHidden();
  await page.goto(PLEAT);
  const section = page.locator('.prose > h2').nth(1);
  await section.evaluate((head) => head.scrollIntoView({ behavior: 'instant' }));
  const kept = () => page.evaluate(() => JSON.stringify(localStorage));
  await expect.poll(kept).toContain((await section.getAttribute('id'))!);
  for (const from of ['/', '/courses/pocket-folio/']) {
    await page.goto(from);
    await expect(offer).toBeVisible();
    await offer.getByRole('link').click();
    await expect(page).toHaveURL(new RegExp(`${PLEAT}#.+`));
    await expect(section).toBeInViewport();
  }
  await page.goto(MAKE);
  await page.getByRole('link', { name: 'See how far you came, and hand it in' }).click();
  await expect(page).toHaveURL(/\/courses\/pocket-folio\/progress\/$/);
});

test('a term opens its meaning by a tap and by a key, and gives the focus back', async ({ page }) => {
  await page.goto(PLEAT);
  const term = page.getByRole('button', { name: 'mountain fold', exact: true }).first();
  const meaning = page.getByText('A fold whose edge stands up towards you.');
  await term.click();
  await expect(meaning).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(meaning).toBeHidden();
  await term.focus();
  await page.keyboard.press('Enter');
  await expect(meaning).toBeVisible();
  await expect(page.locator('.meaning:popover-open')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(term).toBeFocused();
  // Once in a section; in headings and sums never.
  expect(await page.locator(':is(h1, h2, h3, a, code, .katex) .term').count()).toBe(0);
  // What the project's file says of a step can be asked, too.
  await page.goto(MAKE);
  const ofStep = page.locator('[data-step] .own .term').first();
  await ofStep.click();
  await expect(page.locator('.meaning:popover-open')).toContainText(`${await ofStep.textContent()}`);
  await page.goto(PLEAT);
  // Pressed in a question that sleeps, it stays open while the question wakes.
  const asked = page.locator('[data-question] .term').first();
  await asked.click();
  await page.waitForTimeout(500);
  await expect(page.locator('.meaning:popover-open')).toHaveCount(1);
  await page.emulateMedia({ media: 'print' });
  expect(await term.evaluate((word) => getComputedStyle(word).textDecorationLine)).toBe('none');
});

test('a study after a guess keeps its result until the guess is made', async ({ page }) => {
  await page.goto(SIZE);
  const study = page.locator('[data-held]', { has: page.locator('[data-study="allowances"]') });
  await expect(study).toHaveAttribute('data-held', /wider/);
});

/** Why what has the focus cannot be seen, in words; null where nothing of the page has it. */
const unseen = (page: Page) =>
  page.evaluate(() => {
    const one = document.activeElement;
    if (!one || one === document.body) return null;
    // A circle or a box that is drawn by its label is where the label is.
    const place = one.matches('.said-only') ? (one.closest('label') ?? one.parentElement!) : one;
    const box = place.getBoundingClientRect();
    const name = one.outerHTML.slice(0, 90);
    const [top, bottom] = [Math.max(box.top, 0), Math.min(box.bottom, innerHeight)];
    const [left, right] = [Math.max(box.left, 0), Math.min(box.right, innerWidth)];
    if (right <= left || bottom - top < Math.min(box.height, innerHeight) / 2) return `off screen: ${name}`;
    const over = document
      .elementFromPoint((left + right) / 2, (top + bottom) / 2)
      ?.closest('.bar, .size-at-hand, .sheet, .notice, .meaning, .section-list');
    return over && !over.contains(one) ? `under ${over.className}: ${name}` : '';
  });

// Each lesson once: wide and narrow, forwards and backwards.
for (const [lesson, width, key] of [
  [MAKE, 360, 'Tab'],
  [PLEAT, 360, 'Shift+Tab'],
  [SIZE, 1280, 'Tab'],
  [POUCH, 1280, 'Shift+Tab'],
  [LINEN, 360, 'Tab'],
] as const)
  test(`what has the focus is in sight and under nothing, by ${key} through ${lesson} at ${width} px`, async ({
    page,
  }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.setViewportSize({ width, height: 740 });
    await page.goto(lesson);
    await wakeAll(page);
    const troubles: string[] = [];
    let stops = 0;
    for (; stops < 600; stops++) {
      await page.keyboard.press(key);
      const trouble = await unseen(page);
      if (trouble === null && stops > 0) break;
      if (trouble) troubles.push(trouble);
    }
    // All of the page was gone through, and no more than once.
    expect(stops).toBeGreaterThan(40);
    expect(stops).toBeLessThan(600);
    expect(troubles).toEqual([]);
  });
