/** One value changed from the form: what the file has then, and what is never written. */
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ProjectFiles } from '../../../src/author/form/project-files.ts';
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
function form() {
  const root = contentFolder({ [PROJECT]: folio, 'content/materials.yaml': materials });
  const file = path.join(root, PROJECT);
  return {
    root,
    shelf: new ProjectFiles(root),
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
