import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { readCourse } from '../../../src/site/content/read-content.ts';
import { printFonts } from '../../../src/site/print/fonts.ts';
import { everything } from '../../../src/site/print/handouts.ts';
import { digestOfKit, KeptHandouts } from '../../../src/site/print/kept-handouts.ts';
import { writeHandouts } from '../../../src/site/print/write-handouts.ts';
import { contentFolder, filesIn, GOOD } from '../content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const FOLD = 'content/courses/pleats/02-fold.mdx';
const fonts = await printFonts(fileURLToPath(new URL('../../../.cache/fonts', import.meta.url)));
const one = { ...everything, papers: ['A4'], editions: ['inch'], sheets: 1 } as const;

function folder(): string {
  const made = mkdtempSync(path.join(tmpdir(), 'kept-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

/** Builds the documents of one content folder again and again, each time into a new folder. */
function builds(root: string) {
  const keep = folder();
  return async () => {
    const to = folder();
    const made: string[] = [];
    const { files, takenOver } = await writeHandouts(root, to, fonts, {
      choice: one,
      kept: new KeptHandouts(keep, 'kit'),
      progress: ({ file }) => file && made.push(file),
    });
    return { keep, to, made, files, takenOver };
  };
}

test('a build with nothing changed makes no document, and has all of them', async () => {
  const build = builds(contentFolder());
  const first = await build();
  expect(first.made).toEqual(first.files);
  const second = await build();
  expect(second.made).toEqual([]);
  expect(second.files).toEqual(first.files);
  expect(second.takenOver).toBe(first.files.length);
  for (const file of first.files)
    expect(readFileSync(path.join(second.to, file))).toEqual(readFileSync(path.join(first.to, file)));
});

test('a change of anything that a course uses is a change of what its documents are made from', () => {
  const root = contentFolder();
  const digest = (kit = 'kit', wish: unknown = one) =>
    new KeptHandouts('', kit).digest(readCourse(root, 'pleats'), wish);
  const save = (file: string, text: string) => writeFileSync(path.join(root, file), text);
  const recordings = 'content/courses/pleats/recordings';
  mkdirSync(path.join(root, recordings));
  const digests = [digest()];
  for (const [file, text] of [
    [PROJECT, GOOD[PROJECT]!.replace('title: Folio', 'title: Pocket folio')],
    [FOLD, GOOD[FOLD]!.replace('All at once.', 'One by one.')],
    ['content/site.yaml', 'name: Another school\n'],
    [`${recordings}/whole.txt`, '0:00 Now fold the strip\n0:08 and press it\n'],
  ] as const) {
    save(file, text);
    expect(digest(), file).toBe(digest());
    digests.push(digest());
  }
  digests.push(digest('another kit'), digest('kit', { ...one, series: 'B' }));
  expect(new Set(digests).size).toBe(digests.length);
});

test('another course and another project are nothing to it', async () => {
  const root = contentFolder();
  const build = builds(root);
  const { files } = await build();
  const other = (file: string, text: string) => {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  };
  other('content/projects/other/project.yaml', GOOD[PROJECT]!);
  other('content/courses/knots/course.yaml', GOOD['content/courses/pleats/course.yaml']!);
  other('content/courses/knots/02-fold.mdx', GOOD[FOLD]!);
  const { made, takenOver, keep } = await build();
  expect(takenOver).toBe(files.length);
  expect(made.length).toBeGreaterThan(0);
  expect(made.every((file) => file.startsWith('knots/'))).toBe(true);
  rmSync(path.join(root, 'content/courses/knots'), { recursive: true });
  await build();
  expect(Object.keys(filesIn(keep)).some((file) => file.startsWith('knots/'))).toBe(false);
});

test('a record that is cut off, or a document that is gone, is no reason to go without', async () => {
  const build = builds(contentFolder());
  const { keep, files } = await build();
  rmSync(path.join(keep, files[0]!));
  expect((await build()).made).toEqual(files);
  truncateSync(path.join(keep, 'pleats/made-from.json'), 20);
  const { made, to } = await build();
  expect(made).toEqual(files);
  for (const file of files) expect(statSync(path.join(to, file)).size).toBeGreaterThan(0);
});

test('any other text in the kit is another kit', async () => {
  const kit = folder();
  mkdirSync(path.join(kit, 'src/core'), { recursive: true });
  writeFileSync(path.join(kit, 'src/core/a.ts'), 'one');
  const before = await digestOfKit(kit);
  expect(await digestOfKit(kit)).toBe(before);
  writeFileSync(path.join(kit, 'src/core/a.ts'), 'two');
  const after = await digestOfKit(kit);
  expect(after).not.toBe(before);
  writeFileSync(path.join(kit, 'package-lock.json'), '{}');
  expect(await digestOfKit(kit)).not.toBe(after);
});

test('where nothing can be kept, the documents are made all the same', async () => {
  const root = contentFolder();
  const [to, file] = [folder(), path.join(folder(), 'no-folder')];
  writeFileSync(file, '');
  const { files } = await writeHandouts(root, to, fonts, { choice: one, kept: new KeptHandouts(file, 'kit') });
  expect(files.length).toBeGreaterThan(0);
  for (const made of files) expect(statSync(path.join(to, made)).size).toBeGreaterThan(0);
});
