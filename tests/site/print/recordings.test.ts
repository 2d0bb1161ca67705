/** What is written for a recording. The captions are read back by the kit's own reader and checked for markup. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { readContent } from '../../../src/site/content/read-content.ts';
import { readTimedText } from '../../../src/site/content/recordings/timed-text.ts';
import { recordingTexts, stamp } from '../../../src/site/print/recordings.ts';
import { writeRecordings } from '../../../src/site/print/write-recordings.ts';
import { plannedHandouts, everything } from '../../../src/site/print/handouts.ts';
import { contentFolder, GOOD } from '../content-folder.ts';

const WHOLE = 'content/courses/pleats/recordings/whole';
const VTT = `WEBVTT

00:01.000 --> 00:05.000
hello cut the strip & <b>mark</b> it <i>

01:01.500 --> 01:07.000
now plate the strip the seam allowance is a quarter of an inch

01:20.000 --> 01:25.000
fold each plate and press it
`;
const YAML = `title: 'Pleats <1>'
address: https://example.org/whole
misheard: { plate: pleat }
corrections:
  - { at: 1:02, note: 'The seam is [seam].' }
`;
const PROJECT = 'content/projects/folio/project.yaml';
const STEPS =
  '\nsteps:\n  - { id: fold, pleat: strip, makes: panel }\n  - { id: lay, lay: panel, on: facing, at: bottom, makes: pair }\n';
const folder = () =>
  contentFolder({
    [PROJECT]: GOOD[PROJECT]! + STEPS,
    [`${WHOLE}.vtt`]: VTT,
    [`${WHOLE}.yaml`]: YAML,
    [`${WHOLE}.webm`]: 'bytes \u0001 of it',
  });
const texts = (root: string, corrections = false) =>
  new Map(recordingTexts(readContent(root), { corrections }).map(({ file, text }) => [path.basename(file), text]));
const plain = (text: string) => text.replace(/[\u00a0\u2009\u202f]/g, ' ');

test('captions in each edition are whole WebVTT, mended, with the sizes of their edition', () => {
  const found = texts(folder());
  for (const name of ['captions-inch.vtt', 'captions-metric.vtt', 'chapters.vtt'])
    expect(readTimedText(found.get(name)!, 'vtt', name).problems).toEqual([]);
  const lines = (name: string) => readTimedText(found.get(name)!, 'vtt', name).lines;
  expect(lines('captions-inch.vtt').map(({ from, to, text }) => ({ from, to, text }))).toEqual([
    { from: 1, to: 5, text: 'hello cut the strip & mark it' },
    { from: 61.5, to: 67, text: 'now pleat the strip the seam allowance is a quarter of an inch' },
    { from: 80, to: 85, text: 'fold each pleat and press it' },
  ]);
  // The sound folio's seam: 1/4 in, 6 mm.
  expect(plain(lines('captions-metric.vtt')[1]!.text)).toContain('a quarter of an inch (6 mm)');
});

test('the text for below it has times, sizes of both editions and corrections', () => {
  const below = plain(texts(folder()).get('below.txt')!);
  expect(below).toMatch(/^Pleats <1>\n\nSteps\n0:00 The start\n1:\d\d /);
  expect(below).toMatch(/Cut, with the seam allowance\n(- .* in × .* in or .* mm × .* mm\n)+/);
  expect(below).toContain('Corrections\n1:02 The seam is ¼ in. Metric: The seam is 6 mm.');
});

test('the transcript runs nothing, loads nothing, and shows no markup of anybody', () => {
  const page = texts(folder()).get('index.html')!;
  expect(page).toContain("default-src 'none'");
  expect(page).toContain('<h1>What is said: Pleats &lt;1&gt;</h1>');
  expect(page).toContain('&amp; mark it');
  expect(page).not.toMatch(/<script|<img|<link|<b>/);
  expect(page).toMatch(/<time datetime="PT61S">1:01<\/time>/);
});

test('what the author may put right is written when it is asked for', () => {
  expect(texts(folder()).has('for-the-author.txt')).toBe(false);
  expect(texts(folder(), true).get('for-the-author.txt')).toContain('Words that may be misheard');
});

test('when a number changes, captions, the text for below, the transcript and the step sheet follow', () => {
  const typed = (text: string) =>
    plain(text)
      .replace(/(?<=\d)(?=[¼⅜])/g, ' ')
      .replaceAll('¼', '1/4')
      .replaceAll('⅜', '3/8');
  const of = (seam: string) => {
    const root = contentFolder({
      [PROJECT]: GOOD[PROJECT]!.replace('seam: { in: 1/4, mm: 6 }', `seam: ${seam}`) + STEPS,
      [`${WHOLE}.vtt`]: VTT.replace('a quarter of an inch', '10 millimetres'),
      [`${WHOLE}.yaml`]: YAML,
    });
    const all = texts(root);
    const sheets = plannedHandouts(readContent(root), 'pleats', everything);
    const sheet = sheets.find(({ file }) => file.endsWith('inch/step-sheet.pdf'));
    const words = (name: string) => typed(all.get(name)!);
    return {
      captions: words('captions-inch.vtt'),
      chapters: words('chapters.vtt'),
      below: words('below.txt'),
      transcript: words('index.html'),
      sheet: typed(JSON.stringify(sheet?.kind === 'document' ? sheet.make().pages : '')),
    };
  };
  // 10 mm are said: the seam of the metric edition before and after, so that captions show the inch edition’s beside it.
  const [before, after] = [of('{ in: 1/4, mm: 10, editions: told }'), of('{ in: 3/8, mm: 10 }')];
  for (const text of [before.captions, before.transcript]) expect(text).toContain('10 millimetres (1/4 in)');
  for (const text of [after.captions, after.transcript]) expect(text).toContain('10 millimetres (3/8 in)');
  // The panel is cut 4 1/4 + 2 * 1/8 + 2 seams wide: 5 in, and then 5 1/4 in.
  for (const text of [before.below, before.sheet]) expect(text).toMatch(/(?<![\d/] )5 in(?: ×|\b)/);
  for (const text of [after.below, after.sheet]) expect(text).toContain('5 1/4 in');
  for (const text of [after.below, after.sheet]) expect(text).not.toMatch(/(?<![\d/] )5 in ×/);
  // A step’s title names works and sides, and no size: chapters have nothing that could be out of date.
  expect(after.chapters).toBe(before.chapters);
  expect(after.chapters).not.toMatch(/\d (?:in|mm)\b/);
  expect(after.below).toContain('The seam is 3/8 in. Metric: The seam is 10 mm.');
  expect(after.transcript).toContain('The seam is 3/8 in.');
});

test('a step that an author told in own words keeps its size right in every text', () => {
  const says = "says: 'Pleat it, and leave [seam] free.'";
  const of = (seam: string) => {
    const root = contentFolder({
      [PROJECT]: (GOOD[PROJECT]! + STEPS)
        .replace('seam: { in: 1/4, mm: 6 }', `seam: ${seam}`)
        .replace('pleat: strip,', `pleat: strip, ${says},`),
      [`${WHOLE}.vtt`]: VTT,
      [`${WHOLE}.yaml`]: YAML,
    });
    return texts(root);
  };
  const [before, after] = [of('{ in: 1/4, mm: 6 }'), of('{ in: 3/8, mm: 10 }')];
  for (const name of ['chapters.vtt', 'below.txt', 'index.html']) {
    expect(plain(before.get(name)!)).toContain('Pleat it, and leave ¼ in free');
    expect(plain(after.get(name)!)).toContain('Pleat it, and leave ⅜ in free');
    expect(plain(after.get(name)!)).not.toContain('¼ in free');
  }
});

test('the recording is copied byte for byte', async () => {
  const root = folder();
  const to = mkdtempSync(path.join(tmpdir(), 'recordings-'));
  onTestFinished(() => rmSync(to, { recursive: true, force: true }));
  const files = await writeRecordings(readContent(root), root, to);
  expect(files).toContain('pleats/whole/whole.webm');
  expect(readFileSync(path.join(to, 'pleats/whole/whole.webm'))).toEqual(
    readFileSync(path.join(root, `${WHOLE}.webm`)),
  );
});

test('the step sheet carries the times', () => {
  const sheet = plannedHandouts(readContent(folder()), 'pleats', everything).find(({ file }) =>
    file.endsWith('step-sheet.pdf'),
  );
  const words = JSON.stringify(sheet?.kind === 'document' ? sheet.make().pages : '');
  expect(words).toMatch(/In the recording from 1:\d\d to 1:\d\d/);
});

test.each([
  [0, '00:00:00.000'],
  [59.9996, '00:01:00.000'],
  [3599.9999, '01:00:00.000'],
  [3723.45, '01:02:03.450'],
])('%d seconds are %s', (seconds, text) => expect(stamp(seconds)).toBe(text));
