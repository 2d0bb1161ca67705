/** Terms of the glossary in a lesson, as a build makes buttons of them. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { mdxToJs } from 'satteri';
import { expect, test } from 'vitest';
import { features } from '../../../src/site/content/lesson-text.ts';
import { termsPlugin } from '../../../src/site/content/terms-plugin.ts';

const root = mkdtempSync(path.join(tmpdir(), 'terms-'));
mkdirSync(path.join(root, 'content'));
writeFileSync(path.join(root, 'content', 'glossary.yaml'), 'pleat: A fold.\nraw edge: The cut edge.\n');

/** What is left of a lesson as JavaScript. */
async function built(text: string, file = 'content/courses/one/01-first.mdx'): Promise<string> {
  const fileURL = pathToFileURL(path.join(root, file));
  return (await mdxToJs(text, { features, mdastPlugins: [termsPlugin(root)], fileURL })).code;
}
const terms = (code: string) => [...code.matchAll(/popovertarget: "([^"]*)"/gu)].map(([, id]) => id);

test('the first use in each section opens the meaning, within a word of the lesson, too', async () => {
  const code = await built('A pleat, two pleats.\n\n## Next\n\nA **pleat**.\n\n<Tip>\n\nThe raw edge.\n\n</Tip>');
  expect(terms(code)).toEqual(['term-pleat', 'term-pleat', 'term-raw-edge']);
});

test('headings, links, code and sums stay plain, and so does what is no lesson', async () => {
  expect(terms(await built('## A pleat\n\n[a pleat](/x/) and `pleat` and $$pleat$$'))).toEqual([]);
  expect(terms(await built('A pleat.', 'src/pages/authoring/first.mdx'))).toEqual([]);
});
