/**
 * A photograph as it comes from a camera, on the built site and while one writes: held upright, with the place where it
 * was taken, and a blank and marks in its name. The test makes it: left half red, right half blue as the camera stores
 * it, so that red lies above blue once it is turned by a quarter.
 */
import { cp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Locator, type Page } from '@playwright/test';
import sharp from 'sharp';
import { copyKit } from '../copy-kit.ts';
import { openBuilt } from './built-site.ts';
import { chooseEdition } from './lesson.ts';
import { start } from './npm-start.ts';

const sound = fileURLToPath(new URL('../fixtures/sound/content', import.meta.url));
const LESSON = 'content/courses/pleats/01-size.mdx';
const NAME = 'Ärmel neu.jpg';

/** 2000 by 1200 as stored; 1200 by 2000 as it was seen. */
async function photograph(): Promise<Buffer> {
  const halves = `<svg xmlns="http://www.w3.org/2000/svg" width="2000" height="1200"><rect width="1000" height="1200" fill="#c02020"/><rect x="1000" width="1000" height="1200" fill="#2020c0"/></svg>`;
  const place = {
    GPSLatitudeRef: 'N',
    GPSLatitude: '51/1 30/1 0/1',
    GPSLongitudeRef: 'W',
    GPSLongitude: '0/1 7/1 0/1',
  };
  const photo = await sharp(Buffer.from(halves))
    .jpeg()
    .withMetadata({ orientation: 6, exif: { IFD0: { Model: 'Camera of nobody' }, IFD3: place } })
    .toBuffer();
  const { orientation, exif } = await sharp(photo).metadata();
  expect(orientation).toBe(6);
  // The tag that leads to the place, 0x8825 (Exif 2.3), and the name of the camera are there to be taken out.
  expect(exif!.includes(Buffer.from([0x25, 0x88])) || exif!.includes(Buffer.from([0x88, 0x25]))).toBe(true);
  expect(exif!.toString('latin1')).toContain('Camera of nobody');
  return photo;
}

const WRITTEN = `
## Pin it

<Picture of="${NAME}" shows="A sleeve, pinned" marks={{"25 30": "a seam of [seam]", "70 80": "the hem"}}>

It is [panel width] wide.

</Picture>

![A strip of cloth](strip.png)

<PictureRow>

<Picture of="strip.png" shows="The strip, flat">

Before

</Picture>

<Picture of="${NAME}" shows="The sleeve, sewn">

After

</Picture>

</PictureRow>

<Download of="Plan & Maß.txt" says="Where the tables stand" />
`;

/** 2,400 bytes. */
const PLAN = 'Two tables.\n'.repeat(200);

/** What is painted at a place of a picture, in hundredths: [red, green, blue]. */
async function colourAt(photo: Locator, left: number, top: number): Promise<number[]> {
  const { data, info } = await sharp(await photo.screenshot())
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const at = (Math.round((top / 100) * info.height) * info.width + Math.round((left / 100) * info.width)) * 3;
  return [...data.subarray(at, at + 3)];
}
const isRed = ([r = 0, , b = 0]: number[]) => r > 150 && b < 90;
const isBlue = ([r = 0, , b = 0]: number[]) => b > 150 && r < 90;

const figure = (page: Page) => page.getByRole('figure').first();
const photoOf = (part: Locator | Page, name: string) => part.getByRole('button', { name: `${name} Enlarge` });
const shown = (picture: Locator) =>
  expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.complete && img.naturalWidth > 0)).toBe(true);

