/** A class of twelve, opened by its teacher: who needs what, kept over a reload, in two tabs and in a browser that is full. */
import { writeFile } from 'node:fs/promises';
import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { chromium, expect, test, type Page } from '@playwright/test';
import encodeQR from 'qr';
import { judge, resolveProject, type Edition } from '../../src/core/index.ts';
import { launchOptions } from '../browser.ts';
import { folio, shelf } from '../core/project/files.ts';
import { answer, question, SIZE, wake } from './lesson.ts';

const PROGRESS = '/courses/pocket-folio/progress/';
const CLASS = '/courses/pocket-folio/class/';

/** The questions of the first lesson by their names, and the sums they ask for. */
const sums = {
  widest: 'card width',
  room: 'card width + 2 * ease',
  panel: 'panel width',
  folio: 'folio width',
} as const;
type Name = keyof typeof sums;
/** What somebody answered, each try in order. */
type Answers = Partial<Record<Name, string[]>>;
type Handed = { name: string; answers: Answers; steps?: number; edition?: Edition };

const patterns = {
  inch: resolveProject(folio(), { edition: 'inch', materials: shelf() }),
  metric: resolveProject(folio(), { edition: 'metric', materials: shelf() }),
};
const steps = ['cut', 'fuse'];

/** What the lesson's page keeps for answers: judged by the same core. */
function keptFor({ answers, edition = 'inch', steps: sewn = 0 }: Handed, all: readonly string[]): [string, unknown][] {
  const kept = Object.entries(answers).map(([name, tries]): [string, unknown] => {
    const judged = tries.map((text) => {
      const found = judge(text, { of: sums[name as Name] }, patterns[edition]);
      if (!('value' in found)) throw new Error(`${text} cannot be read.`);
      const slip = found.verdict === 'slip' ? found.slip.key : found.verdict === 'near' ? 'near' : 'other';
      return { given: text, right: found.verdict === 'right', slip, found };
    });
    const { given, right, slip, found } = judged.at(-1)!;
    const note = { value: found.value, wanted: found.wanted.value, edition, sentence: found.sentence };
    return [
      `answer:${SIZE}#${name}`,
      {
        given,
        tries: tries.length,
        checked: { given, right, note, ...(!right && { slip }) },
        slips: [...new Set(judged.filter((one) => !one.right).map((one) => one.slip))],
        firstRight: judged[0]!.right,
      },
    ];
  });
  return [...kept, ['steps:swatch-folio', Object.fromEntries(all.slice(0, sewn).map((id) => [id, true]))]];
}

/** Hands in on the learner's own page, from what its browser keeps. */
async function handIn(page: Page, handed: Handed, ids: readonly string[] = steps): Promise<string> {
  await page.evaluate(
    (entries) => {
      localStorage.clear();
      for (const [key, value] of entries) localStorage.setItem(`course-kit:${key}`, JSON.stringify(value));
    },
    keptFor(handed, ids),
  );
  await page.goto(PROGRESS);
  await page.getByLabel('Your name in class').fill(handed.name);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a file to hand in' }).click();
  return readFile(await (await download).path(), 'utf8');
}

/** As if it was handed in at that minute. */
const at = (file: string, day: string, time: string): string =>
  JSON.stringify({ ...(JSON.parse(file) as object), day, time });

const asFile = (name: string, text: string) => ({
  name: `${name}.json`,
  mimeType: 'application/json',
  buffer: Buffer.from(text),
});

const right: Answers = { widest: ['4 1/4 in'], room: ['4 1/2 in'], panel: ['5 1/4 in'], folio: ['4 1/2 in'] };
/** The ease was left out: 4 1/4 in for 4 1/4 + 2 * 1/8. */
const noEase = ['4 1/4 in'];
const [rtl, turkish] = ['علی\u200cرضا', 'İpek'];

const twelve: Handed[] = [
  { name: 'Mira', answers: { room: noEase, panel: ['5 in'] } },
  { name: rtl, answers: { ...right, room: ['4 1/4 in', '4 1/2 in'] } },
  { name: turkish, answers: { ...right, room: ['4 1/4 in', '4 1/2 in'] } },
  { name: 'Ada', answers: { room: noEase } },
  { name: 'Ben', answers: { room: noEase } },
  { name: 'Cleo', answers: { room: noEase } },
  { name: 'Dora', answers: { room: noEase } },
  { name: 'Emil', answers: { widest: ['105 mm'] }, edition: 'metric' },
  { name: 'Fay', answers: right },
  { name: 'Gus', answers: right },
  { name: 'Hana', answers: right },
  { name: 'Ivo', answers: right },
];

