/** One value changed from the form: what the file has then, and what is never written. */
import fs, { mkdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ProjectFiles } from '../../../src/author/form/project-files.ts';
import { writeAuthorFile, type Disk } from '../../../src/author/write-file.ts';
import { withValue } from '../../../src/author/yaml-edit.ts';
import { allFields } from '../../../src/author/form/messages.ts';
import { contentFolder } from '../../site/content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const folio = readFileSync(
  fileURLToPath(new URL('../../../content/projects/swatch-folio/project.yaml', import.meta.url)),
  'utf8',
);
const materials = readFileSync(fileURLToPath(new URL('../../../content/materials.yaml', import.meta.url)), 'utf8');

/** A content folder with the demo project, its comments and all. */
function form(put?: typeof writeAuthorFile) {
  const root = contentFolder({ [PROJECT]: folio, 'content/materials.yaml': materials });
  const file = path.join(root, PROJECT);
  return {
    root,
    shelf: new ProjectFiles(root, put),
    read: () => readFileSync(file, 'utf8'),
    edit: (text: string) => writeFileSync(file, text),
  };
}

/** The lines that differ. */
function changed(before: string, after: string): string[][] {
  const [a, b] = [before.split('\n'), after.split('\n')];
  expect(b.length).toBe(a.length);
  return a.flatMap((line, i) => (line === b[i] ? [] : [[line.trim(), b[i]!.trim()]]));
}

test('the difference is one line, and only the value in it', () => {
  const { shelf, read } = form();
  const change = { place: ['measures', 'seam', 'mm'], was: '10', value: '11' };
  expect(shelf.write('folio', change)).toMatchObject({ kind: 'written', line: 31 });
  expect(changed(folio, read())).toEqual([
    [
      'seam: { in: 3/8, mm: 10, label: Seam allowance, note: Wide enough for many layers and for corners that are turned. }',
      'seam: { in: 3/8, mm: 11, label: Seam allowance, note: Wide enough for many layers and for corners that are turned. }',
    ],
  ]);
});

test('a number or name in any box can be written and put back, one line at a time', () => {
  const { shelf } = form();
  const boxes = allFields(shelf.read('folio')!).filter(({ value }) => value.length <= 44);
  expect(boxes.length).toBeGreaterThan(150);
  // One in seven: measures, pieces, pleats, options and steps are all among them.
  for (const { place, value } of boxes.filter((_, i) => i % 7 === 0)) {
    const written = withValue(folio, place, `${value} 1`);
    expect(changed(folio, written ?? ''), value).toHaveLength(1);
    expect(withValue(written ?? '', place, value)).toBe(folio);
  }
});

test('a value that is not there yet comes to the end of its group; one that is there by now is shown', () => {
  const { shelf, read } = form();
  const place = ['measures', 'gap', 'mm'];
  expect(shelf.write('folio', { place: ['measures', 'gap'], value: '3/4' })?.kind).toBe('written');
  expect(read().split('\n')).toHaveLength(folio.split('\n').length + 1);
  expect(read()).toContain('\n  gap: 3/4\n\nmaterials:');
  expect(shelf.write('folio', { place: ['measures', 'gap'], value: '1' })).toMatchObject({
    kind: 'conflict',
    theirs: '3/4',
  });
  expect(shelf.write('folio', { place, value: '20' })?.kind).toBe('refused');
  expect(shelf.write('folio', { place: ['measures', 'lining gap'], value: 'gap * ten' })).toMatchObject({
    kind: 'refused',
    message: 'There is no measure called “ten”.',
  });
  expect(read()).not.toContain('lining gap');
});

test('what another hand wrote elsewhere meanwhile stays', () => {
  const { shelf, read, edit } = form();
  shelf.read('folio');
  edit(folio.replace('title: Swatch-card folio', 'title: My folio # for the autumn'));
  expect(shelf.write('folio', { place: ['measures', 'seam', 'mm'], was: '10', value: '11' })?.kind).toBe('written');
  expect(read()).toContain('title: My folio # for the autumn');
  expect(read()).toContain('seam: { in: 3/8, mm: 11,');
});

test('where another hand changed the same value, it is shown and nothing is written', () => {
  const { shelf, read, edit } = form();
  const theirs = folio.replace('mm: 10, label: Seam', 'mm: 8, label: Seam');
  edit(theirs);
  expect(shelf.write('folio', { place: ['measures', 'seam', 'mm'], was: '10', value: '11' })).toMatchObject({
    kind: 'conflict',
    theirs: '8',
  });
  expect(read()).toBe(theirs);
  const gone = folio.replace('mm: 10, label: Seam', 'label: Seam');
  edit(gone);
  expect(shelf.write('folio', { place: ['measures', 'seam', 'mm'], was: '10', value: '11' })).toMatchObject({
    kind: 'conflict',
    theirs: undefined,
  });
  expect(read()).toBe(gone);
});

test.each([
  [['measures', 'seam', 'mm'], '10', '6 inchs', '“inchs” is not a unit of length. Do you mean “inch”?', undefined],
  [
    ['measures', 'panel width', 'is'],
    'card width + 2 * ease + 2 * seam',
    'card width + 2 * eas',
    'There is no measure called “eas”. Do you mean “ease”?',
    undefined,
  ],
  [['pieces', 'cover', 'nap'], 'up', 'down', 'nap: up or any belongs here, not “down”.', undefined],
  [['title'], 'Swatch-card folio', '', 'title: a text is missing here.', 'Name of the project, as learners read it.'],
])('%j: what cannot stand there is not written', (place, was, value, message, fix) => {
  const { shelf, read } = form();
  expect(shelf.write('folio', { place, was, value })).toEqual({ kind: 'refused', message, fix });
  expect(read()).toBe(folio);
});

