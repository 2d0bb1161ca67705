/**
 * The making beside the machine: one step at a time, over the whole screen. Sizes by hand from the project file: the panel
 * is 4 1/4 + 2 * 1/8 + 2 * 3/8 = 5 1/4 in (105 + 2 * 3 + 2 * 10 = 131 mm) wide.
 */
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { LINEN, MAKE, POUCH, wake, wakeAll } from './lesson.ts';

const AT_HAND = `${MAKE}#one-step`;
const view = (page: Page) => page.getByRole('dialog');
const title = (page: Page) => view(page).getByRole('heading', { level: 2 });
const door = (page: Page) => page.getByRole('button', { name: 'One step at a time' });
const next = (page: Page) => view(page).getByRole('button', { name: 'Next' });
const tick = (page: Page) => view(page).getByRole('checkbox', { name: 'I have done this step' });
const now = (page: Page) => view(page).locator('dd[data-result]');

/** Waits until the steps are worked out: another program may be busy beside it. */
const isThere = (page: Page, step: RegExp = /^Step \d+ of \d+: /) =>
  expect(title(page)).toHaveText(step, { timeout: 40_000 });

async function openAt(page: Page, address: string) {
  await page.goto(address);
  await isThere(page);
}

test('the making is sewn step by step on a phone, without a network', { tag: '@phone' }, async ({ page, context }) => {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(MAKE);
  await door(page).click();
  await isThere(page);
  await expect(title(page)).toHaveText('Step 1 of 19: Fuse the strip interfacing to the pocket strip');
  await expect(title(page)).toBeFocused();
  await expect(view(page).getByText('All steps are here.')).toBeAttached();
  await context.setOffline(true);

  const titles = new Set<string>();
  for (let n = 1; n <= 19; n++) {
    await expect(title(page)).toHaveText(new RegExp(`^Step ${n} of 19: \\S`));
    titles.add((await title(page).textContent())!);
    await expect(view(page).locator('svg[role="img"]').first()).toBeVisible();
    await expect(view(page).locator('dt').first()).toHaveText('Now measures');
    await expect(now(page)).toHaveText(/\d.*wide, .*\d.*high/);
    if (n % 6 === 1) await tick(page).check();
    if (n < 19) await next(page).click();
  }
  expect(titles.size).toBe(19);
  await expect(next(page)).toHaveAttribute('aria-disabled', 'true');
  await page.keyboard.press('PageDown');
  await expect(view(page).getByText('That was the last step.')).toBeVisible();

  // The other edition needs nothing from anywhere either.
  await view(page).getByText('metric', { exact: true }).click();
  await view(page).getByRole('button', { name: 'Back' }).click();
  await expect(now(page)).toHaveText(/mm wide/);
  await view(page).getByRole('button', { name: 'Close' }).click();
  await expect(view(page)).toHaveCount(0);
  // Of the steps 1, 7, 13 and 19. A phone folds them.
  const ofPage = (id: string) => page.locator(`[data-step="${id}"] .tick input`);
  for (const id of ['stiffen', 'stiffen-cover', 'sew-round', 'close-flap']) await expect(ofPage(id)).toBeChecked();
  await expect(ofPage('pleat')).not.toBeChecked();
  expect(errors).toEqual([]);
});

test(
  'it fits a phone: nothing lies beside the screen, and what is pressed is large',
  { tag: '@phone-only' },
  async ({ page }) => {
    await openAt(page, AT_HAND);
    for (let n = 1; n <= 4; n++) {
      const wide = await view(page).evaluate((dialog) =>
        [...dialog.querySelectorAll('*')]
          .filter((element) => !element.closest('svg, .said-only'))
          .filter((element) => element.getBoundingClientRect().right > innerWidth + 0.5)
          .map((element) => element.outerHTML.slice(0, 80)),
      );
      expect(wide).toEqual([]);
      // 44 px, the target size of WCAG 2.1 (2.5.5), and more where a thumb works without looking.
      for (const name of ['Back', 'Next']) {
        const box = (await view(page).getByRole('button', { name }).boundingBox())!;
        expect(box.height).toBeGreaterThanOrEqual(56);
        expect(box.y + box.height).toBeLessThanOrEqual(740);
      }
      expect((await tick(page).locator('xpath=..').boundingBox())!.height).toBeGreaterThanOrEqual(44);
      await next(page).click();
    }
  },
);