async function barriers(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target.join(' ')}`);
}

const row = (page: Page, name: string) => page.getByRole('row').filter({ has: page.getByText(name, { exact: true }) });
const open = (page: Page, files: ReturnType<typeof asFile>[]) => page.getByLabel('Files').setInputFiles(files);

test('twelve learners, three of them twice: the page tells who needs what, and keeps it', async ({ page, context }) => {
  test.setTimeout(400_000);
  await page.goto(PROGRESS);
  const files: string[] = [];
  for (const [i, handed] of twelve.entries()) {
    files.push(at(await handIn(page, handed), '2030-05-01', `09:${10 + i}`));
  }
  // Three hand in again: with more, with another writing of the name, and with less.
  const again = [
    at(await handIn(page, { name: 'MIRA', answers: { ...right, panel: ['5 in'] } }), '2030-05-02', '08:00'),
    at(await handIn(page, { name: 'ipek', answers: right }), '2030-05-02', '08:05'),
    at(await handIn(page, { name: 'Fay', answers: { room: ['4 1/2 in'] } }), '2030-05-02', '08:10'),
  ];
  await page.evaluate(() => localStorage.clear());

  await page.goto(CLASS);
  await page.reload(); // in the site's own edition
  await open(
    page,
    files.map((text, i) => asFile(`${i}`, text)),
  );
  await expect(page.getByText('12 taken, 0 not.')).toBeVisible();
  await open(
    page,
    again.map((text, i) => asFile(`again ${i}`, text)),
  );
  await expect(page.getByText('3 taken, 0 not.')).toBeVisible();
  const changed = page.getByRole('list', { name: 'What changed' });
  await expect(changed).toContainText('MIRA handed in again: 2 more answers, 1 now right.');
  await expect(changed).toContainText('ipek handed in again: nothing new.');
  await expect(changed).toContainText(
    'Fay handed in again: 3 answers fewer than before: is it somebody else of that name?',
  );
  // One learner, one row: and what is older than the last is left out.
  const table = page.getByRole('region', { name: 'Table of learners' });
  await expect(table.getByRole('row')).toHaveCount(13);
  await open(page, [asFile('old', files[0]!)]);
  await expect(
    page.getByText(/old\.json: It is older than what is here of that name, from 2030-05-02 08:00/),
  ).toBeVisible();

  // Who answers in the other edition, who needs help first, and what to say again.
  const section = (name: string) => page.getByRole('region', { name, exact: true });
  await expect(section('In the other edition').getByRole('listitem')).toHaveText(/Emil: 1 of 1 answers in metric/);
  const needs = section('Who needs help first').getByRole('listitem');
  await expect(needs).toHaveCount(5);
  await expect(needs.first()).toContainText('1 open in all.');
  // Those with one question open each: the one who handed in longest ago comes first.
  await expect(needs.first()).toContainText('Ada');
  await expect(needs.last()).toContainText('MIRA');
  await expect(section('What to say again tomorrow').getByRole('listitem').first()).toContainText(
    /Take the ease into the sum\. .*6 of 12 made this slip/,
  );

  // Sorted: who has the fewest right answers comes first.
  await table.getByRole('button', { name: 'Questions right' }).click();
  await expect(table.getByRole('rowheader').first()).toContainText('Ada');
  await expect(table.getByRole('columnheader', { name: 'Questions right' })).toHaveAttribute('aria-sort', 'ascending');

  // One learner, by keyboard: the answer, what she read beside it, and back to where the eye was.
  const mira = needs.getByRole('button', { name: 'MIRA' });
  await mira.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'MIRA', exact: true })).toBeFocused();
  const asked = page.getByRole('listitem').filter({ hasText: 'How wide do you cut the pocket panel?' });
  await expect(asked).toContainText(/5\sin/);
  await expect(asked).toContainText('Not right yet, 1 try.');
  const said = judge('5 in', { of: 'panel width' }, patterns.inch).sentence;
  await expect(asked).toContainText(said.slice(0, 20));
  expect(await barriers(page)).toEqual([]);
  await page.getByRole('button', { name: 'Back to the class' }).focus();
  await page.keyboard.press('Enter');
  await expect(mira).toBeFocused();

  // One question: who answered what, those with the same slip together.
  await page.getByRole('button', { name: /How wide must a pocket be/ }).click();
  await expect(page.getByRole('heading', { name: /^You left out the ease\..*\(4\)/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: /Right at once.*\(/ })).toBeVisible();
  await page.getByRole('button', { name: 'Back to the class' }).click();

  // Names from right to left stand as they are written; no line is wider than a phone.
  await expect(table.getByRole('rowheader', { name: rtl })).toBeVisible();
  for (const width of [1280, 360, 320]) {
    await page.setViewportSize({ width, height: 740 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
  expect(await barriers(page)).toEqual([]);
  for (const media of [{ colorScheme: 'dark' as const }, { forcedColors: 'active' as const }]) {
    await page.emulateMedia(media);
    const { violations } = await new AxeBuilder({ page }).withRules(['color-contrast', 'link-in-text-block']).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });

  // Kept over a reload, and nowhere that a learner's own file would take along.
  await page.reload();
  await expect(table.getByRole('row')).toHaveCount(13);
  await expect(row(page, 'MIRA').first()).toContainText('2 times; the last: 2 more answers, 1 now right');
  // Two tabs: each takes one, and both have both.
  const other = await context.newPage();
  await other.goto(CLASS);
  const named = (name: string) => asFile(name, JSON.stringify({ ...(JSON.parse(files[11]!) as object), name }));
  await open(page, [named('Jana')]);
  await open(other, [named('Kim')]);
  for (const tab of [page, other]) {
    for (const name of ['Jana', 'Kim']) await expect(tab.getByRole('rowheader', { name })).toBeVisible();
  }
  await page.goto(PROGRESS);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save my progress' }).click();
  expect(await readFile(await (await download).path(), 'utf8')).not.toContain('Mira');

  // Cleared by its button, in both tabs.
  await page.goto(CLASS);
  await page.getByRole('button', { name: 'Clear this class …' }).click();
  await page.getByRole('button', { name: 'Clear this class', exact: true }).click();
  await expect(page.getByText('Everything about this class is cleared from this browser.')).toBeVisible();
  await expect(other.getByRole('rowheader')).toHaveCount(0);
  expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('class')))).toEqual([]);
});

test('a browser without room says so, shows what was opened, and keeps what it had', async ({ page }) => {
  await page.goto(PROGRESS);
  const [first, second] = [await handIn(page, twelve[0]!), await handIn(page, twelve[8]!)];
  await page.goto(CLASS);
  await open(page, [asFile('first', first)]);
  await expect(page.getByRole('rowheader', { name: 'Mira' })).toBeVisible();
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
  });
  await open(page, [asFile('second', second)]);
  await expect(page.getByRole('alert')).toContainText('Your browser has no room left.');
  for (const name of ['Mira', 'Fay']) await expect(page.getByRole('rowheader', { name })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('rowheader', { name: 'Mira' })).toBeVisible();
  await expect(page.getByRole('rowheader', { name: 'Fay' })).toHaveCount(0);
});

test('a lesson that was really worked through is read as its learner read it; files are dropped; a note goes back', async ({
  page,
}) => {
  await page.goto(SIZE);
  const asked = await wake(question(page, 'How wide must a pocket be between its two side seams?'));
  await answer(asked, '4 1/4');
  const read = await asked.locator('[id$="-feedback"]').innerText();
  await page.goto(PROGRESS);
  await page.getByLabel('Your name in class').fill('Lou');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a file to hand in' }).click();
  const text = await readFile(await (await saved).path(), 'utf8');

  await page.goto(CLASS);
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  const dropped = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'lou.json', { type: 'application/json' }));
    return transfer;
  }, text);
  await page.dispatchEvent('h1', 'dragover', { dataTransfer: dropped });
  await page.dispatchEvent('h1', 'drop', { dataTransfer: dropped });
  await expect(page.getByText('1 taken, 0 not.')).toBeVisible();
  await page.getByRole('rowheader', { name: 'Lou' }).getByRole('button').click();
  const said = page.getByRole('listitem').filter({ hasText: 'How wide must a pocket be' });
  // The same sentence, without what to do next.
  const sentence = read.replace(/\s*Try once more\.\s*$/, '').trim();
  expect(sentence).toContain('You left out the ease.');
  await expect(said).toContainText(sentence);

  await page
    .getByRole('textbox', { name: 'A note to Lou' })
    .fill('Look at the ease again: <b>both</b> sides.\nSee you tomorrow');
  await page.reload();
  await page.getByRole('rowheader', { name: 'Lou' }).getByRole('button').click();
  await expect(page.getByRole('textbox', { name: 'A note to Lou' })).toHaveValue(/both/);
  const noted = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the note as a file' }).click();
  const note = await readFile(await (await noted).path(), 'utf8');

  await page.goto(PROGRESS);
  const file = page.getByLabel('Open the note’s file');
  await file.setInputFiles(asFile('wrong', '{"note":2}'));
  await expect(page.getByText('That is not a note from a teacher.')).toBeVisible();
  await file.setInputFiles(asFile('note', note));
  await expect(page.locator('blockquote')).toHaveText(
    /Look at the ease again: <b>both<\/b> sides\.\s+See you tomorrow/,
  );
  await expect(page.getByText('A note is not signed')).toBeVisible();
  expect(await barriers(page)).toEqual([]);
});

test('without a camera, or where it may not be used, the page says what to do instead', async ({ page }) => {
  await page.addInitScript(() => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('no', 'NotAllowedError'));
  });
  await page.goto(CLASS);
  const button = page.getByRole('button', { name: 'Read codes by camera' });
  await button.click();
  await expect(page.getByText('The camera may not be used here.')).toBeVisible();
  await page.evaluate(() => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('no', 'NotFoundError'));
  });
  await button.click();
  await expect(page.getByText('No camera was found. Open a photo or a screenshot')).toBeVisible();
});

/** A film of one still picture, as a camera would send it: YUV4MPEG2, grey alone, 640 x 480. */
function filmOf(code: string): Buffer {
  const [width, height] = [640, 480];
  const rows = encodeQR(code, 'raw', { ecc: 'low', border: 4 });
  const scale = Math.floor(height / rows.length);
  const [left, top] = [width, height].map((side) => Math.floor((side - scale * rows.length) / 2)) as [number, number];
  const light = Buffer.alloc(width * height, 235);
  for (const [y, row] of rows.entries())
    for (const [x, dark] of row.entries()) {
      if (!dark) continue;
      for (let i = 0; i < scale; i++) {
        const from = (top + y * scale + i) * width + left + x * scale;
        light.fill(16, from, from + scale);
      }
    }
  const colour = Buffer.alloc((width * height) / 2, 128);
  const frame = Buffer.concat([Buffer.from('FRAME\n'), light, colour]);
  const frames = Array.from({ length: 10 }, () => frame);
  return Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`), ...frames]);
}

