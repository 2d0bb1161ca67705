/** What a recording shows: sizes that follow, paragraphs, times. Values are worked out by hand from the folio's file. */
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import {
  addressAt,
  inCaption,
  lineFor,
  ownSize,
  partsFor,
  type SaidLine,
} from '../../../components/words/recording/follow.ts';
import { paragraphsOf } from '../../../components/words/recording/paragraphs.ts';
import { recordingView } from '../../../components/words/recording/view.ts';
import { clockTime, resolveProject } from '../../../src/core/index.ts';
import { readContent } from '../../../src/site/content/read-content.ts';
import { recordedIn } from '../../../src/site/pages/recorded.ts';

const content = readContent(fileURLToPath(new URL('../../..', import.meta.url)));
const { recording, project } = recordedIn(content, 'pocket-folio')[0]!;
const file = project!.file;
const at = (edition: 'inch' | 'metric', values: Record<string, number> = {}) =>
  resolveProject(file, { edition, values, materials: project!.materials });
const wide: SaidLine = {
  from: 0,
  to: 4,
  text: 'it is four and a half inches wide now',
  sizes: [{ start: 6, end: 28, values: [114.3], of: ['folio width'], edition: 'inch' }],
};
const plain = (text: string) => text.replace(/[\u00a0\u2009\u202f]/g, ' ');

test('a size is shown as it was said, and the reader’s own behind it where theirs differs', () => {
  expect(lineFor(wide, at('inch'))).toBe(wide.text);
  // 105 + 2 * 3 = 111 mm
  expect(plain(lineFor(wide, at('metric')))).toBe('it is four and a half inches (yours: 111 mm) wide now');
  // Cards of 5 in: 5 + 2 * 1/8 = 5 1/4 in
  expect(plain(lineFor(wide, at('inch', { 'card width': 127 })))).toBe(
    'it is four and a half inches (yours: 5 1/4 in) wide now',
  );
  expect(plain(lineFor(wide, at('metric'), ''))).toBe('it is four and a half inches (111 mm) wide now');
});

test('what an option leaves out, and what is no measure, stays as it was said', () => {
  const size = { start: 0, end: 2, values: [10], edition: 'inch' as const };
  expect(ownSize({ ...size, of: ['lid width'] }, at('metric'))).toBe(undefined);
  expect(ownSize({ ...size, of: [null] }, at('metric'))).toBe(undefined);
});

test('parts cover a line, each once', () => {
  expect(
    partsFor(wide, at('metric'))
      .map(({ text }) => text)
      .join(''),
  ).toBe(wide.text);
  expect(partsFor({ text: 'press it' }, at('inch'))).toEqual([{ text: 'press it', isSize: false }]);
});

test('a caption holds no markup', () => {
  expect(inCaption('1 < 2 & <b>')).toBe('1 &lt; 2 &amp; &lt;b&gt;');
});

test('times and addresses', () => {
  expect([0, 9.9, 83.4, 3723].map(clockTime)).toEqual(['0:00', '0:09', '1:23', '1:02:03']);
  expect(addressAt('https://example.org/folio?from={second}', 83.9)).toBe('https://example.org/folio?from=83');
});

test('a paragraph begins with each step and after half a minute; none is lost', () => {
  const lines = Array.from({ length: 30 }, (_, i) => ({ from: 4 * i }));
  const chapter = (from: number) => ({ step: 'x', title: 'x', from, to: from + 1, sure: 1 });
  const found = paragraphsOf(
    lines,
    [chapter(8), chapter(8.2), chapter(500)],
    [
      { at: 9, note: 'a' },
      { at: 0, note: 'b' },
    ],
  );
  expect(found.flatMap((one) => one.lines)).toEqual(lines.map((_, i) => i));
  expect(found.flatMap((one) => one.steps)).toEqual([0, 1, 2]);
  expect(found[1]).toMatchObject({ from: 8, steps: [0, 1], corrections: [{ note: 'a' }] });
  expect(found[0]?.corrections).toEqual([{ at: 0, note: 'b' }]);
  for (const { from, lines: own } of found) expect(4 * own.at(-1)! - from).toBeLessThan(34);
});

test('the folio’s recording: its steps in order, at the seconds they are told', () => {
  const { lines, chapters } = recordingView(recording, { ...project!, edition: 'inch' });
  // Read off the timed text.
  const truth = {
    stiffen: 9,
    pleat: 31,
    'pocket-snap': 55,
    'hold-pleats': 74,
    flap: 126,
    'sew-round': 176,
    close: 239,
    'topstitch-top': 248,
  };
  for (const [step, from] of Object.entries(truth)) {
    const found = chapters.find((one) => one.step === step);
    expect(Math.abs((found?.from ?? -Infinity) - from), step).toBeLessThanOrEqual(10);
  }
  expect(chapters.map(({ from }) => from)).toEqual(chapters.map(({ from }) => from).toSorted((a, b) => a - b));
  const said = lines.flatMap(({ text, sizes = [] }) => sizes.map(({ start, end, of }) => [text.slice(start, end), of]));
  expect(said).toContainEqual(['three quarters of an inch', ['step']]);
  expect(said).toContainEqual(['four and a half inches', ['folio width']]);
});

test('a step told in own words keeps them where they have a size, and its title stands at the lesson’s', () => {
  const steps = file.steps!.map((step, i) => (i === 0 ? { ...step, says: 'Stiffen it, [seam] from the edge' } : step));
  const { chapters } = recordingView(recording, { ...project!, file: { ...file, steps }, edition: 'inch' });
  expect(plain(chapters[0]!.title)).toBe('Stiffen it, ⅜ in from the edge');
  expect(chapters[0]!.says).toBe('Stiffen it, [seam] from the edge');
  expect(chapters.slice(1).filter(({ says }) => says !== undefined)).toEqual([]);
});