test('it tells size, stitch, needle, foot, tools, cautions, and how it should look', async ({ page }) => {
  await openAt(page, `${AT_HAND}:pleat`);
  await expect(now(page)).toHaveText(/^5¼\s*in wide, 7⅛\s*in high$/);
  await expect(view(page)).toContainText('ruler, marking pen, iron, clips');
  await expect(view(page).getByLabel('Where it can hurt')).toContainText('Iron and steam burn.');
  // The author's own words between the tags, and those of the project file.
  await expect(view(page)).toContainText('Fold at one pair of ticks after the other');
  await expect(view(page)).toContainText(/How it should look\. The tops of the pockets lie level, ¾\s*in apart/);
  await expect(view(page)).toContainText('If it went wrong.');
  // Basted with stitches of 4 to 5 mm (course notes on stitch lengths): 25.4 / 5 = 5.1 and 25.4 / 4 = 6.4 to the inch.
  await openAt(page, `${MAKE}?b#one-step:hold-pleats`);
  await expect(view(page)).toContainText(/long straight stitch, 4 to 5 mm \(5 to 6 to the inch\)/);
  await expect(view(page)).toContainText(/needle NM \d+ \(US \d+\), universal/);
  await expect(view(page)).toContainText('standard foot');
});

test('a step card tells how the machine is set, and how it should look', async ({ page }) => {
  await page.goto(MAKE);
  const step = page.locator('[data-step="hold-pleats"]');
  await expect(step).toContainText('long straight stitch, 4 to 5 mm (5 to 6 to the inch)');
  await expect(step).toContainText('standard foot');
  await expect(page.locator('[data-step="pleat"]')).toContainText('If it went wrong. A top that slopes');
});

test('it goes by keys alone: the space bar, Enter and whatever a pedal sends', async ({ page }) => {
  await page.goto(MAKE);
  await wake(door(page));
  await door(page).focus();
  await page.keyboard.press('Enter');
  await isThere(page);
  await expect(title(page)).toBeFocused();
  let n = 1;
  const is = async () => {
    await expect(title(page)).toHaveText(new RegExp(`^Step ${n} of 19: `));
    await expect(title(page)).toBeFocused();
  };
  await is();
  for (const [key, by] of [
    ['PageDown', 1],
    ['Space', 1],
    ['Enter', 1],
    ['ArrowRight', 1],
    ['PageUp', -1],
    ['ArrowLeft', -1],
    ['Shift+Space', -1],
  ] as const) {
    await page.keyboard.press(key);
    n += by;
    await is();
  }
  // Down reads on to the end of the step, and then turns to the next.
  for (let i = 0; i < 8 && (await title(page).textContent())!.startsWith(`Step ${n} `); i++) {
    await page.keyboard.press('ArrowDown');
    await page.waitForTimeout(400);
  }
  n += 1;
  await is();
  // A control that has the focus has its own keys, and the pedal still turns.
  await tick(page).focus();
  await page.keyboard.press('Space');
  await expect(tick(page)).toBeChecked();
  await page.keyboard.press('PageDown');
  n += 1;
  await is();
  // What a finger pressed does not keep them.
  await tick(page).click();
  await expect(title(page)).toBeFocused();

  await page.keyboard.press('Escape');
  await expect(view(page)).toHaveCount(0);
  await expect(door(page)).toBeFocused();
  await expect(page).toHaveURL((url) => url.hash === '');
});

test('Back closes it, an address opens it, and it begins at the first step that is not done', async ({ page }) => {
  await page.goto(MAKE);
  await wakeAll(page);
  for (const id of ['stiffen', 'pleat', 'hold-pleats'])
    await page.locator(`[data-step="${id}"]`).getByRole('checkbox').check();
  await door(page).click();
  await isThere(page);
  // The third step, the snap on the pocket, was left open.
  await expect(title(page)).toHaveText(/^Step 3 of 19: /);
  await tick(page).check();
  await expect(page.locator('[data-step="pocket-snap"] input[type="checkbox"]')).toBeChecked();
  await expect(title(page)).toHaveText(/^Step 3 of 19: /);
  await page.goBack();
  await expect(view(page)).toHaveCount(0);
  await expect(door(page)).toBeFocused();
  await expect(page).toHaveURL((url) => url.pathname === MAKE && url.hash === '');

  await openAt(page, `${MAKE}?again${AT_HAND.slice(MAKE.length)}`);
  await expect(title(page)).toHaveText(/^Step 5 of 19: /);
  await page.reload();
  await isThere(page, /^Step 5 of 19: /);
  await view(page).getByRole('button', { name: 'Close' }).click();
  await expect(view(page)).toHaveCount(0);
});