test('a code held before the camera is read, and the camera stops when asked', async ({ page, baseURL }) => {
  await page.goto(PROGRESS);
  await handIn(page, { name: 'Noor', answers: { room: noEase } });
  await page.getByRole('button', { name: 'Show a code' }).click();
  const code = await page.getByLabel('The same as text').inputValue();
  const film = test.info().outputPath('code.y4m');
  await writeFile(film, filmOf(code));
  const options = launchOptions();
  const camera = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];
  const args = [...(options.args ?? []), ...camera, `--use-file-for-fake-video-capture=${film}`];
  const browser = await chromium.launch({ ...options, args });
  try {
    const context = await browser.newContext({ baseURL: baseURL!, permissions: ['camera'] });
    const seen = await context.newPage();
    await seen.goto(CLASS);
    await seen.getByRole('button', { name: 'Read codes by camera' }).click();
    await expect(seen.getByText('Noor is read. Show the next code.')).toBeVisible({ timeout: 30_000 });
    await expect(seen.getByRole('rowheader', { name: 'Noor' })).toBeVisible();
    const isOn = () => seen.locator('video').evaluate((video) => (video as HTMLVideoElement).srcObject !== null);
    expect(await isOn()).toBe(true);
    await seen.getByRole('button', { name: 'Stop the camera' }).click();
    await expect.poll(isOn).toBe(false);
  } finally {
    await browser.close();
  }
});
