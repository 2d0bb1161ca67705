/** Arrows run one way: what a folder may import is a rule of the house, and not a habit. */
import { globSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Inside the core each folder sees those before it. Folders in one row do not see each other. */
const rows = [
  ['measure'],
  ['formula'],
  ['geometry'],
  ['cloth'],
  ['project'],
  ['layout', 'questions'],
  ['kit', 'drawing'],
  ['handout'],
];

/** The same among the folders of the site; the integration stands on top of them. */
const site = [['content'], ['check'], ['pages'], ['print'], ['live'], ['integration.ts']];

/** Where a command leaves what it has worked out for the pages. */
const AHEAD = 'components/words/ahead.ts';

/** Outside the core: a folder, and what of the house it may import besides itself. */
const sees: [folder: string, others: string[]][] = [
  ['src/core', []],
  ['src/site', ['src/core', 'components/words/words.ts', 'components/words/caution/cautions.ts', AHEAD]],
  ['src/author', ['src/core', 'src/site', 'src/layouts', 'components']],
  ['components', ['src/core']],
];

type Import = { from: string; to: string };

function importsBelow(folder: string): Import[] {
  return globSync('**/*.{ts,svelte,astro}', { cwd: path.join(root, folder) }).flatMap((file) => {
    const from = path.posix.join(folder, file.split(path.sep).join('/'));
    const text = readFileSync(path.join(root, from), 'utf8');
    const found = text.matchAll(/(?:from|import)\s*\(?\s*['"](\.[^'"]+)['"]/g);
    return [...found].map(([, to = '']) => ({ from, to: path.posix.join(path.posix.dirname(from), to) }));
  });
}

const strange = (imports: Import[]) => imports.map(({ from, to }) => `${from} -> ${to}`);

test.each([
  ['src/core', rows],
  ['src/site', site],
])('inside %s, each folder imports only what stands before it', (folder, rows) => {
  const rank = new Map(rows.flatMap((row, i) => row.map((name) => [name, i] as const)));
  const parts = (file: string) => file.split('/')[2] ?? '';
  const imports = importsBelow(folder).filter(
    ({ from, to }) => from !== 'src/core/index.ts' && to.startsWith(`${folder}/`),
  );
  expect(imports.length).toBeGreaterThan(50);
  const wrong = imports.filter(({ from, to }) => {
    const [own, other] = [parts(from), parts(to)];
    return own !== other && !((rank.get(other) ?? Infinity) < (rank.get(own) ?? -1));
  });
  expect(strange(wrong)).toEqual([]);
});

test.each(sees)('%s imports only what it may', (folder, others) => {
  const imports = importsBelow(folder);
  expect(imports.length).toBeGreaterThan(5);
  const allowed = [folder, ...others];
  const wrong = imports.filter(({ to }) => !allowed.some((place) => to === place || to.startsWith(`${place}/`)));
  expect(strange(wrong)).toEqual([]);
});

test('zod stays in schemas, so that no browser loads it', () => {
  const files = globSync('src/core/**/*.ts', { cwd: root }).filter((file) =>
    /from ['"]zod['"]/.test(readFileSync(path.join(root, file), 'utf8')),
  );
  expect(files.map((file) => path.posix.basename(file.split(path.sep).join('/')))).toEqual(['schema.ts']);
});