test('it follows the edition, a size and an option at once', async ({ page, context }) => {
  await openAt(page, `${AT_HAND}:pleat`);
  await view(page).getByText('metric', { exact: true }).click();
  await expect(now(page)).toHaveText(/^131\s*mm wide, 183\s*mm high$/);
  await expect(view(page).locator('svg[role="img"]')).toContainText(/131\s*mm/);
  await expect(view(page)).toContainText(/level, 20\s*mm apart/);
  // Another tab chooses cards that are 5 mm wider, and leaves the flap out: 11 steps in place of 19.
  const other = await context.newPage();
  await other.goto(MAKE);
  // As the other tab's own sliders and ticks keep it.
  await other.evaluate(() =>
    localStorage.setItem(
      'course-kit:size:swatch-folio',
      JSON.stringify({ values: { 'card width': { value: 110, edition: 'metric' } }, options: { flap: false } }),
    ),
  );
  await expect(title(page)).toHaveText('Step 2 of 11: Fold the pleats of the pocket strip');
  await expect(now(page)).toHaveText(/^136\s*mm wide/);
  await expect(view(page).locator('svg[role="img"]')).toContainText(/136\s*mm/);
});

test('a size that the lesson asks for is kept back until somebody wants to see it', async ({ page }) => {
  await openAt(page, `${AT_HAND}:turn-folio`);
  await expect(now(page)).toBeHidden();
  await view(page).getByRole('button', { name: 'Show it now' }).click();
  await expect(now(page)).toBeVisible();
  await expect(now(page)).toHaveText(/^4½\s*in wide/);
  await expect(title(page)).toBeFocused();
});

test('the screen stays on while it is open', async ({ page }) => {
  await page.addInitScript(() => {
    const asked: string[] = ((globalThis as unknown as { asked: string[] }).asked = []);
    const request = (kind: string) => {
      asked.push(kind);
      return Promise.resolve({ release: () => Promise.resolve(void asked.push('released')) });
    };
    Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request } });
  });
  const asked = () => page.evaluate(() => (globalThis as unknown as { asked: string[] }).asked);
  await openAt(page, AT_HAND);
  await expect.poll(asked).toEqual(['screen']);
  await view(page).getByRole('button', { name: 'Close' }).click();
  await expect.poll(asked).toEqual(['screen', 'released']);
});

test('what fuses is timed: as the material says, or as its maker does', async ({ page }) => {
  await page.clock.install();
  await openAt(page, `${AT_HAND}:stiffen`);
  // The light fusible of the demo's shelf says 15 seconds, and nothing of how long it cools.
  await expect(view(page)).toContainText('Press for about 15 seconds on each place, as usual for this material.');
  await expect(view(page)).toContainText('Cool as long as the material’s maker says.');
  await expect(view(page).getByRole('button', { name: 'Start cooling' })).toHaveAttribute('aria-disabled', 'true');
  await view(page).getByRole('button', { name: 'Start pressing' }).click();
  await page.clock.fastForward(10_000);
  await expect(view(page).getByRole('timer', { name: 'Press: time left' })).toHaveText(/^0:0[1-5]$/);
  await page.clock.fastForward(6_000);
  await expect(view(page).getByText('Time is up. Lift the iron')).toBeVisible();

  // The learner's own seconds, from the maker's sheet; they are there again after a reload.
  const cool = view(page).getByRole('textbox', { name: 'Seconds' }).nth(1);
  await cool.fill('90');
  await view(page).getByRole('button', { name: 'Start cooling' }).click();
  await expect(view(page).getByRole('timer', { name: 'Cool: time left' })).toHaveText(/^1:(30|2\d)$/);
  // It goes on while the next step is read.
  await next(page).click();
  await expect(title(page)).toHaveText(/^Step 2 of 19: /);
  await expect(view(page).getByText(/^Cooling: 1:/)).toBeVisible();
  await page.clock.fastForward(91_000);
  await expect(view(page).getByText('Cooling: time is up.')).toBeVisible();
  await page.reload();
  await isThere(page, /^Step 2 of 19: /);
  await page.keyboard.press('PageUp');
  await expect(title(page)).toHaveText(/^Step 1 of 19: /);
  await expect(view(page).getByRole('textbox', { name: 'Seconds' }).nth(1)).toHaveValue('90');
});

