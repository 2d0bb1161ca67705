/** A teacher pastes more than a class: the page answers within 2 s, stays awake meanwhile, and can be stopped. */
import { deflateRawSync } from 'node:zlib';
import { expect, test, type Page } from '@playwright/test';
import { wake } from './lesson.ts';

const CLASS = '/courses/pocket-folio/class/';
const code = (text: string | Buffer) => `SEW1.${deflateRawSync(text, { level: 9 }).toString('base64url')}`;
const handIn = (name: string, lessons: unknown[] = []) =>
  JSON.stringify({ 'hand-in': 1, name, course: 'pocket-folio', day: '2030-05-01', lessons });

/** Grows to 64 MB. */
const bomb = code(Buffer.alloc(64_000_000, 65));
/** As large as a hand-in may be, with all that one may hold: slow to read, and taken. */
const large = (n: number) => {
  const answers = Array.from({ length: 95 }, (_, i) => ({
    name: `question ${i}`,
    tries: 1,
    right: true,
    atOnce: true,
    slips: ['near'],
  }));
  const lessons = Array.from({ length: 100 }, (_, i) => ({ lesson: `lesson ${i}`, sections: 1, answers }));
  return code(handIn(`Learner ${n}`, lessons));
};

/** Puts a text into the clipboard and pastes it into the field, as a hand does. */
async function paste(page: Page, text: string) {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate((long) => navigator.clipboard.writeText(long), text);
  await page.getByLabel('Or paste codes').focus();
  await page.keyboard.press('ControlOrMeta+V');
}

const field = (page: Page) => page.getByLabel('Or paste codes');
const bar = (page: Page) => page.getByRole('progressbar', { name: 'Read so far' });

test.beforeEach(async ({ page }) => {
  await page.goto(CLASS);
  await wake(field(page));
});

test('250,000 words with one code among them are read at once', async ({ page }) => {
  await paste(page, `${'neither '.repeat(125_000)}\n${code(handIn('Ada'))}\n${'nor '.repeat(125_000)}`);
  await expect(page.getByText('1 taken, 1 not.')).toBeVisible();
  await expect(page.getByText('250000 other words: No code: a code begins with SEW1.')).toBeVisible();
  await expect(page.getByRole('rowheader', { name: 'Ada' })).toBeVisible();
  // The field would take seconds to show them.
  await expect(field(page)).toHaveValue('');
});

test('50 codes that grow when they are unpacked are refused', async ({ page }) => {
  await paste(page, Array.from({ length: 50 }, () => bomb).join('\n'));
  await expect(page.getByText('0 taken, 50 not.')).toBeVisible();
  await expect(page.getByText('Code 50: The code is damaged. Copy all of it, from SEW1 to its end.')).toBeVisible();
});

test('few codes stand in the field until they are taken', async ({ page }) => {
  await paste(page, `${code(handIn('Ada'))}\n${code(handIn('Ben'))}\nbye`);
  await expect(field(page)).toHaveValue(/bye$/);
  await page.getByRole('button', { name: 'Take the codes' }).click();
  await expect(page.getByText('2 taken, 1 not.')).toBeVisible();
  await expect(page.getByText('One other word: No code')).toBeVisible();
  await expect(field(page)).toHaveValue(/bye$/);
});

test('a long reading shows how far it is, leaves the page awake, is stopped, and keeps what was read', async ({
  page,
}) => {
  await paste(page, Array.from({ length: 400 }, (_, n) => large(n)).join('\n'));
  await expect(bar(page)).toHaveAttribute('max', '400');
  await expect.poll(async () => Number(await bar(page).getAttribute('value'))).toBeGreaterThan(1);
  // A second heap waits for the first.
  await page.getByRole('button', { name: 'Take the codes' }).click();
  await expect(page.getByText('Still reading what came before.')).toBeVisible();
  await page.getByText('metric', { exact: true }).click();
  await expect(page.locator('input[name="edition"][value="metric"]')).toBeChecked();
  // All of that came in between: the reading is not over.
  await expect(bar(page)).toBeVisible();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText(/\d+ more: Not read: you stopped\./)).toBeVisible();
  await expect(bar(page)).toHaveCount(0);
  await expect(page.getByRole('rowheader', { name: 'Learner 0' })).toBeVisible();
  // And it begins anew where somebody wants it to.
  await paste(page, code(handIn('Ada')));
  await page.getByRole('button', { name: 'Take the codes' }).click();
  await expect(page.getByText('1 taken, 0 not.')).toBeVisible();
});
