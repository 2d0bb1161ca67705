import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { ShownContent } from '../../../src/site/pages/shown-content.ts';
import { contentFolder, exchanged, GOOD } from '../content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const COURSE = 'content/courses/pleats/course.yaml';
const FOLD = 'content/courses/pleats/02-fold.mdx';

/** A content folder that is being edited. */
function edited(changes?: Record<string, string | undefined>) {
  const root = contentFolder(changes);
  const save = (file: string, text: string) => {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  };
  return { root, save, content: new ShownContent(root, true) };
}

test('every file is found by its name', () => {
  const { content } = edited();
  expect(content.projects()).toEqual(['folio']);
  expect(content.courses()).toEqual(['pleats']);
  expect(content.lessonsOf('pleats')).toEqual(['01-size.mdx', '02-fold.mdx']);
  expect(content.lesson('pleats', '02-fold.mdx')).toEqual({
    front: { title: 'Fold it', summary: 'All at once.', minutes: 30 },
    text: GOOD[FOLD],
  });
  expect(content.site()?.name).toBe('The Long Table');
});

test('a changed number is shown, and what did not change is the same value', () => {
  const { content, save } = edited();
  const before = content.project('folio');
  expect(content.project('folio')).toBe(before);
  save(PROJECT, GOOD[PROJECT]!.replace('title: Folio', 'title: Pocket folio'));
  expect(content.project('folio')?.title).toBe('Pocket folio');
});

test('what a build reads stays as it was', () => {
  const { root, save } = edited();
  const content = new ShownContent(root, false);
  const before = content.project('folio');
  save(PROJECT, GOOD[PROJECT]!.replace('title: Folio', 'title: Pocket folio'));
  expect(content.project('folio')).toBe(before);
});

test('a project that breaks keeps its last good state until it is mended', () => {
  const { content, save } = edited();
  expect(content.project('folio')?.title).toBe('Folio');
  save(PROJECT, 'title: [\n');
  expect(content.project('folio')?.title).toBe('Folio');
  save(PROJECT, GOOD[PROJECT]!.replace('title: Folio', 'title: Other').replace('2 * ease', '2 * eas'));
  expect(content.project('folio')?.title).toBe('Folio');
  expect(content.projectFile('folio')?.title, 'its name can be read').toBe('Other');
  save(PROJECT, GOOD[PROJECT]!.replace('title: Folio', 'title: Other'));
  expect(content.project('folio')?.title).toBe('Other');
});

test('a list shows the title of a project without the rest of its file', () => {
  const text = GOOD[PROJECT]!.replace(
    'title: Folio',
    'title: >\n  Pocket\n  folio\n\n# in one sentence\nsummary: "It: holds # cards."',
  );
  const { content, save } = edited({ [PROJECT]: `${text}\nsteps:\n  - title: Other\n  - : [\n` });
  expect(content.projectFile('folio')).toBeUndefined();
  expect(content.projectTop('folio')).toEqual({ title: 'Pocket folio\n', summary: 'It: holds # cards.' });
  // What is not written line by line is read whole, and what cannot be read is shown as it was.
  save(PROJECT, JSON.stringify(parse(GOOD[PROJECT]!)));
  expect(content.projectTop('folio')?.title).toBe('Folio');
  for (const unread of ['title: [\n', 'title: \n', 'title: One\ntitle: Two\n', 'pieces: {}\n']) {
    save(PROJECT, unread);
    expect(content.projectTop('folio')?.title).toBe('Folio');
  }
  save(PROJECT, 'title: Case\nsummary: 3\n');
  expect(content.projectTop('folio')).toEqual({ title: 'Case' });
});

test('at the start, what cannot be read or worked out is left out', () => {
  const { content, save } = edited({
    ...exchanged(PROJECT, '2 * ease', '2 * eas'),
    [FOLD]: GOOD[FOLD]!.replace('minutes: 30', 'minutes: long'),
    'content/site.yaml': 'name: [\n',
  });
  expect(content.lesson('pleats', '02-fold.mdx')).toBeUndefined();
  expect(content.project('folio')).toBeUndefined();
  expect(content.site()).toBeUndefined();
  save(FOLD, GOOD[FOLD]!);
  expect(content.lesson('pleats', '02-fold.mdx')?.front.minutes).toBe(30);
});

test('a project that lacks its materials comes with them', () => {
  const { content, save } = edited({ 'content/materials.yaml': 'linen: [\n' });
  expect(content.project('folio')).toBeUndefined();
  save('content/materials.yaml', GOOD['content/materials.yaml']!);
  expect(content.project('folio')).toBeDefined();
});

test('a card that does not fit is no reason to hold the rest back', () => {
  const { content } = edited(exchanged(PROJECT, 'size: [card width, 2 in]', 'size: [9 in, 2 in]'));
  expect(content.project('folio')).toBeDefined();
});

test('a new file and one that is gone are noticed', () => {
  const { content, root, save } = edited();
  expect(content.lesson('pleats', '02-fold.mdx')).toBeDefined();
  save('content/courses/pleats/03-hem.mdx', readFileSync(path.join(root, FOLD), 'utf8'));
  save(COURSE, GOOD[COURSE]!.replace('02-fold.mdx]', '02-fold.mdx, 03-hem.mdx]'));
  expect(content.lessonsOf('pleats')).toEqual(['01-size.mdx', '02-fold.mdx', '03-hem.mdx']);
  rmSync(path.join(root, FOLD));
  expect(content.lessonsOf('pleats')).toEqual(['01-size.mdx', '03-hem.mdx']);
  rmSync(path.join(root, PROJECT));
  expect(content.project('folio')).toBeUndefined();
});

test('a project is a folder below content/projects and nothing else', () => {
  const { content, save } = edited();
  save('content/project.yaml', GOOD[PROJECT]!);
  save('content/elsewhere/project.yaml', GOOD[PROJECT]!);
  for (const name of ['..', '.', '../elsewhere', '..\\elsewhere', 'folio/../folio'])
    expect(content.project(name)).toBeUndefined();
});

test('a recording that breaks keeps its last good state, and one that is gone is gone', () => {
  const { content, root, save } = edited();
  expect(content.recordings('pleats')).toEqual([]);
  const folder = 'content/courses/pleats/recordings';
  save(`${folder}/whole.txt`, '0:00 Now fold the strip\n0:08 and press it\n');
  save(`${folder}/whole.yaml`, 'title: Folding\n');
  const [before] = content.recordings('pleats');
  expect(before).toMatchObject({ course: 'pleats', name: 'whole', settings: { title: 'Folding' } });
  expect(before?.lines.map(({ text }) => text)).toEqual(['Now fold the strip', 'and press it']);
  save(`${folder}/whole.yaml`, 'title: [\n');
  expect(content.recordings('pleats')).toEqual([before]);
  save(`${folder}/whole.yaml`, 'title: Folding it\n');
  expect(content.recordings('pleats')[0]?.settings?.title).toBe('Folding it');
  rmSync(path.join(root, folder, 'whole.txt'));
  expect(content.recordings('pleats')).toEqual([]);
  save(`${folder}/whole.yaml`, 'title: [\n');
  save(`${folder}/whole.txt`, '0:00 Now fold the strip\n');
  expect(content.recordings('pleats')).toEqual([]);
});
