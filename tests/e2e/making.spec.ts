/**
 * The making on the page: steps, the play of them all, and the studies of layers, seams and drift. Sizes worked out by
 * hand from the project file: the panel is 4 1/4 + 2 * 1/8 + 2 * 3/8 = 5 1/4 in (105 + 2 * 3 + 2 * 10 = 131 mm) wide, and the
 * folio 3/4 in (20 mm) less.
 */
import { expect, test, type Page } from '@playwright/test';
import { answer, MAKE, POUCH, question, wake, wakeAll, yourSize } from './lesson.ts';

const WORKER = /\/worker[.-][\w-]+\.js$/;
const step = (page: Page, id: string) => page.locator(`[data-step="${id}"]`);
const study = (page: Page, name: string) => page.locator(`[data-study="${name}"]`);
const measures = (page: Page, id: string) => step(page, id).locator('.now dd');

test.describe('a step', () => {
  test('is there before any worker is fetched, at the lesson’s own size', async ({ page }) => {
    const fetched: string[] = [];
    page.on('request', (request) => WORKER.test(request.url()) && fetched.push(request.url()));
    await page.goto(MAKE);
    await wakeAll(page);
    await expect(measures(page, 'pleat')).toHaveText(/^5¼\s*in wide, 7⅛\s*in high$/);
    await expect(step(page, 'pleat').getByRole('img')).toHaveAccessibleName('Fold the pleats of the pocket strip');
    await expect(step(page, 'pleat').getByRole('heading')).toHaveText(
      'Step 2 of 19: Fold the pleats of the pocket strip',
    );
    await expect(step(page, 'pleat')).toContainText('ruler, marking pen, iron, clips');
    await expect(step(page, 'pleat').getByLabel('Where it can hurt')).toContainText('Iron and steam burn.');
    expect(fetched).toEqual([]);
  });

  test('follows the edition and the size, in numbers and in its drawing', async ({ page }) => {
    await page.goto(`${MAKE}?edition=metric&card-width=110+mm`);
    await wake(step(page, 'sew-round'));
    await expect(measures(page, 'sew-round')).toHaveText(/^136\s*mm wide, 183\s*mm high$/);
    const drawing = step(page, 'sew-round').locator('.of-size');
    await expect(drawing).toHaveAttribute('aria-busy', 'false');
    await expect(drawing.locator('svg')).toContainText(/136\s*mm/);
    await expect(drawing.locator('svg')).not.toContainText(/\d\s*in\b/);
  });

  test('never shows a wrong number while the worker is on its way', async ({ page }) => {
    let letGo = () => {};
    const held = new Promise<void>((resolve) => (letGo = resolve));
    await page.route(WORKER, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(`${MAKE}?edition=metric`);
    await wake(step(page, 'pleat'));
    await expect(measures(page, 'pleat')).toHaveText('working it out…');
    await expect(step(page, 'pleat').locator('.of-size')).toHaveAttribute('aria-busy', 'true');
    await expect(step(page, 'pleat')).toContainText('Another size. Working yours out…');
    letGo();
    await expect(measures(page, 'pleat')).toHaveText(/^131\s*mm wide, 183\s*mm high$/);
    await expect(step(page, 'pleat')).not.toContainText('Another size');
  });

  test('says so when the worker cannot be fetched, and still gives no wrong number', async ({ page }) => {
    await page.route(WORKER, (route) => route.abort());
    await page.goto(`${MAKE}?edition=metric`);
    await wake(step(page, 'pleat'));
    await expect(step(page, 'pleat')).toContainText('This could not be fetched.');
    await expect(measures(page, 'pleat')).not.toHaveText(/\d/);
  });

  test('that an option leaves out says so, and comes back with it', async ({ page }) => {
    await page.goto(`${MAKE}?flap=no`);
    await wakeAll(page);
    await expect(step(page, 'flap')).toHaveText('Your project leaves this step out.');
    // Without the flap the cover is sewn on alone, and there are fewer steps.
    await expect(step(page, 'sew-round').getByRole('heading')).toHaveText(/Step 7 of 11: /);
    await expect(step(page, 'sew-round').getByRole('heading')).not.toContainText('flap');
  });

  test('is ticked, kept, and lets the tape mark its part as done', async ({ page }) => {
    await page.goto(MAKE);
    await wakeAll(page);
    const tick = (id: string) => step(page, id).getByRole('checkbox', { name: 'I have done this step' });
    const part = page
      .getByRole('navigation', { name: /steps|lesson/i })
      .getByRole('link', { name: /Back the pockets/ });
    await page.getByRole('heading', { name: 'Make the flap' }).evaluate((head) => head.scrollIntoView());
    await page.mouse.wheel(0, 400);
    await expect(part).not.toContainText(/done/i);
    await tick('back').check();
    await tick('baste-back').check();
    await page.getByRole('heading', { name: 'Make the flap' }).evaluate((head) => head.scrollIntoView());
    await page.mouse.wheel(0, 400);
    await expect(part).toContainText(/done/i);
    await page.reload();
    await wake(step(page, 'back'));
    await expect(tick('back')).toBeChecked();
    await expect(tick('pleat')).not.toBeChecked();
    await tick('back').uncheck();
    await page.reload();
    await wake(step(page, 'back'));
    await expect(tick('back')).not.toBeChecked();
  });
});

test.describe('the play of all steps', () => {
  const rows = (page: Page) => study(page, 'make-up').getByRole('table').locator('tbody tr');

  test('goes from the cut pieces to the closed folio', async ({ page }) => {
    await page.goto(MAKE);
    const play = await wake(study(page, 'make-up'));
    await expect(rows(page)).toHaveCount(19);
    await expect(play.locator('.happened')).toContainText('Nothing is sewn yet.');
    await play.getByRole('button', { name: 'Do the next step' }).click();
    await expect(play.locator('.happened')).toHaveText(
      /^Step 1 of 19: Fuse the strip interfacing .* It now measures 5¼\s*in × 29⅝\s*in\.$/,
    );
    await expect(rows(page).nth(0)).toHaveClass(/now/);
    await play.getByRole('slider', { name: 'Steps done' }).press('End');
    await expect(play.locator('.happened')).toContainText(/4½\s*in × 6⅜\s*in\. That was the last step\./);
    await expect(play.getByRole('button', { name: 'Do the next step' })).toHaveAttribute('aria-disabled', 'true');
    await play.getByRole('button', { name: 'Undo one step' }).click();
    await expect(play.locator('.happened')).toContainText('Step 18 of 19');
    await play.getByRole('button', { name: 'Back to the cut pieces' }).click();
    await expect(play.locator('.happened')).toContainText('Nothing is sewn yet.');
  });

  test('shows a fold move in less than 400 ms, and at once to those who asked for less motion', async ({ page }) => {
    await page.goto(MAKE);
    const play = await wake(study(page, 'make-up'));
    const slider = play.getByRole('slider', { name: 'Steps done' });
    // The last step closes the flap: one fold.
    for (const key of ['End', 'ArrowLeft']) await slider.press(key);
    await expect(play.locator('.of-size')).toHaveAttribute('aria-busy', 'false');
    await page.clock.install({ time: 0 });
    await page.clock.pauseAt(60_000);
    const next = play.getByRole('button', { name: 'Do the next step' });
    /** The drawing after so long. A worker draws it, which knows nothing of the page's clock. */
    const after = async (ms: number) => {
      await page.clock.runFor(ms);
      const picture = () => play.locator('svg[role="img"]').evaluate((svg) => svg.innerHTML);
      let last = '';
      await expect
        .poll(async () => {
          const isStill = last === (last = await picture());
          return isStill && (await play.locator('.of-size').getAttribute('aria-busy')) === 'false';
        })
        .toBe(true);
      return last;
    };
    const before = await after(0);
    await next.click();
    const half = await after(180);
    const done = await after(220);
    expect(new Set([before, half, done]).size).toBe(3);
    expect(await after(400)).toBe(done);

    await slider.press('ArrowLeft');
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await next.click();
    expect(await after(0)).toBe(done);
  });

  test('counts layers anew for another size, and shows none that are not counted', async ({ page }) => {
    await page.goto(`${MAKE}?pockets=6`);
    await wake(study(page, 'make-up'));
    const layers = rows(page).nth(1).locator('td').nth(1);
    await expect(layers).toHaveText(/^(…|\d+ \(\d+\))$/);
    await expect(rows(page).nth(18).locator('td').nth(1)).toHaveText(/^\d+ \(\d+\)$/);
    // One pocket more, and deep ones: where most of them overlap, there is a fold's two layers more at some height.
    expect(parseInt((await layers.textContent())!)).toBeGreaterThanOrEqual(14);
  });
});

test.describe('the study of layers', () => {
  test('begins at the thickest place that is sewn, is read by keyboard, and tells what thicker cloth needs', async ({
    page,
  }) => {
    await page.goto(MAKE);
    const layers = await wake(study(page, 'layers'));
    // Seven layers of the strip, the facing and the cover: 7 * 0.3 + 0.2 + 0.3 = 2.6 mm.
    await expect(layers.locator('.happened')).toHaveText(
      /^Place 1: 9 layers, 2\.6\s*mm, and this step sews through it\. Needle NM 90 \(US 14\), universal/,
    );
    await layers.getByRole('radio').first().focus();
    await page.keyboard.press('ArrowDown');
    await expect(layers.locator('.happened')).toContainText('Place 2: 7 layers');
    await expect(layers.getByRole('table').locator('tfoot')).toContainText('7');
    await layers.getByRole('button', { name: /^Back to the first place/ }).click();
    await expect(layers.locator('.happened')).toContainText('Place 1: 9 layers');

    // Thicker cloth needs more, and goes back.
    await layers.getByText('Try another cloth').click();
    const slider = layers.getByRole('slider', { name: /^Ten layers: Plain or small print/ });
    await slider.press('End');
    // Ten layers of 20 mm are 2 mm each: seven of them, the facing and the cover are 14.5 mm.
    await expect(layers.locator('.happened')).toContainText(/14\.5\s*mm/);
    await expect(layers).toContainText('too little');
    await expect(layers).toContainText('It does not go under the presser foot.');
    await layers.getByRole('button', { name: /^Back to the first place/ }).click();
    await expect(layers.locator('.happened')).toContainText(/2\.6\s*mm/);
    await expect(layers).not.toContainText('too little');
  });

  test('is read by moving over the work', { tag: '@phone' }, async ({ page, isMobile }) => {
    /** A mouse moves over it, a finger taps it. */
    const point = (position: { x: number; y: number }) => (isMobile ? svg.tap({ position }) : svg.hover({ position }));
    await page.goto(MAKE);
    const layers = await wake(study(page, 'layers'));
    if (isMobile) await layers.getByRole('button', { name: 'Try it' }).click();
    const svg = layers.locator('svg[role="img"]');
    await point({ x: 3, y: 3 });
    await expect(layers.locator('.of-size')).toHaveAttribute('aria-busy', 'false');
    await expect(svg.locator('[data-shape="chosen place"]')).toHaveCount(1);
    const box = (await svg.locator('[data-shape^="layers layers"]').first().boundingBox())!;
    const all = (await svg.boundingBox())!;
    // The middle of the work lies under the flap and most of the pockets.
    await point({ x: box.x + box.width / 2 - all.x, y: box.y + box.height / 2 - all.y });
    await expect(layers.locator('.happened')).toContainText('and this step does not sew here');
  });

  test('shows the work cut through at the place, and takes its layers apart', async ({ page }) => {
    await page.goto(MAKE);
    const layers = await wake(study(page, 'layers'));
    const svg = layers.locator('svg[role="img"]');
    await layers.getByRole('radio', { name: 'Cut through' }).check({ force: true });
    await expect(svg).toHaveAccessibleName('Folio, cut through');
    await expect(layers.locator('.of-size')).toHaveAttribute('aria-busy', 'false');
    // Nine layers at the thickest place that is sewn, 2.6 mm; the cut says so by its own reading.
    await expect(layers.getByText(/2\.6\s*mm/).first()).toBeAttached();
    await layers.getByRole('button', { name: /^Back to the first place/ }).click();
    await expect(layers.getByRole('radio', { name: 'From above' })).toBeChecked();
    await expect(svg.locator('[data-shape="chosen place"]')).toHaveCount(1);

    // The layers apart, each named from the bottom up.
    await layers.getByRole('radio', { name: 'Layers apart' }).check({ force: true });
    await expect(svg).toHaveAccessibleName('Folio, taken apart');
    await layers.getByText('What this drawing shows').click();
    const told = layers.locator('figure li');
    // The pockets lie on their facing with the right side up, and the cover lies on them face down.
    await expect(told.nth(1)).toHaveText('Layer 1: facing, right side up.');
    await expect(told.last()).toHaveText(/^Layer \d+: cover, wrong side/);
    await expect(told.first()).toHaveText(/taken apart: \d+ layers, from the bottom to the top\.$/);
    const count = Number((await told.first().textContent())!.match(/(\d+) layers/)![1]);
    // A line for each layer: there are never fewer than lie on each other anywhere.
    expect(count).toBeGreaterThanOrEqual(9);
    await expect(told.filter({ hasText: /^Layer \d+: / })).toHaveCount(count);

    await layers.getByRole('button', { name: /^Back to the first place/ }).click();
    await expect(svg).toHaveAccessibleName('Folio, layers');
  });
});

test('the study of a seam takes both allowances, and the study of drift adds them up', async ({ page }) => {
  await page.goto(MAKE);
  const seam = await wake(study(page, 'seam'));
  const shows = seam.getByRole('row', { name: 'Joined' }).getByRole('cell').last();
  await expect(shows).toHaveText(/^9¾\s*in$/);
  await seam.getByRole('slider', { name: 'Allowance of the left piece' }).press('ArrowRight');
  await expect(shows).toHaveText(/^9\s*11⁄16\s*in$/);
  await expect(seam.locator('.tex')).toContainText(/=\s*9\s*11⁄16\s*in/);
  await expect(seam.locator('svg[role="img"]')).toContainText(/9\s*11⁄16\s*in/);
  await seam.getByText('to the right', { exact: true }).click();
  await expect(shows).toHaveText(/^9\s*11⁄16\s*in$/);
  await seam.getByRole('button', { name: 'Back to the first two pieces' }).click();
  await expect(shows).toHaveText(/^9¾\s*in$/);

  // Drift adds up seams that err the same way.
  const drift = await wake(study(page, 'drift'));
  const worst = drift.getByRole('row', { name: /at worst/ }).getByRole('cell');
  await expect(worst.nth(0)).toHaveText(/^1⁄16\s*in$/);
  await expect(worst.nth(1)).toHaveText(/^4\s*7⁄16\s*in$/);
  await drift.getByRole('slider', { name: 'Seams across it' }).press('End');
  // Twelve seams, each 1/32 in too wide, take 3/8 in of 4 1/2 in.
  await expect(worst.nth(0)).toHaveText(/^⅜\s*in$/);
  await expect(worst.nth(1)).toHaveText(/^4⅛\s*in$/);
  await expect(drift.locator('.tex').first()).toContainText(/=\s*12\s*×\s*1⁄32\s*in/);
  await drift.getByRole('slider', { name: 'Each too wide by' }).press('Home');
  await expect(drift.locator('.happened')).toContainText(/Every seam is right, and so is the size: 4½\s*in\./);
});

test.describe('the making lesson at a learner’s size', () => {
  test('it prints at the learner’s own size', async ({ page }) => {
    await page.goto(`${MAKE}?edition=metric`);
    await wake(step(page, 'stiffen'));
    await expect(measures(page, 'stiffen')).toHaveText(/mm/);
    // Nothing below has been looked at when the printer is asked.
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await expect(step(page, 'close-flap').locator('.of-size')).toHaveAttribute('aria-busy', 'false');
    expect(await step(page, 'close-flap').locator('svg[role="img"]').textContent()).toMatch(/mm/);
  });
});

test('a step that boxes corners tells how large the bag stands, without its allowances', async ({ page }) => {
  await page.goto(POUCH);
  await wake(step(page, 'box'));
  // The base is 7 in long and the pouch 4 in high, as the project file has it; two squares of 1 1/4 in make the depth.
  await expect(measures(page, 'box')).toHaveText(
    /^7\s*in wide, 4\s*in high, 2½\s*in deep, standing, from seam to seam$/,
  );
  await expect(step(page, 'box').locator('svg[role="img"]')).toContainText('from seam to seam');
});

test('a question answers to the lesson’s size, and a size chosen here reaches every step', async ({ page }) => {
  await page.goto(MAKE);
  const asked = await wake(question(page, 'How long is the gap?'));
  await answer(asked, '3 1/2 in');
  await expect(asked).toHaveAttribute('data-question', 'right');
  await page.getByRole('button', { name: 'Your size' }).click();
  const panel = page.getByRole('dialog').or(yourSize(page)).first();
  await panel.getByRole('slider', { name: 'Width of your cards' }).press('ArrowRight');
  await page.keyboard.press('Escape');
  await wake(step(page, 'turn-folio'));
  await expect(measures(page, 'turn-folio')).toHaveText(/^4⅝\s*in wide/);
});
