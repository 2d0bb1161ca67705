/** What the form says of a project's recordings, and what it writes into the list of a course. */
import { readFileSync, symlinkSync, unlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { SaidInRecordings } from '../../../src/author/form/said-in.ts';
import { withField } from '../../../src/author/yaml-edit.ts';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { contentFolder } from '../../site/content-folder.ts';

const VTT = 'content/courses/pleats/recordings/whole.vtt';
const COURSE = 'content/courses/pleats/course.yaml';
const said = (...lines: string[]) =>
  `WEBVTT\n${lines.map((line, i) => `\n00:${10 + i}.000 --> 00:${11 + i}.000\n${line}\n`).join('')}`;

function folder() {
  const root = contentFolder({ [VTT]: said('trim off the sole bridges', 'and the seam is three quarters of an inch') });
  return { root, recordings: new SaidInRecordings(root), read: () => readFileSync(path.join(root, COURSE), 'utf8') };
}

test('the form says of a recording what npm run check says', () => {
  const { root, recordings } = folder();
  const [whole] = recordings.read('folio').recordings;
  expect(whole).toMatchObject({ course: 'pleats', name: 'whole', file: VTT });
  const checked = findContentProblems(root).filter(({ file }) => file === VTT);
  expect(checked.length).toBeGreaterThan(0);
  expect(whole!.findings.map(({ message }) => message)).toEqual(checked.map(({ message }) => message));
  expect(recordings.read('none')).toEqual({ recordings: [] });
});

test('a word is put into the list of its course, and is then mended in every recording', () => {
  const { recordings, read } = folder();
  const before = read();
  expect(recordings.read('folio').recordings[0]!.misheard).toMatchObject([
    { heard: 'sole bridges', meant: 'selvages', where: [{ at: '0:10', before: 'trim off the' }] },
  ]);
  const answer = recordings.accept('folio', { course: 'pleats', heard: 'sole bridges', meant: 'selvages' });
  expect(answer).toMatchObject({ kind: 'written', file: COURSE, said: { recordings: [{ misheard: [] }] } });
  expect(read()).toBe(`${before.trimEnd()}\nmisheard:\n  sole bridges: selvages\n`);
  recordings.accept('folio', { course: 'pleats', heard: 'yes', meant: 'a: "b" #c' });
  expect(parse(read())).toMatchObject({ misheard: { 'sole bridges': 'selvages', yes: 'a: "b" #c' } });
  expect(recordings.accept('folio', { course: 'pleats', heard: 'sole bridges', meant: 'selvedge' })).toEqual({
    kind: 'refused',
    message: '“sole bridges” is “selvages” in that list already.',
  });
});

test('nothing but the list of a course of this folder is written', () => {
  const { root, recordings, read } = folder();
  const outside = path.join(contentFolder(), COURSE);
  const asItWas = readFileSync(outside, 'utf8');
  const word = { heard: 'sole bridges', meant: 'selvages' };
  for (const course of ['..', '../projects/folio', 'none', ''])
    expect(recordings.accept('folio', { ...word, course }).kind, course).toBe('refused');
  unlinkSync(path.join(root, COURSE));
  symlinkSync(outside, path.join(root, COURSE));
  expect(recordings.accept('folio', { ...word, course: 'pleats' }).kind).toBe('refused');
  expect(readFileSync(outside, 'utf8')).toBe(asItWas);
  unlinkSync(path.join(root, COURSE));
  writeFileSync(path.join(root, COURSE), 'title: [');
  expect(recordings.accept('folio', { ...word, course: 'pleats' })).toMatchObject({
    message: 'The file has a mistake.',
  });
  expect(read()).toBe('title: [');
});

test('a group that a file lacks comes to its end, with the file’s own line ends', () => {
  expect(withField('title: A\r\n', ['misheard'], 'plate', 'pleat')).toBe('title: A\r\nmisheard:\r\n  plate: pleat\r\n');
  expect(withField('title: A # a\n\n# the end\n', ['misheard'], 'plate', 'pleat')).toContain('# the end\nmisheard:\n');
  expect(withField('{ title: A }', ['misheard'], 'plate', 'pleat')).toBeUndefined();
});
