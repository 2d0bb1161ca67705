/** What lessons ship: no reader waits for more scripts than a page may have. Read off the built files, without a browser. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';
import { parseSync } from 'vite';
import type { Field } from '../../src/core/steps/fields.ts';
import { verbs } from '../../src/core/steps/verbs/index.ts';
import { LINEN, MAKE, PLEAT, POUCH, SIZE } from './lesson.ts';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));
/** The most a lesson may ship, gzip; DEVELOPERS.md says so, too. */
const MOST = 96_000;
/** For a page without sizes: it needs nothing of the core. */
const MOST_OF_PLAIN = 40_000;
/** What only the reference says of a verb, and what only a check of files from elsewhere needs. */
const unwanted = [
  'ZodError',
  ...verbs
    .flatMap(({ fields }) => Object.values<Field>(fields).map(({ about }) => about))
    .filter((text) => text.length > 30),
];
const read = (address: string) => readFileSync(path.join(dist, address), 'utf8');

/** The scripts that a module of the site imports before it runs, by their addresses. */
function importsOf(address: string): string[] {
  const { body } = parseSync(address, read(address)).program;
  return body.flatMap((statement) =>
    'source' in statement && statement.source
      ? [new URL(statement.source.value, `http://site${address}`).pathname]
      : [],
  );
}

/** What a page fetches when it is read to its end and nothing on it is used. */
function shipped(html: string): { scripts: Set<string>; inline: string[] } {
  const attribute = (tag: string, name: string) => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1];
  const inline: string[] = [];
  const waiting: string[] = [];
  for (const [, tag = '', text = ''] of html.matchAll(/<script([^>]*)>([\s\S]*?)<\/script>/g)) {
    const src = attribute(tag, 'src');
    if (src) waiting.push(src);
    else if (!tag.includes('application/json')) inline.push(text);
  }
  for (const [, tag = ''] of html.matchAll(/<astro-island([^>]*)>/g)) {
    // An island that sleeps until it is used costs its users alone.
    const sleeps = attribute(tag, 'client') === 'use' && !attribute(tag, 'opts')?.includes('&quot;soon&quot;');
    if (!sleeps) waiting.push(attribute(tag, 'component-url')!, attribute(tag, 'renderer-url')!);
  }
  const scripts = new Set<string>();
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (scripts.has(next)) continue;
    scripts.add(next);
    waiting.push(...importsOf(next));
  }
  return { scripts, inline };
}

function weigh(page: string): { scripts: string[]; sum: number } {
  const { scripts, inline } = shipped(read(`${page}index.html`));
  const texts = [...scripts].map(read);
  const sum = [...texts, ...inline].map((text) => gzipSync(text).length).reduce((a, b) => a + b, 0);
  console.log(`${page} ${(sum / 1000).toFixed(1)} kB in ${scripts.size} files`);
  return { scripts: texts, sum };
}

for (const lesson of [SIZE, PLEAT, MAKE, POUCH, LINEN]) {
  test(`${lesson} ships at most ${MOST / 1000} kB of JavaScript`, () => {
    const { scripts, sum } = weigh(lesson);
    // Fewer would mean that this test no longer finds them.
    expect(scripts.length).toBeGreaterThan(5);
    expect(sum).toBeGreaterThan(40_000);
    expect(sum).toBeLessThanOrEqual(MOST);
    expect(unwanted.length).toBeGreaterThan(30);
    expect(unwanted.filter((text) => scripts.some((script) => script.includes(text)))).toEqual([]);
  });
}

for (const page of ['/', '/courses/pocket-folio/progress/', '/courses/pocket-folio/class/']) {
  test(`${page} ships at most ${MOST_OF_PLAIN / 1000} kB of JavaScript`, () => {
    const { sum } = weigh(page);
    expect(sum).toBeGreaterThan(10_000);
    expect(sum).toBeLessThanOrEqual(MOST_OF_PLAIN);
  });
}

test('nothing of recordings ships to a lesson that has none', () => {
  /** Files named after the word, its player's own words in any script, and its elements. */
  const ofRecordings = (page: string): string[] => {
    const html = read(`${page}index.html`);
    return [
      ...[...html.matchAll(/="([^"]*\/[Rr]ecording[.-][^"]*)"/g)].map(([, address]) => address!),
      ...[...shipped(html).scripts].filter((address) => read(address).includes('Step back')),
      ...(html.match(/class="[^"]*\brecording\b[^"]*"|\/recordings\//g) ?? []),
    ];
  };
  // Here they are: the look finds them.
  expect(ofRecordings(MAKE).length).toBeGreaterThan(2);
  for (const page of [SIZE, PLEAT, POUCH, LINEN]) expect(ofRecordings(page), page).toEqual([]);
});
