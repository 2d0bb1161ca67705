/** The pages of the site on paper: as the browser prints them, measured by poppler. */
import { globSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { poppler, renderAll, type Picture } from '../poppler.ts';

const built = fileURLToPath(new URL('../../dist', import.meta.url));
const pages = globSync('**/index.html', { cwd: built }).map((file) => `/${file.replace(/index\.html$/, '')}`);

/** Width and height in mm. A4: ISO 216. Letter: 8 1/2 × 11 in, ANSI/ASME Y14.1. */
const papers = { A4: [210, 297], Letter: [215.9, 279.4] } as const;
const DPI = 50;
const MARGIN = 12;
/** Pixels of CSS to a mm. */
const PX = 96 / 25.4;

let folder = '';
test.beforeAll(() => (folder = mkdtempSync(path.join(tmpdir(), 'printed-'))));
test.afterAll(() => rmSync(folder, { recursive: true, force: true }));

for (const address of pages) {
  test(`${address} prints on A4 and on Letter`, async ({ page }) => {
    await page.goto(address);
    await page.emulateMedia({ media: 'print' });
    for (const [format, [width, height]] of Object.entries(papers)) {
      // Between the margins nothing is wider than the paper, so that nothing is cut off.
      const across = Math.floor((width - 2 * MARGIN) * PX);
      await page.setViewportSize({ width: across, height: 900 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth), format).toBeLessThanOrEqual(across);

      const file = path.join(folder, 'page.pdf');
      writeFileSync(file, await page.pdf({ format, printBackground: true }));
      const count = poppler('pdftotext', file, '-').toString().split('\f').length - 1;
      expect(count).toBeGreaterThan(0);
      const printed = renderAll(file, DPI);
      expect(printed).toHaveLength(count);
      for (const [i, picture] of printed.entries()) {
        const n = i + 1;
        expect(Math.abs(picture.width - (width / 25.4) * DPI)).toBeLessThan(1.5);
        expect(Math.abs(picture.height - (height / 25.4) * DPI)).toBeLessThan(1.5);
        const { white, ink } = read(picture);
        expect(white, `${format}, page ${n}: white round what is printed, in mm`).toBeGreaterThan(MARGIN - 1);
        // Black on white: no page of the screen's dark look, which would drink the ink.
        expect(ink, `${format}, page ${n}: share of ink`).toBeLessThan(0.25);
        expect(ink, `${format}, page ${n} is not empty`).toBeGreaterThan(0);
      }
    }
  });
}

/** The white round the ink in mm, and the share of the paper that is inked. */
function read({ width, height, ink }: Picture): { white: number; ink: number } {
  let [white, sum] = [Infinity, 0];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const here = ink(x, y);
      sum += here;
      if (here > 40) white = Math.min(white, x, y, width - 1 - x, height - 1 - y);
    }
  }
  return { white: (white / DPI) * 25.4, ink: sum / 255 / (width * height) };
}
