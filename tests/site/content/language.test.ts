import { expect, test } from 'vitest';
import { languageTag, SiteFile } from '../../../src/site/content/schemas.ts';

test.each([
  [{}, 'en-US'],
  [{ spelling: 'british' }, 'en-GB'],
  [{ language: 'en', spelling: 'american' }, 'en-US'],
  [{ language: 'en-AU', spelling: 'british' }, 'en-AU'],
  [{ language: 'en-GB' }, 'en-GB'],
])('%j is written in %s', (said, tag) => {
  expect(languageTag(SiteFile.parse({ name: 'The Long Table', ...said }))).toBe(tag);
});

test.each(['de', 'fr-CA', 'english', 'EN'])('%s is no language that the kit has its sentences in', (language) => {
  expect(SiteFile.safeParse({ name: 'The Long Table', language }).success).toBe(false);
});
