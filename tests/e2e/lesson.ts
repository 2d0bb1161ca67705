/** Lessons of the demo courses as a learner meets them, and how to wait for what is alive on them. */
import { expect, type Locator, type Page } from '@playwright/test';

export const SIZE = '/courses/pocket-folio/size-the-panel/';
export const PLEAT = '/courses/pocket-folio/pleat-the-strip/';
export const MAKE = '/courses/pocket-folio/make-it-up/';
export const POUCH = '/courses/standing-pouch/size-and-box/';
export const LINEN = '/courses/mitred-corners/hem-and-mitre/';

/** Brings a part of the page under the hand and waits until its script has taken it over. */
export async function wake(part: Locator): Promise<Locator> {
  await part.scrollIntoViewIfNeeded();
  await part.hover();
  await part.evaluate(async (element) => {
    const islands = [element.closest('astro-island'), ...element.querySelectorAll('astro-island')];
    while (islands.some((island) => island?.hasAttribute('ssr')))
      await new Promise((resolve) => setTimeout(resolve, 20));
  });
  return part;
}

/** Waits for everything on the page, as when somebody has read it to its end and touched every question. */
export async function wakeAll(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (const island of document.querySelectorAll('astro-island')) {
      island.firstElementChild?.scrollIntoView({ block: 'center', behavior: 'instant' });
      island.firstElementChild?.dispatchEvent(new PointerEvent('pointerover', { bubbles: true }));
      while (island.hasAttribute('ssr')) await new Promise((resolve) => setTimeout(resolve, 20));
    }
  });
}

/** Turns the page to an edition by its switch, as a reader does. */
export async function chooseEdition(page: Page, edition: 'inch' | 'metric'): Promise<void> {
  await page.getByText(edition, { exact: true }).first().click();
  await expect(page.locator(`input[name="edition"][value="${edition}"]`)).toBeChecked();
}

/** A size as the prose of the page shows it, by the formula it is asked with. Thin blanks are read as blanks. */
export const inProse = (page: Page, of: string): Locator => page.locator(`[data-size="${of}"]`).first();

/** The question that carries this text. */
export const question = (page: Page, text: string | RegExp): Locator =>
  page.locator('[data-question]', { hasText: text });

/** The questions whose answer is written. */
export const written = (page: Page): Locator => page.locator('[data-question]:has(input[type="text"])');

export async function answer(asked: Locator, text: string): Promise<void> {
  await asked.getByRole('textbox').fill(text);
  await asked.getByRole('button', { name: 'Check' }).click();
}

/** The panel in the lesson's text, not the one that comes up from below. */
export const yourSize = (page: Page): Locator => page.getByRole('region', { name: 'Your size' });

/** Unfolds what a phone folds: the steps of the making, studies and their tables, and what is said. */
export async function unfoldAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const button of document.querySelectorAll<HTMLElement>(':is(.unfold, .more)[aria-expanded="false"]'))
      if (button.getClientRects().length > 0) button.click();
  });
}
