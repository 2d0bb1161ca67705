/** What a reader of PDF is told of a document, beside its pages: read by pdf.js. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { templates } from '../../../src/core/index.ts';
import { demoHandouts, demoPattern, printed } from './documents.ts';
import { readPdf } from './read-pdf.ts';

let folder = '';
beforeAll(() => (folder = mkdtempSync(path.join(tmpdir(), 'pdf-'))));
afterAll(() => rmSync(folder, { recursive: true }));

it('every document carries its title, its language and its bookmarks', async () => {
  for (const handout of demoHandouts('A4', 'metric')) {
    const { title, language, bookmarks } = await readPdf(await printed(handout, folder));
    expect(title).toBe(handout.title);
    expect(language).toBe('en');
    expect(bookmarks).toEqual(handout.pages.flatMap(({ bookmark }) => bookmark ?? []));
    expect(bookmarks.length).toBeGreaterThan(0);
  }
});

it('templates have a bookmark for each sheet, with its letter and what is on it', async () => {
  const handout = templates(demoPattern('inch'), { paper: 'Letter', language: 'en-GB' });
  const { bookmarks, language } = await readPdf(await printed(handout, folder));
  expect(language).toBe('en-GB');
  expect(bookmarks).toHaveLength(handout.pages.length);
  expect(bookmarks[0]).toBe('Templates at true scale');
  expect(bookmarks).toContainEqual(expect.stringMatching(/^Sheet A1 of Pocket strip: cut 1 of /));
});
