/**
 * The family for page and print, cut from the full TTF files that come with the package: the web's subsets lack the
 * eighths, and a browser would quietly set them in another font. The same characters serve the page (WOFF2) and
 * documents (TTF).
 */
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Fonts } from '../../core/handout/pdf.ts';

const range = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).join('');

/** Latin with its accents, typographic marks, fractions, primes, arrows and the signs that sums need. */
export const CHARACTERS =
  range(0x20, 0x7e) +
  range(0xa0, 0x17f) +
  '‐‑–—‘’‚“”„†•…′″⁄ \u2009\u202f' +
  range(0x2150, 0x215e) +
  '←↑→↓↔↕−×÷≈≠≤≥√∞✓²³';

/** The weights the look uses. */
export const WEIGHTS = [
  { weight: 400, file: '400Regular/Inter_400Regular.ttf' },
  { weight: 600, file: '600SemiBold/Inter_600SemiBold.ttf' },
] as const;

/**
 * As pages take them, and as documents do. Documents are set without contextual alternates, which cost half the time and
 * change no letter here.
 */
const formats = {
  woff2: { targetFormat: 'woff2' },
  ttf: { targetFormat: 'truetype', keepFeatures: ['ccmp', 'kern', 'mark', 'mkmk', 'tnum', 'frac'] },
} as const;

/**
 * Cuts the fonts into `folder` unless they are there already; the name tells which characters and features a file
 * holds.
 * @returns the path of a file for each weight
 */
export async function cutFonts(
  folder: string,
  ending: keyof typeof formats,
): Promise<{ weight: number; file: string }[]> {
  await mkdir(folder, { recursive: true });
  const cut = createHash('sha256')
    .update(CHARACTERS + JSON.stringify(formats[ending]))
    .digest('hex')
    .slice(0, 8);
  const home = path.dirname(fileURLToPath(import.meta.resolve('@expo-google-fonts/inter/package.json')));
  return Promise.all(
    WEIGHTS.map(async ({ weight, file }) => {
      const out = path.join(folder, `text-${weight}-${cut}.${ending}`);
      if (!existsSync(out)) {
        const { default: subsetFont } = await import('subset-font');
        const full = await readFile(path.join(home, file));
        await writeFile(out, await subsetFont(full, CHARACTERS, formats[ending]));
      }
      return { weight, file: out };
    }),
  );
}

/** The same family, read for documents. */
export async function printFonts(folder: string): Promise<Fonts> {
  const cut = await cutFonts(folder, 'ttf');
  const [regular, strong] = await Promise.all(cut.map(({ file }) => readFile(file)));
  return { regular: regular!, strong: strong! };
}
