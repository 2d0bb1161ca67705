/** What a reader of PDF is told of a document beside its pages, read by pdf.js; and its lettering, shaped by HarfBuzz. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Blob as FontFile, Buffer as Line, Face, Feature, Font, shape } from 'harfbuzzjs';
import { templates } from '../../../src/core/index.ts';
import { demoHandouts, demoPattern, fonts, printed } from './documents.ts';
import { readPdf } from './read-pdf.ts';

let folder = '';
beforeAll(() => (folder = mkdtempSync(path.join(tmpdir(), 'pdf-'))));
afterAll(() => rmSync(folder, { recursive: true }));

it('every document carries its title, its language, its bookmarks, and that it is printed at actual size', async () => {
  for (const handout of demoHandouts('A4', 'metric')) {
    const { title, language, preferences, bookmarks } = await readPdf(await printed(handout, folder));
    expect(title).toBe(handout.title);
    // The language with the spelling that content/site.yaml asks for.
    expect(language).toBe('en-GB');
    // ISO 32000-1:2008, table 150.
    expect(preferences).toEqual(
      new Map<string, unknown>([
        ['DisplayDocTitle', true],
        ['PrintScaling', 'None'],
      ]),
    );
    expect(bookmarks).toEqual(handout.pages.flatMap(({ bookmark }) => bookmark ?? []));
    expect(bookmarks.length).toBeGreaterThan(0);
  }
}, 120_000);

it('templates have a bookmark for each sheet, with its letter and what is on it', async () => {
  const handout = templates(demoPattern('inch'), { paper: 'Letter', language: 'en-GB' });
  const { bookmarks, language } = await readPdf(await printed(handout, folder));
  expect(language).toBe('en-GB');
  expect(bookmarks).toHaveLength(handout.pages.length);
  expect(bookmarks[0]).toBe('Templates at true scale');
  expect(bookmarks).toContainEqual(expect.stringMatching(/^Sheet A1 of Pocket strip: cut 1 of /));
});

it('a line is as long as its words shaped one by one: nothing is kerned over a blank', () => {
  const texts = new Set(
    demoHandouts('A4', 'inch').flatMap(({ pages }) =>
      pages.flatMap(({ scene }) => scene.shapes.flatMap((one) => (one.kind === 'text' ? [one.text] : []))),
    ),
  );
  expect(texts.size).toBeGreaterThan(500);
  for (const bytes of [fonts.regular, fonts.strong]) {
    const font = new Font(new Face(new FontFile(new Uint8Array(bytes).buffer)));
    const width = (text: string): number => {
      const line = new Line();
      line.addText(text);
      line.guessSegmentProperties();
      shape(font, line, [new Feature('tnum', 1), new Feature('calt', 0)]);
      return line.getGlyphPositions().reduce((sum, { xAdvance }) => sum + xAdvance, 0);
    };
    for (const text of texts) {
      const words = text.split(/(?<= )/u);
      expect(
        words.reduce((sum, word) => sum + width(word), 0),
        text,
      ).toBe(width(text));
    }
  }
}, 120_000);
