import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { certainFixes, check, lessonLengths, putRight, takeBack } from '../../src/author/check.ts';
import { contentCheck } from '../../src/site/integration.ts';
import { contentFolder, exchanged } from '../site/content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const SIZE = 'content/courses/pleats/01-size.mdx';
const kit = fileURLToPath(new URL('../..', import.meta.url));

test('a folder without a mistake ends with 0', () => {
  expect(check(contentFolder())).toEqual({ problems: [], text: 'No mistakes found.', code: 0 });
});

test('mistakes are grouped by file and counted, and end with 1', () => {
  const root = contentFolder({
    ...exchanged(PROJECT, '2 * ease + 2 * seam', '2 * eas + 2 * sem'),
    ...exchanged(SIZE, '<YourSize />', '![](fold.png)'),
  });
  const { text, code } = check(root);
  expect(code).toBe(1);
  expect(text).toBe(`content/courses/pleats/01-size.mdx
  10:1  mistake  There is no picture “fold.png” beside this lesson.
  10:1  warning  This picture has no words for those who cannot see it.
                 Write ![what it shows](…).

content/projects/folio/project.yaml
  7:26  mistake  There is no measure called “eas”. Do you mean “ease”?

2 mistakes and 1 warning in 2 files.`);
});

test('warnings alone end with 0', () => {
  const { text, code } = check(contentFolder({ 'content/notes.md': 'Buy thread.\n' }));
  expect(text).toBe('content/notes.md\n  1:1  warning  Nothing reads this file.\n\n1 warning in 1 file.');
  expect(code).toBe(0);
});

test('a terminal gets colours', () => {
  expect(check(contentFolder({ [PROJECT]: '' }), { colour: true }).text).toContain('\u001b[31mmistake\u001b[39m');
});

test('--fix puts in what is certain, and leaves the rest to the author', () => {
  const prose =
    'Cut the panel 5 in wide, with a seam of 1/4 in (6 mm). Keep 1/4 in free. Buy 44 in, or a panel of 5 1/8 in.';
  const root = contentFolder(exchanged(SIZE, '<YourSize />', prose));
  expect([...putRight(root).done]).toEqual([[SIZE, 2]]);
  expect(readFileSync(path.join(root, SIZE), 'utf8')).toContain(
    'Cut the panel <Size of="panel width" /> wide, with a seam of <Size of="seam" />. Keep 1/4 in free. Buy 44 in, or a panel of 5 1/8 in.',
  );
  expect([...putRight(root).done]).toEqual([]);
});

test.each([
  ['A seam of 1/4 in holds.', true],
  ['Sew with a seam (1/4 in) all round.', true],
  ['Leave 1/4 in seam at each side.', true],
  ['The panel width is 5 in.', true],
  ['Cut the panel 5 in wide.', true],
  ['The panel, 5 in wide, is folded.', false],
  ['Set a snap of 1/4 in (6 mm).', false],
  ['Thread an elastic of 1/4 in (6 mm) beside the seam.', false],
  ['Set the snap 1/4 in (6 mm) from the seam.', false],
  ['Beside the seam, an elastic of 1/4 in runs.', false],
])('--fix goes by the measure’s own words beside the number: %s', (prose, fixes) => {
  expect(certainFixes(contentFolder(exchanged(SIZE, '<YourSize />', prose))).length > 0).toBe(fixes);
});

test('--fix can be shown, and taken back', () => {
  const root = contentFolder(exchanged(SIZE, '<YourSize />', 'A seam of 1/4 in.'));
  const text = () => readFileSync(path.join(root, SIZE), 'utf8');
  const before = text();
  expect(certainFixes(root).map(({ file, changes }) => [file, changes])).toEqual([
    [SIZE, [{ line: 10, before: 'A seam of 1/4 in.', after: 'A seam of <Size of="seam" />.' }]],
  ]);
  expect(text()).toBe(before);
  putRight(root);
  expect(text()).toContain('A seam of <Size of="seam" />.');
  expect(takeBack(root)).toEqual({ restored: [SIZE], changed: [] });
  expect(text()).toBe(before);
  expect(takeBack(root)).toEqual({ restored: [], changed: [] });
  putRight(root);
  writeFileSync(path.join(root, SIZE), `${text()}\nMore.\n`);
  expect(takeBack(root)).toEqual({ restored: [], changed: [SIZE] });
  expect(text()).toContain('More.');
});

