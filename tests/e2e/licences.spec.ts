/** What others made and the built site ships has its notice there. */
import { globSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';

const root = fileURLToPath(new URL('../..', import.meta.url));
const dist = path.join(root, 'dist');
const told = () => readFileSync(path.join(dist, 'licences.txt'), 'utf8');

/** What programs of pages and of the worker import by name, read off their sources; types alone are not shipped. */
function imported(): Set<string> {
  const files = globSync(['components/**/*.{ts,svelte}', 'src/core/**/*.ts'], { cwd: root });
  const names = files.flatMap((file) => {
    const text = readFileSync(path.join(root, file), 'utf8').replace(/^import type [^;]*;/gm, '');
    return [...text.matchAll(/(?:from |import\(|import )'([@\w][^']*)'/g)].map(([, name = '']) => name);
  });
  const packages = names
    .filter((name) => !/^(node|astro|virtual):?/.test(name))
    .map((name) =>
      name
        .split('/')
        .slice(0, name.startsWith('@') ? 2 : 1)
        .join('/'),
    );
  return new Set(packages);
}

/** Imported only where pages are built. */
const NOT_SHIPPED = ['double-metaphone', 'leven', 'satteri', 'github-slugger', 'vitest', 'yaml'];

test('every package that a script of the site imports is named, with its licence', () => {
  const notices = told();
  const packages = [...imported()].filter((name) => !NOT_SHIPPED.includes(name));
  expect(packages).toEqual(expect.arrayContaining(['svelte', 'pdfkit', 'fontkit', 'clipper2-ts']));
  for (const name of packages) {
    const notice = notices.split(/^={72}$/m).find((one) => one.startsWith(`\n${name} `));
    expect(notice, name).toMatch(/^\n\S+ \d+\.\d+\.\d+\S* \(.+\)\n\n\S/);
  }
});

test('so are the fonts, with the text that their licence asks to go with them', () => {
  const fonts = globSync('**/*.{woff2,woff,ttf}', { cwd: dist });
  const families = new Set(fonts.map((file) => (/KaTeX/.test(file) ? 'katex' : '@expo-google-fonts/inter')));
  expect([...families].toSorted()).toEqual(['@expo-google-fonts/inter', 'katex']);
  for (const family of families) expect(told()).toContain(`\n${family} `);
  // Section 2 of the SIL Open Font License 1.1: each copy contains the copyright notice and this licence.
  expect(told()).toContain('The Inter Project Authors');
  expect(told()).toContain('SIL OPEN FONT LICENSE Version 1.1');
});

test('every page leads to the notices', async ({ page }) => {
  await page.goto('/');
  const link = page.getByRole('contentinfo').getByRole('link', { name: 'Licences' });
  const answer = await page.request.get((await link.getAttribute('href'))!);
  expect(answer.headers()['content-type']).toContain('text/plain');
  expect(await answer.text()).toBe(told());
});