test.describe('photographs', { tag: '@phone' }, () => {
  test.describe.configure({ mode: 'default', timeout: 400_000 });
  let kit: Awaited<ReturnType<typeof copyKit>>;
  let site: Awaited<ReturnType<typeof openBuilt>> | undefined;

  test.beforeAll(async () => {
    kit = await copyKit();
    const content = path.join(kit.folder, 'content');
    await rm(content, { recursive: true });
    await cp(sound, content, { recursive: true });
    const lesson = path.join(kit.folder, LESSON);
    await writeFile(lesson, (await readFile(lesson, 'utf8')) + WRITTEN);
    await writeFile(path.join(content, 'courses/pleats', NAME), await photograph());
    const strip = sharp({ create: { width: 900, height: 300, channels: 3, background: '#7d9a8c' } });
    await strip.png().toFile(path.join(content, 'courses/pleats/strip.png'));
    await writeFile(path.join(content, 'courses/pleats/Plan & Maß.txt'), PLAN);
    await writeFile(path.join(content, 'courses/pleats/for-me.txt'), 'Nobody reads this.');
    site = await openBuilt(kit.folder);
  });
  test.afterAll(async () => {
    site?.close();
    await kit?.remove();
  });

  test('it is turned as the camera says, and never wider than the page', async ({ page }) => {
    await page.goto(`${site?.address}/courses/pleats/size/`);
    const photo = photoOf(figure(page), 'A sleeve, pinned').getByRole('img');
    await photo.scrollIntoViewIfNeeded();
    await shown(photo);
    const { width, height } = (await photo.boundingBox())!;
    expect(height / width).toBeCloseTo(2000 / 1200, 1);
    expect(isRed(await colourAt(photo, 75, 10))).toBe(true);
    expect(isBlue(await colourAt(photo, 25, 90))).toBe(true);
    // A screen takes what it needs, and no more.
    const taken = await photo.evaluate((img: HTMLImageElement) => ({ from: img.currentSrc, wide: img.naturalWidth }));
    expect(taken.from).toMatch(/\.webp$/);
    expect(taken.wide).toBeLessThanOrEqual(1200);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    const room = page.viewportSize()!.width;
    for (const one of await page.getByRole('main').getByRole('img').all())
      expect(((await one.boundingBox())?.width ?? 0) <= room).toBe(true);
  });

  test('its caption and marks follow the project, and a number stands where the mark is', async ({ page }) => {
    await page.goto(`${site?.address}/courses/pleats/size/`);
    await chooseEdition(page, 'metric');
    const own = figure(page);
    await expect(own.getByRole('listitem')).toHaveText([/a seam of 6\s*mm/, /the hem/]);
    await expect(own).toContainText(/It is 123\s*mm wide/);
    const frame = (await photoOf(own, 'A sleeve, pinned').boundingBox())!;
    const mark = (await own.getByText('2', { exact: true }).boundingBox())!;
    expect((mark.x + mark.width / 2 - frame.x) / frame.width).toBeCloseTo(0.7, 1);
    expect((mark.y + mark.height / 2 - frame.y) / frame.height).toBeCloseTo(0.8, 1);
  });

  test('it is enlarged by keyboard and by a press, and the page is fit for everyone', async ({ page }) => {
    await page.goto(`${site?.address}/courses/pleats/size/`);
    const photo = photoOf(figure(page), 'A sleeve, pinned');
    const large = page.getByRole('dialog', { name: 'A sleeve, pinned' });
    await expect(large).toBeHidden();
    await photo.focus();
    await page.keyboard.press('Enter');
    await expect(large).toBeVisible();
    await expect(large.getByRole('button', { name: 'Close' })).toBeFocused();
    await shown(large.getByRole('img'));
    const [box, room] = [(await large.boundingBox())!, page.viewportSize()!];
    expect(box.width).toBeLessThanOrEqual(room.width);
    expect(box.height).toBeLessThanOrEqual(room.height);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(large).toBeHidden();
    await expect(photo).toBeFocused();
    await photo.click();
    await expect(large).toBeVisible();
    await large.getByRole('button', { name: 'Close' }).click();
    await expect(large).toBeHidden();
    // The picture of Markdown is one like any other.
    await photoOf(page, 'A strip of cloth').click();
    await expect(page.getByRole('dialog', { name: 'A strip of cloth' })).toBeVisible();
  });

  test('before and after stand beside each other where there is room', async ({ page }) => {
    await page.goto(`${site?.address}/courses/pleats/size/`);
    const before = (await page.getByRole('figure').filter({ hasText: 'Before' }).boundingBox())!;
    const after = (await page.getByRole('figure').filter({ hasText: 'After' }).boundingBox())!;
    const isNarrow = page.viewportSize()!.width < 500;
    expect(isNarrow ? after.y > before.y + before.height - 1 : after.x > before.x + before.width - 1).toBe(true);
  });

  test('on paper it is grey', async ({ page }) => {
    await page.goto(`${site?.address}/courses/pleats/size/`);
    const photo = photoOf(figure(page), 'A sleeve, pinned').getByRole('img');
    await photo.scrollIntoViewIfNeeded();
    await shown(photo);
    await page.emulateMedia({ media: 'print' });
    const [red = 0, green = 0, blue = 0] = await colourAt(photo, 75, 10);
    expect(Math.max(red, green, blue) - Math.min(red, green, blue)).toBeLessThan(8);
  });

  test('nothing that is published knows the place or the camera, and a page without pictures asks for none of it', async ({
    page,
  }) => {
    const dist = path.join(kit.folder, 'dist');
    const files = await readdir(dist, { recursive: true, withFileTypes: true });
    const pictures = files.filter(({ name }) => /\.(?:jpe?g|png|webp|avif|gif)$/iu.test(name));
    expect(pictures.length).toBeGreaterThan(5);
    for (const { name, parentPath } of pictures) {
      const bytes = await readFile(path.join(parentPath, name));
      const { exif, orientation, width } = await sharp(bytes).metadata();
      expect({ exif, orientation }, name).toEqual({ exif: undefined, orientation: undefined });
      expect(bytes.includes('Camera of nobody'), name).toBe(false);
      expect(width, name).toBeLessThanOrEqual(2400);
    }
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`${site?.address}/courses/pleats/fold/`);
    await page.waitForLoadState('networkidle');
    expect(asked.filter((one) => /photo|webp|jpe?g/iu.test(one))).toEqual([]);
  });

  test('a file is taken along, and only one that a lesson names', async ({ page }) => {
    await page.goto(`${site?.address}/courses/pleats/size/`);
    const link = page.getByRole('link', { name: 'Where the tables stand' });
    await expect(page.getByText('Where the tables stand')).toBeVisible();
    await expect(page.getByRole('main')).toContainText(/Where the tables stand\s*\(text, 2 kB\)/);
    const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
    expect(download.suggestedFilename()).toBe('Plan & Maß.txt');
    expect(await readFile(await download.path(), 'utf8')).toBe(PLAN);
    expect(await readdir(path.join(kit.folder, 'dist/files/pleats'))).toEqual(['Plan & Maß.txt']);
  });

  test('it stands there while one writes, too', async ({ page }) => {
    const started = await start(kit.folder);
    try {
      await page.goto(`${started.address}/courses/pleats/size/`);
      const photo = photoOf(figure(page), 'A sleeve, pinned').getByRole('img');
      await photo.scrollIntoViewIfNeeded();
      await shown(photo);
      expect(isRed(await colourAt(photo, 75, 10))).toBe(true);
      const file = (name: string) => page.request.get(`${started.address}/files/pleats/${encodeURIComponent(name)}`);
      expect(await (await file('Plan & Maß.txt')).text()).toBe(PLAN);
      for (const other of ['for-me.txt', 'course.yaml', '../../site.yaml'])
        expect((await file(other)).status()).toBe(404);
    } finally {
      await started.stop();
    }
  });
});
