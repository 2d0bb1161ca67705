/**
 * The widths that drawings are laid out with, held against the font itself: Inter's own files, shaped by HarfBuzz with
 * the features that the page switches on.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { Blob as FontFile, Buffer as Line, Face, Feature, Font, shape } from 'harfbuzzjs';
import { formatLength, letteringBox, letteringWidth } from '../../../src/core/index.ts';
import { wrap } from '../../../src/core/drawing/lettering.ts';
import { runs } from '../../random.ts';
import { anyEdition, anyGrid } from './pieces.ts';

const find = createRequire(import.meta.url).resolve;
const fonts = ['400Regular/Inter_400Regular.ttf', '600SemiBold/Inter_600SemiBold.ttf'].map((file) => {
  const bytes = new Uint8Array(readFileSync(find(`@expo-google-fonts/inter/${file}`)));
  return new Font(new Face(new FontFile(bytes.buffer)));
});
/** Units of an em in Inter's files. */
const EM = 2048;

/** How wide a font sets a text, in shares of the type size. */
function shaped(font: Font, text: string): number {
  const line = new Line();
  line.addText(text);
  line.guessSegmentProperties();
  shape(font, line, [new Feature('tnum', 1)]);
  return line.getGlyphPositions().reduce((sum, { xAdvance }) => sum + xAdvance, 0) / EM;
}

const anyMeasure = fc
  .tuple(fc.double({ min: 0, max: 4000, noNaN: true }), anyEdition, anyGrid)
  .map(([mm, edition, grid]) => formatLength(mm, edition, { grid, style: 'set' }));
const anyWords = fc.stringMatching(/^[A-Za-zÀ-ÖØ-öø-ÿ0-9 .,:;×()'’-]{1,40}$/);

describe('the width of lettering', () => {
  it('is never less than the font takes, in either weight', () => {
    fc.assert(
      fc.property(fc.oneof(anyMeasure, anyWords), (text) => {
        for (const font of fonts) {
          // Kerning may add a hair to some pairs.
          expect(letteringWidth(text, 1)).toBeGreaterThanOrEqual(shaped(font, text) - 0.02);
        }
      }),
      runs(2000),
    );
  });

  it('is not much more either: measures within an eighth', () => {
    fc.assert(
      fc.property(anyMeasure, (text) => {
        expect(letteringWidth(text, 1)).toBeLessThanOrEqual(1.125 * shaped(fonts[0]!, text));
      }),
      runs(1000),
    );
  });

  it('knows every fraction that the inch edition writes', () => {
    for (let n = 1; n < 32; n++) {
      const text = formatLength((25.4 * n) / 32, 'inch', { grid: { inch: 32, metric: 1 }, style: 'set' });
      for (const font of fonts) expect(letteringWidth(text, 1)).toBeGreaterThanOrEqual(shaped(font, text) - 0.001);
    }
  });

  it('fills a box from its anchor', () => {
    const text = { kind: 'text', name: 'a', text: '114', x: 50, y: 20, size: 4 } as const;
    const width = letteringWidth('114', 4);
    expect(letteringBox({ ...text, anchor: 'start' }).x).toBe(50);
    expect(letteringBox({ ...text, anchor: 'middle' }).x).toBeCloseTo(50 - width / 2, 9);
    expect(letteringBox({ ...text, anchor: 'end' }).x).toBeCloseTo(50 - width, 9);
  });
});

describe('breaking lines', () => {
  it('keeps every word and never passes the width', () => {
    fc.assert(
      fc.property(anyWords, fc.double({ min: 10, max: 60, noNaN: true }), (text, width) => {
        const lines = wrap(text, 3, width);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
        for (const line of lines) expect(letteringWidth(line, 3)).toBeLessThanOrEqual(width);
      }),
      runs(500),
    );
  });
});
