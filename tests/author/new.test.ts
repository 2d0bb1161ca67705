import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { check } from '../../src/author/check.ts';
import { make, readWords, requestFrom } from '../../src/author/new.ts';
import { readContent } from '../../src/site/content/read-content.ts';
import { contentFolder, filesIn, GOOD } from '../site/content-folder.ts';

const kit = fileURLToPath(new URL('../..', import.meta.url));
const COURSE = 'content/courses/pleats/course.yaml';
const PROJECT = 'content/projects/folio/project.yaml';
const read = (root: string, file: string) => readFileSync(path.join(root, file), 'utf8');

test('a blank project and a course on it have no mistake', () => {
  const root = contentFolder();
  expect(make(root, { kind: 'project', name: 'Tote bag' })).toEqual({
    ok: true,
    written: ['content/projects/tote-bag/project.yaml'],
    changed: [],
    next: 'Open content/projects/tote-bag/project.yaml and put in your own numbers.',
  });
  expect(make(root, { kind: 'course', name: 'totes', title: 'Bags: two', project: 'tote-bag' })).toEqual({
    ok: true,
    written: ['content/courses/totes/course.yaml', 'content/courses/totes/01-first-lesson.mdx'],
    changed: [],
    next: 'Open content/courses/totes/course.yaml for its name and summary, and content/courses/totes/01-first-lesson.mdx for the lesson.',
  });
  expect(read(root, 'content/projects/tote-bag/project.yaml')).toContain('title: Tote bag\n');
  expect(read(root, 'content/courses/totes/course.yaml')).toContain('title: "Bags: two"\n');
  expect(check(root).text).toBe('No mistakes found.');
});

test('a project from another has its numbers and a title of its own', () => {
  const root = contentFolder();
  make(root, { kind: 'project', name: 'wide-folio', title: 'Wide folio', project: 'folio' });
  expect(read(root, 'content/projects/wide-folio/project.yaml')).toBe(
    GOOD[PROJECT]!.replace('title: Folio', 'title: Wide folio'),
  );
});

test('a lesson has the words of its project, and the course one line more', () => {
  const root = contentFolder({
    // A seam of twice the ease would make two likely slips alike, and the check would say so.
    [PROJECT]: GOOD[PROJECT]!.replace('seam: { in: 1/4, mm: 6 }', 'seam: { in: 3/8, mm: 10 }'),
    [COURSE]: GOOD[COURSE]!.replace(
      '[01-size.mdx, 02-fold.mdx]',
      '# in order\n  - 01-size.mdx\n  - 02-fold.mdx # last',
    ),
  });
  expect(make(root, { kind: 'lesson', course: 'pleats', name: 'Sew it up' })).toEqual({
    ok: true,
    written: ['content/courses/pleats/03-sew-it-up.mdx'],
    changed: [COURSE],
    next: 'Open content/courses/pleats/03-sew-it-up.mdx and write round the words that are there.',
  });
  expect(read(root, COURSE)).toContain('  - 02-fold.mdx # last\n  - 03-sew-it-up.mdx\n');
  const lesson = read(root, 'content/courses/pleats/03-sew-it-up.mdx');
  for (const word of ['title: Sew it up', '<Size of="card width" />', '<YourSize />', '<PleatStudy piece="strip" />'])
    expect(lesson).toContain(word);
  expect(check(root).text).toBe('No mistakes found.');
});

test.each([
  [{ kind: 'project', name: 'folio' }, `${PROJECT} is there already, and stays as it is. Choose another name.`],
  [{ kind: 'course', name: 'pleats' }, `${COURSE} is there already, and stays as it is. Choose another name.`],
  [
    { kind: 'lesson', course: 'pleats', name: 'fold' },
    'content/courses/pleats/02-fold.mdx is there already. Give the lesson another name.',
  ],
  [{ kind: 'lesson', course: 'pleat', name: 'sew' }, 'There is no course “pleat”. Did you mean “pleats”?'],
  [{ kind: 'course', name: 'totes', project: 'tote' }, 'There is no project “tote”. There are: folio.'],
  [{ kind: 'project', name: '裁縫' }, 'A name belongs there, with letters from a to z.'],
] as const)('nothing is written over: %j', (wish, why) => {
  const root = contentFolder();
  expect(make(root, wish)).toEqual({ ok: false, why });
  for (const [file, text] of Object.entries(GOOD)) expect(read(root, file)).toBe(text);
});

test('what the arguments leave open is asked for', async () => {
  const content = readContent(contentFolder());
  const words = (...given: string[]) => {
    const read = readWords(given, {});
    if (!read.ok) throw new Error(read.answer);
    return read;
  };
  const asked: string[] = [];
  const answers = ['course', 'Totes', ''];
  const ask = async (question: string) => (asked.push(question), answers.shift() ?? '');
  expect(await requestFrom(words(), content, ask)).toEqual({ kind: 'course', name: 'Totes' });
  expect(asked).toEqual([
    'What shall it be?',
    'What is the course called?',
    'Which project do its lessons make? Leave it empty for none.',
  ]);
  expect(await requestFrom(words('lesson', 'pleats', 'Sew it'), content, ask)).toEqual({
    kind: 'lesson',
    course: 'pleats',
    name: 'Sew it',
  });
});

test('the command asks in the terminal; a number chooses', () => {
  const root = contentFolder();
  for (const part of ['src', 'components']) cpSync(path.join(kit, part), path.join(root, part), { recursive: true });
  cpSync(path.join(kit, 'package.json'), path.join(root, 'package.json'));
  symlinkSync(path.join(kit, 'node_modules'), path.join(root, 'node_modules'), 'junction');
  const run = (input: string) =>
    spawnSync(process.execPath, ['src/author/new.ts'], { cwd: root, encoding: 'utf8', input });
  const { stdout, stderr, status } = run('3\n1\nSew it up\n');
  expect(stderr).toBe('');
  expect(stdout).toContain(
    'One line more: content/courses/pleats/course.yaml\nOpen content/courses/pleats/03-sew-it-up.mdx',
  );
  expect(status).toBe(0);
  const broken = run('3\n');
  expect([broken.stderr, broken.status]).toEqual(['Nothing was written.\n', 1]);
});

test('what cannot be written whole leaves nothing behind', () => {
  const root = contentFolder();
  // A folder where the lesson’s part would be: the list of lessons cannot be written.
  mkdirSync(path.join(root, `content/courses/pleats/.course.yaml.${process.pid}.part`));
  const before = filesIn(root);
  expect(make(root, { kind: 'lesson', course: 'pleats', name: 'Sew it' })).toMatchObject({ ok: false });
  expect(filesIn(root)).toEqual(before);

  writeFileSync(path.join(root, 'content/projects/tote'), '');
  const made = make(root, { kind: 'project', name: 'tote' });
  expect(made).toMatchObject({ ok: false, why: expect.stringMatching(/^project\.yaml is not written/) });
});
