import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { bar, handouts, readChoices } from '../../src/author/handouts.ts';
import { everything } from '../../src/site/print/handouts.ts';
import { contentFolder, exchanged } from '../site/content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const kit = fileURLToPath(new URL('../..', import.meta.url));

function emptyFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'handouts-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

const one = { ...everything, papers: ['A4'], editions: ['inch'] } as const;

test('writes every document of a course, the teacher’s in a folder of their own', async () => {
  const to = emptyFolder();
  const told: string[] = [];
  const { files, findings } = await handouts(contentFolder(), to, {
    choice: one,
    progress: ({ done, all, files, file }) => void told.push(`${done}/${all} ${files} ${file}`),
  });
  expect(files.toSorted()).toEqual([
    'pleats/a4-inch/cutting-list.pdf',
    'pleats/a4-inch/fold-gauge-strip.pdf',
    'pleats/a4-inch/materials-list.pdf',
    'pleats/a4-inch/teacher/answer-key-size.pdf',
    'pleats/a4-inch/teacher/class-plan.pdf',
    'pleats/a4-inch/templates.pdf',
    'pleats/a4-inch/worksheet-size.pdf',
    'pleats/outlines-inch/folio/facing.svg',
    'pleats/outlines-inch/folio/strip.svg',
  ]);
  expect(findings).toEqual([]);
  for (const file of files.filter((name) => name.endsWith('.pdf'))) {
    expect(readFileSync(path.join(to, file)).subarray(0, 5).toString()).toBe('%PDF-');
  }
  expect(told).toHaveLength(files.length + 1);
  expect(told.at(-1)).toBe(`1/1 ${files.length} `);
});

test('says in which file letters are missing', async () => {
  const root = contentFolder(exchanged(PROJECT, 'title: Folio', 'title: 布 folio'));
  const { findings } = await handouts(root, emptyFolder(), { choice: one });
  expect(findings).toContain(
    'pleats/a4-inch/cutting-list.pdf: The font cannot show 布 (U+5E03) in “布 folio · inch edition · The Long Table”. ' +
      'A question mark stands for it.',
  );
});

test('a project whose sizes cannot be worked out still prints what it has', async () => {
  const root = contentFolder(exchanged(PROJECT, '2 * ease + 2 * seam', '2 * eas'));
  const { files } = await handouts(root, emptyFolder(), { choice: one });
  expect(files).toContain('pleats/a4-inch/templates.pdf');
  expect(files).toContain('pleats/a4-inch/teacher/class-plan.pdf');
});

test('reads its choices', () => {
  expect(
    readChoices(['--paper', 'letter', '--edition', 'metric', '--large-print', '--sheets', '3', '--to', 'x']),
  ).toEqual({
    ok: true,
    choice: { ...everything, papers: ['Letter'], editions: ['metric'], largePrint: true, sheets: 3 },
    to: 'x',
  });
  expect(readChoices([])).toEqual({ ok: true, choice: everything, to: 'dist/handouts' });
  expect(readChoices(['--paper', 'A5'])).toMatchObject({
    answer: expect.stringMatching(/^--paper takes A4 or Letter\./),
  });
  expect(readChoices(['--edition', 'feet'])).toMatchObject({
    answer: expect.stringMatching(/^--edition takes inch or metric\./),
  });
  expect(readChoices(['--makers', 'many'])).toMatchObject({
    answer: expect.stringMatching(/^--makers and --sheets take a whole number/),
  });
  expect(readChoices(['--colour'])).toMatchObject({ answer: expect.stringMatching(/There is no choice --colour/) });
});

test('writes a project in one of its sizes, and in all of them nested', async () => {
  const sizes =
    'sizes: { of: { small: { card width: { in: 3 1/2, mm: 90 } }, large: { card width: { in: 4 1/4, mm: 105 } } } }\n';
  const root = contentFolder(exchanged(PROJECT, 'materials:\n', `${sizes}materials:\n`));
  const outline = async (size?: string) => {
    const to = emptyFolder();
    const { files, findings } = await handouts(root, to, { choice: { ...one, ...(size && { size }) } });
    expect(files).toContain('pleats/a4-inch/templates-all-sizes.pdf');
    return [
      findings.at(-1),
      /width="([\d.]+)mm"/u.exec(readFileSync(path.join(to, 'pleats/outlines-inch/folio/facing.svg'), 'utf8'))?.[1],
    ];
  };
  // The card, 1/8 and 1/4 in on either side, and 1 mm blank round the cut line.
  expect(await outline()).toEqual([
    'pleats/a4-inch/templates-all-sizes.pdf: strip has fold lines, which differ from size to size: print the templates of one size for it.',
    '129',
  ]);
  expect((await outline('Small'))[1]).toBe(String(Math.round((3.5 + 0.75) * 25.4 * 1000 + 2000) / 1000));
  expect(await outline('huge')).toEqual([
    'No project here has a size called “huge”: all is in the lesson’s size.',
    '129',
  ]);
  expect(readChoices(['--size', 'small'])).toEqual({
    ok: true,
    choice: { ...everything, size: 'small' },
    to: 'dist/handouts',
  });
});

test('the bar fills from left to right', () => {
  expect([0, 1, 2].map((done) => bar(done, 2, 4))).toEqual(['░░░░', '██░░', '████']);
});

test('the command writes them where it is told, and names a course that is not there', () => {
  const to = emptyFolder();
  const run = (...args: string[]) =>
    spawnSync(process.execPath, ['src/author/handouts.ts', '--to', to, ...args], { cwd: kit, encoding: 'utf8' });
  const missing = run('--course', 'knots');
  expect(missing.stderr).toBe('There is no course called “knots” in content/courses.\n');
  expect(missing.status).toBe(1);
  const done = run('--paper', 'A4', '--edition', 'metric');
  expect(done.stderr).toBe('');
  expect(done.stdout).toContain(`files are in ${to}`);
  expect(done.stdout).toContain('keep them off a public site');
  const [course] = readdirSync(to);
  expect(existsSync(path.join(to, course!, 'a4-metric', 'templates.pdf'))).toBe(true);
});
