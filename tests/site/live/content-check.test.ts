import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { ContentCheck } from '../../../src/site/live/content-check.ts';
import { contentFolder, exchanged, GOOD, pngOf } from '../content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const COURSE = 'content/courses/pleats/course.yaml';
const SIZE = 'content/courses/pleats/01-size.mdx';
const FOLD = 'content/courses/pleats/02-fold.mdx';

let open: ContentCheck | undefined;
afterEach(() => open?.close());

function checkOf(files: Record<string, string> = {}) {
  const root = contentFolder(files);
  const check = (open = new ContentCheck(root));
  const save = (file: string, text: string) => {
    writeFileSync(path.join(root, file), text);
    check.look();
  };
  return { root, check, save };
}

test('it finds what the check of the whole folder finds, also after changes', async () => {
  const { root, check, save } = checkOf();
  expect((await check.checked).problems).toEqual(findContentProblems(root));
  for (const [file, text] of [
    [SIZE, GOOD[SIZE]!.replace('<YourSize />', '<YourSise />')],
    [PROJECT, 'title: [\n'],
    [PROJECT, GOOD[PROJECT]!],
    ['content/materials.yaml', 'outer: 3\n'],
    [FOLD, `${GOOD[FOLD]!}\n![A fold](fold.png)\n`],
    ['content/courses/pleats/notes.md', 'Not a lesson.\n'],
  ] as const) {
    save(file, text);
    const { problems } = await check.checked;
    expect(problems, file).toEqual(findContentProblems(root));
  }
  expect((await check.checked).problems).not.toEqual([]);
});

test('a picture that arrives is seen, although no text changed', async () => {
  const { root, check } = checkOf({ [FOLD]: `${GOOD[FOLD]!}\n![A fold](fold.png)\n` });
  expect((await check.checked).problems.map(({ message }) => message)).toContain(
    'There is no picture “fold.png” beside this lesson.',
  );
  writeFileSync(path.join(root, 'content/courses/pleats/fold.png'), pngOf(900, 600));
  check.look();
  expect((await check.checked).problems).toEqual([]);
});

test('a lesson is told as its file is now, before anybody says that it changed', async () => {
  const { root, check } = checkOf();
  expect(await check.lesson(SIZE)).toBe(GOOD[SIZE]);
  const broken = exchanged(SIZE, '<YourSize />', '<YourSise />')[SIZE]!;
  writeFileSync(path.join(root, SIZE), broken);
  expect(await check.lesson(SIZE)).toContain('There is no lesson word <YourSise>.');
  expect(await check.lesson('content/courses/pleats/99-none.mdx')).toBeUndefined();
});

test('a page that was asked for is told of when another file changes what it shows', async () => {
  const { check, save } = checkOf();
  await check.checked;
  const changed: string[][] = [];
  check.listen((checked) => changed.push(checked.changed));
  // Of the check that is done already, too.
  await vi.waitFor(() => expect(changed).toEqual([[]]));
  changed.length = 0;
  await check.lesson(SIZE);
  save(FOLD, `${GOOD[FOLD]!}\nAnd again.\n`);
  await vi.waitFor(() => expect(changed).toHaveLength(1), { timeout: 20_000 });
  expect(changed[0]).toContain(FOLD);
  expect(changed[0]).not.toContain(SIZE);
  // Without its project every word of the lesson is a mistake.
  save(COURSE, GOOD[COURSE]!.replace(/^project: .*\n/m, ''));
  await vi.waitFor(() => expect(changed).toHaveLength(2), { timeout: 20_000 });
  expect(changed[1]).toContain(SIZE);
});