test('--lessons tells how long each lesson is, and for whom', () => {
  const long = Array.from({ length: 60 }, () => 'The strip is laid down flat and it is folded up again. ').join('');
  const root = contentFolder(exchanged(SIZE, '<YourSize />', long));
  // 60 times 12 words, and 13 of the lesson's own; 238 of them are read in a minute.
  expect(lessonLengths(root)).toBe(`lesson                              words  to read  reads from
content/courses/pleats/01-size.mdx    733    4 min     6 years
content/courses/pleats/02-fold.mdx      3    1 min           –`);
});

/** A command as an author runs it, on a content folder of its own. */
function command(root: string, file: string, ...args: string[]) {
  for (const part of ['src', 'components']) cpSync(path.join(kit, part), path.join(root, part), { recursive: true });
  for (const file of ['package.json', 'astro.config.mjs']) cpSync(path.join(kit, file), path.join(root, file));
  symlinkSync(path.join(kit, 'node_modules'), path.join(root, 'node_modules'), 'junction');
  return spawnSync(process.execPath, [`src/author/${file}`, ...args], { cwd: root, encoding: 'utf8' });
}

test('the command prints the same and passes the exit code on', () => {
  const root = contentFolder({ [PROJECT]: '' });
  const { stdout, stderr, status } = command(root, 'check.ts');
  expect(stderr).toBe('');
  expect(stdout).toBe(`${check(root).text}\n`);
  expect(status).toBe(1);
});

test('--json is for other programs', () => {
  const root = contentFolder({ [PROJECT]: '' });
  const { stdout, status } = command(root, 'check.ts', '--json');
  expect(JSON.parse(stdout)).toEqual([
    {
      file: PROJECT,
      line: 1,
      column: 1,
      severity: 'error',
      message: 'This file is empty.',
      fix: 'It needs at least: title, measures, pieces.',
    },
  ]);
  expect(status).toBe(1);
});

test('a build with mistakes stops with all of them, before anything is built', () => {
  const root = contentFolder({ [PROJECT]: '', ...exchanged(SIZE, '<YourSize />', '<YorSize />') });
  mkdirSync(path.join(root, 'dist'));
  writeFileSync(path.join(root, 'dist/index.html'), 'The site of before.');
  const { stdout, status } = command(root, 'astro.ts', 'build');
  expect(stdout).toBe(`${check(root).text}\n\nThe site is not built. Mend the mistakes above first.\n`);
  expect(status).toBe(1);
  expect(readdirSync(path.join(root, 'dist'))).toEqual(['index.html']);
});

test('Astro’s own build command is held back, too', async () => {
  const root = contentFolder({ [PROJECT]: '' });
  const setup = contentCheck().hooks['astro:config:setup'];
  const build = setup?.({ command: 'build', config: { root: pathToFileURL(`${root}/`) } } as Parameters<
    typeof setup
  >[0]);
  await expect(build).rejects.toThrow(`The site is not built. Mend these mistakes first:\n\n${check(root).text}`);
});

test('fixes that could not be taken back are not put in', () => {
  const root = contentFolder(exchanged(SIZE, '<YourSize />', 'A seam of 1/4 in.'));
  // A file where the folder would be.
  writeFileSync(path.join(root, '.cache'), '');
  const before = readFileSync(path.join(root, SIZE), 'utf8');
  expect(putRight(root)).toMatchObject({
    fixed: [],
    refused: [{ message: expect.stringContaining('is not written') }],
  });
  expect(readFileSync(path.join(root, SIZE), 'utf8')).toBe(before);
  rmSync(path.join(root, '.cache'));
  expect([...putRight(root).done]).toEqual([[SIZE, 1]]);
});