test.describe('reading aloud', () => {
  type Said = { text: string; voice: string | undefined };
  /** Voices as a browser lists them. What is said is only written down. */
  const withVoices = (page: Page, voices: { name: string; lang: string; localService: boolean; default?: boolean }[]) =>
    page.addInitScript((listed) => {
      const said: Said[] = ((globalThis as unknown as { said: Said[] }).said = []);
      class Utterance {
        voice: { name: string } | undefined;
        lang = '';
        text: string;
        constructor(text: string) {
          this.text = text;
        }
      }
      const speech = Object.assign(new EventTarget(), {
        getVoices: () => listed,
        cancel: () => {},
        speak: ({ text, voice }: Utterance) => said.push({ text, voice: voice?.name }),
      });
      Object.defineProperty(globalThis, 'speechSynthesis', { configurable: true, value: speech });
      Object.defineProperty(globalThis, 'SpeechSynthesisUtterance', { configurable: true, value: Utterance });
    }, voices);
  const said = (page: Page) => page.evaluate(() => (globalThis as unknown as { said: Said[] }).said);
  const button = (page: Page) => view(page).getByRole('button', { name: 'Read aloud' });
  const remote = { name: 'Far', lang: 'en-GB', localService: false, default: true };
  const local = { name: 'Near', lang: 'en-US', localService: true };

  test('is done by a voice of this device alone, step after step', async ({ page }) => {
    await withVoices(page, [remote, { ...local, name: 'Nah', lang: 'de-DE' }, local]);
    await openAt(page, `${AT_HAND}:pleat`);
    await button(page).click();
    await expect(button(page)).toHaveAttribute('aria-pressed', 'true');
    await expect.poll(async () => (await said(page)).length).toBe(1);
    await page.keyboard.press('PageDown');
    await expect.poll(async () => (await said(page)).length).toBe(2);
    const all = await said(page);
    expect(all.map(({ voice }) => voice)).toEqual(['Near', 'Near']);
    expect(all[0]!.text).toContain('Step 2 of 19. Fold the pleats of the pocket strip.');
    expect(all[0]!.text).toContain('5 and 1 quarter inches wide');
    await button(page).click();
    await page.keyboard.press('PageDown');
    await expect(title(page)).toHaveText(/^Step 4 of 19: /);
    expect(await said(page)).toHaveLength(2);
  });

  test('is not offered where every voice asks a host', async ({ page }) => {
    await withVoices(page, [remote]);
    await openAt(page, AT_HAND);
    await expect(view(page).getByText('All steps are here.')).toBeAttached();
    await expect(button(page)).toHaveCount(0);
    expect(await said(page)).toEqual([]);
  });
});

test.describe('it is for everyone', () => {
  // WCAG 2.2, levels A and AA, as far as axe-core's rules can tell.
  const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
  const found = ({ violations }: Awaited<ReturnType<AxeBuilder['analyze']>>) =>
    violations.map(({ id, nodes }) => ({ id, at: nodes.map((node) => node.html.slice(0, 120)) }));

  test('axe finds nothing in light, dark and forced colours', { tag: '@phone' }, async ({ page }) => {
    await openAt(page, `${AT_HAND}:stiffen`);
    await expect(view(page).getByText('All steps are here.')).toBeAttached();
    const look = () => new AxeBuilder({ page }).include('dialog').withTags(RULES).analyze();
    expect(found(await look())).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(found(await look())).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light', forcedColors: 'active' });
    expect(found(await look())).toEqual([]);
  });

  test('a screen reader hears names, and the page behind is still', async ({ page }) => {
    await openAt(page, `${AT_HAND}:sew-round`);
    await expect(view(page)).toHaveAccessibleName(/^Step 13 of 19: Sew the faced panel/);
    await expect(view(page).getByRole('img').first()).toHaveAccessibleName(/\S/);
    await expect(view(page).getByRole('radio', { name: 'inch' })).toBeChecked();
    // Tab never leaves the view for the page below.
    for (let i = 0; i < 14; i++) {
      await page.keyboard.press('Tab');
      const where = await page.evaluate(() => document.activeElement?.closest('dialog, body')?.localName);
      expect(where).toBe(await page.evaluate(() => (document.activeElement === document.body ? 'body' : 'dialog')));
    }
  });
});

for (const lesson of [MAKE, POUCH, LINEN]) {
  test(`${lesson} can be worked through one step at a time`, async ({ page }) => {
    await page.goto(lesson);
    await door(page).click();
    await isThere(page);
    await expect(view(page).locator('svg[role="img"]').first()).toBeVisible();
  });
}