test('a value that breaks something elsewhere is written: that is for the author to weigh', () => {
  const { shelf, read } = form();
  const place = ['measures', 'depth', 'in'];
  expect(shelf.write('folio', { place, was: '2 1/4', value: '1' })?.kind).toBe('written');
  expect(read()).toContain('in: 1\n');
});

test('a file with a mistake keeps its last good state, says why, and is not written', () => {
  const { shelf, read, edit } = form();
  const before = shelf.read('folio');
  edit(folio.replace('title:', 'titel:'));
  expect(shelf.read('folio')).toEqual({
    ...before,
    broken: { line: 7, column: 1, message: '“titel” is not known here.', fix: 'Did you mean “title”?' },
  });
  expect(shelf.write('folio', { place: ['measures', 'seam', 'mm'], was: '10', value: '11' })?.kind).toBe('refused');
  expect(read()).not.toContain('mm: 11,');
  edit(folio);
  expect(shelf.read('folio')).toEqual(before);
});

test.each(['..', '../..', 'folio/../folio', '.', '', 'FOLIO', 'nowhere', 'folio\0'])('%j is no project', (id) => {
  const { shelf } = form();
  expect(shelf.read(id)).toBeUndefined();
  expect(shelf.write(id, { place: ['title'], was: 'Swatch-card folio', value: 'x' })).toBeUndefined();
});

test('a link that leads out of the content folder is not followed', () => {
  const { root, shelf } = form();
  const outside = path.join(root, 'outside');
  mkdirSync(outside);
  writeFileSync(path.join(outside, 'project.yaml'), folio);
  symlinkSync(outside, path.join(root, 'content/projects/linked'), 'junction');
  expect(shelf.read('linked')).toBeUndefined();
});

test('where the folder cannot take the file, nothing is written and the form says so', () => {
  const { root, shelf, read } = form();
  // A folder in the way of the new text, as a full or locked disk would be.
  mkdirSync(path.join(root, path.dirname(PROJECT), `.project.yaml.${process.pid}.part`));
  const change = { place: ['measures', 'seam', 'mm'], was: '10', value: '11' };
  expect(shelf.write('folio', change)).toMatchObject({ kind: 'refused', fix: 'Try again.' });
  expect(read()).toBe(folio);
});

const SEAM = { place: ['measures', 'seam', 'mm'], was: '10', value: '11' };

/** Somebody else’s editor, which saves while the form checks what it is about to write. */
function saving(times: number, edit: (text: string, time: number) => string): typeof writeAuthorFile {
  let time = 0;
  return (file, ...rest) => {
    time += 1;
    if (time <= times) writeFileSync(file, edit(readFileSync(file, 'utf8'), time));
    return writeAuthorFile(file, ...rest);
  };
}

test('what an editor saves while a change is being checked stays, and the change is put in too', () => {
  const { shelf, read } = form(saving(3, (text, time) => text.replace(/^title: .*$/m, `title: Folio ${time}`)));
  expect(shelf.write('folio', SEAM)).toMatchObject({ kind: 'written' });
  expect(read()).toContain('title: Folio 3\n');
  expect(read()).toContain('seam: { in: 3/8, mm: 11,');
});

test('the same value changed at that moment is shown, and the editor’s stays', () => {
  const { shelf, read } = form(saving(1, (text) => text.replace('mm: 10, label: Seam', 'mm: 8, label: Seam')));
  expect(shelf.write('folio', SEAM)).toMatchObject({ kind: 'conflict', theirs: '8' });
  expect(read()).toContain('mm: 8, label: Seam');
});

test('a program that saves again and again ends the trying, and nothing of it is lost', () => {
  const { shelf, read } = form(saving(99, (text, time) => `${text}# ${time}\n`));
  expect(shelf.write('folio', SEAM)).toEqual({
    kind: 'refused',
    message: 'Another program keeps writing this file.',
    fix: 'Wait until it is done, and try again.',
  });
  expect(read()).toBe(`${folio}# 1\n# 2\n# 3\n# 4\n# 5\n`);
});

test.each([
  ['writeFileSync', 'ENOSPC', 'project.yaml is not written: the disk is full.'],
  ['accessSync', 'EACCES', 'project.yaml may not be written here.'],
] as const)('%s fails with %s: the reason is said and the file stays', (call, code, message) => {
  const disk: Disk = {
    ...fs,
    [call]: () => {
      throw Object.assign(new Error(code), { code });
    },
  };
  const { shelf, read } = form((file, text, before) => writeAuthorFile(file, text, before, disk));
  expect(shelf.write('folio', SEAM)).toMatchObject({ kind: 'refused', message });
  expect(read()).toBe(folio);
});

test('a project whose folder is gone is said, and is written once it is back', () => {
  const { root, shelf } = form();
  shelf.read('folio');
  const folder = path.join(root, path.dirname(PROJECT));
  renameSync(folder, `${folder}-away`);
  expect(shelf.write('folio', SEAM)).toEqual({
    kind: 'refused',
    message: 'The project “folio” is no longer there.',
    fix: 'Put its folder back. What you typed stays here.',
  });
  renameSync(`${folder}-away`, folder);
  expect(shelf.write('folio', SEAM)?.kind).toBe('written');
});

test('a field that would leave a file that cannot be read is never written', () => {
  const { shelf, read } = form();
  const change = { place: ['__proto__'], was: undefined, value: 'x' };
  expect(shelf.write('folio', change)).toMatchObject({
    kind: 'refused',
    message: expect.stringContaining('__proto__'),
  });
  expect(read()).toBe(folio);
});
