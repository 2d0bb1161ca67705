/**
 * Timed texts. What is WebVTT and what is not is held against the published tests of the standard, the suite
 * web-platform-tests, folder webvtt/parsing/file-parsing/tests/support: each table names its file there.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MOST_CHARACTERS, readTimedText, type Kind } from '../../../src/site/content/recordings/timed-text.ts';

const read = (text: string, kind: Kind = 'vtt') => readTimedText(text, kind, 'folio.vtt');
const said = (text: string, kind: Kind = 'vtt') => read(text, kind).lines.map((line) => line.text);
const found = (text: string, kind: Kind = 'vtt') =>
  read(text, kind).problems.map(
    ({ line, column, severity, message, fix }) => `${line}:${column} ${severity} ${message} ${fix}`,
  );
const cue = (times: string, text = 'words') => `WEBVTT\n\n${times}\n${text}\n`;

describe('WebVTT, as published', () => {
  // timings-omitted-hours.vtt
  test.each(['00:00.000 --> 00:00:01.000', '00:00:00.000 --> 00:01.000', '00:00.000 --> 00:01.000'])('%s', (times) => {
    expect(read(cue(times))).toMatchObject({ lines: [{ from: 0, to: 1, text: 'words', line: 4 }], problems: [] });
  });

  // timings-too-short.vtt and timings-too-long.vtt: what is marked "invalid" there.
  test.each(
    [
      ...['0000:00.000', '00:0:00.000', '00:0000.000', '00:00:0.000', '00:00:00000', '00:00:00.00', '00:00:00.0'],
      ...['00:00:00.', '00:00:00', '00:00:0', '00:00:', '00:00', '00:0', '00:', '00', '0', ''],
      ...['00::00:00.000', '00:000:00.000', '00:00::00.000', '00:00:000.000', '00:00:00..000', '00:00:00.0000'],
      ...['00:00.0000', '000:00.000', '00::00.000', '00:000.000', '00:00..000', '0:00.000', '0000.000', '00:0.000'],
      ...['00:00000', '00:00.00', '00:00.0', '00:00.', '0:00.', ':00.', '00.', '0.', '.'],
    ].map((from) => `${from} --> 00:00:01.000`),
  )('%s has no time', (times) => {
    const { lines, problems } = read(cue(times));
    expect(lines).toEqual([]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      line: 3,
      severity: 'error',
      message: 'A time belongs here, written as 00:01:23.500.',
      fix: 'Hours, minutes and seconds have two digits each, and thousandths have three.',
    });
  });

  // The same two files: hours of one digit and of three are times.
  test.each(['0:00:00.000 --> 00:00:01.000', '000:00:00.000 --> 00:00:01.000', '00:00:00.000 --> 0:00:01.000'])(
    '%s is a time',
    (times) => expect(said(cue(times))).toEqual(['words']),
  );

  // timings-negative.vtt
  test.each([
    ['00:00:01.000 --> 00:00:00.999', 'This line ends before it begins.'],
    ['00:01:00.000 --> 00:00:59.999', 'This line ends before it begins.'],
    ['01:00:00.000 --> 00:59:59.999', 'This line ends before it begins.'],
    ['00:00:00.000 --> 00:00:00.000', 'This line ends when it begins.'],
  ])('%s', (times, message) => {
    const { lines, problems } = read(cue(times));
    expect(lines).toEqual([]);
    expect(problems).toMatchObject([{ line: 3, severity: 'error', message }]);
  });

  // ids.vtt: none of these is an arrow.
  test.each([' leading space', 'trailing space ', '-- >', '->', ' '])('the name “%s” of a cue', (id) => {
    expect(read(`WEBVTT\n\n${id}\n00:00:00.000 --> 00:00:01.000\ntext1\n`)).toMatchObject({
      lines: [{ text: 'text1', line: 5 }],
      problems: [],
    });
  });

  // arrows.vtt: no line of it makes a cue that says an arrow.
  test('arrows alone are no cues', () => {
    const text = `WEBVTT\n\n-->\n00:00:00.000 --> 00:00:01.000\ntext1\nfoo-->\n00:00:00.000 --> 00:00:01.000\ntext2\n`;
    expect(said(text)).toEqual(['text1', 'text2']);
    expect(said('WEBVTT\n\n00:00:00.000 -a -->\n\n00:00:00.000 -- -->\n')).toEqual([]);
  });

  // newlines.vtt
  test.each(['\n', '\r', '\r\n'])('line ends %j', (end) => {
    const text = ['WEBVTT', '', 'one', '00:00.000 --> 00:01.000', 'a', 'b', '', '00:01.000 --> 00:02.000', 'c'].join(
      end,
    );
    expect(said(text)).toEqual(['a b', 'c']);
  });

  // The examples of the standard, section 1: a note, a style, voices, classes, a time in the words, an escape.
  test('notes and styles are not said, and markup is left out', () => {
    const text = `\uFEFFWEBVTT - a folio

STYLE
::cue { color: red }

NOTE
not said

first
00:01.000 --> 00:04.000 align:start position:10%
<v Maker>Fold the <i.loud>strip</i> &amp; <00:02.500>press, where 1 &lt; 2 &hearts; and 3 < 4

NOTE not said either`;
    expect(read(text)).toMatchObject({ lines: [{ text: 'Fold the strip & press, where 1 < 2 &hearts; and 3 < 4' }] });
    expect(found(text)).toEqual([]);
  });
});

describe('what is wrong is said with its place and its fix', () => {
  test.each([
    [
      '00:01.000 --> 00:02.000\nwords\n',
      '1:1 error A WebVTT file begins with the line WEBVTT. Write WEBVTT at its top, and leave the next line empty.',
    ],
    [
      'WEBVTT\n\n00:01.000 -> 00:02.000\nwords\n',
      '3:1 error The arrow between two times is written -->. Write 00:01:23.500 --> and the second time.',
    ],
    [
      'WEBVTT\n\nwords without a time\n',
      '3:1 error These words have no times. Above them belongs a line such as 00:01:23.500 --> and the second time.',
    ],
    [
      'WEBVTT\n\n00:05.000 --> 00:03.000\nwords\n',
      '3:24 error This line ends before it begins. Exchange its two times, or mend the second.',
    ],
    [
      'WEBVTT\n\n00:01.000 --> 00:75.000\nwords\n',
      '3:24 error A time belongs here, written as 00:01:23.500. A minute has 60 seconds.',
    ],
    [
      'WEBVTT\n',
      '1:1 error Nothing is said in this file. Write a line of times, 00:01.000 --> 00:04.000, and below it what is said.',
    ],
  ])('%j', (text, expected) => {
    expect(found(text)[0]).toBe(expected);
  });

  test('lines out of order are put in order, with a warning', () => {
    const text = 'WEBVTT\n\n00:05.000 --> 00:06.000\ntwo\n\n00:01.000 --> 00:02.000\none\n';
    expect(read(text).lines).toMatchObject([
      { text: 'one', line: 7 },
      { text: 'two', line: 4 },
    ]);
    expect(found(text)).toEqual([
      '6:10 warning This line begins before the one above it. Put the lines in the order of their times.',
    ]);
  });

  test('one slip is told once', () => {
    expect(found('WEBVTT\n\n00:01.000 -> 00:02.000\na\nb\nc\n\n00:03.000 --> 00:04.000\nd\n')).toHaveLength(1);
  });
});

describe('SubRip', () => {
  test('its commas, its numbers and its top', () => {
    const text =
      '\uFEFF1\r\n00:00:01,000 --> 00:00:04,500\r\nCut <b>2</b> {\\an8}pieces,\r\n3,5 cm & more\r\n\r\n2\r\n00:01:05,000 --> 00:01:06,000\r\nAnd press\r\n';
    expect(read(text, 'srt')).toEqual({
      problems: [],
      lines: [
        { from: 1, to: 4.5, text: 'Cut 2 pieces, 3,5 cm & more', line: 3 },
        { from: 65, to: 66, text: 'And press', line: 8 },
      ],
    });
  });

  test('its mistakes stand on its own lines', () => {
    expect(found('1\n00:00:05,000 --> 00:00:03,000\nx\n', 'srt')).toEqual([
      '2:30 error This line ends before it begins. Exchange its two times, or mend the second.',
    ]);
    expect(found('1\n00:00:05 --> 00:00:09,000\nx\n', 'srt')[0]).toBe(
      '2:9 error A time belongs here, written as 00:01:23,500. Hours, minutes and seconds have two digits each, and thousandths have three.',
    );
  });
});

describe('a plain text', () => {
  test('times between are reckoned by words', () => {
    const words = Array.from({ length: 100 }, (_, i) => `w${i}`);
    const { lines, problems } = read(`0:00 ${words.join(' ')}\n[0:40] and now\n`, 'txt');
    expect(problems).toEqual([]);
    expect(lines.map(({ text }) => text).join(' ')).toBe(`${words.join(' ')} and now`);
    expect(lines.length).toBeGreaterThan(5);
    // A hundred words in forty seconds: the fiftieth is said at twenty seconds.
    for (const { from, text } of lines.slice(0, -1))
      expect(from).toBeCloseTo(0.4 * Number(text.split(' ')[0]!.slice(1)), 9);
    expect(lines.at(-1)?.from).toBe(40);
    expect(lines.every(({ from, to }, i) => from < to && to <= (lines[i + 1]?.from ?? Infinity) + 1e-9)).toBe(true);
  });

  test('a size is not broken over two lines', () => {
    const text =
      '0:00 so now we are going to cut the strip to five and a half inches by three and a quarter and then press';
    const { lines } = read(text, 'txt');
    expect(lines.some(({ text }) => text.includes('five and a half inches by three and a quarter and'))).toBe(true);
  });

  test('where it was quiet, words are said at their time', () => {
    expect(read('0:00 press it\n5:00 and turn', 'txt').lines).toMatchObject([{ from: 0, to: 2 }, { from: 300 }]);
  });

  test('its mistakes', () => {
    expect(found('Hello\n0:10 more', 'txt')).toEqual([
      '1:1 error These words have no time before them. Write a time and what is said from there on: 0:40 Now fold the strip.',
    ]);
    expect(found('0:10 a\n0:05 b', 'txt')).toEqual([
      '2:1 error This line begins before the one above it. Mend one of the two times.',
    ]);
    expect(found('0:75 a', 'txt')).toEqual([
      '1:1 error 0:75 is no time: a minute has 60 seconds, an hour 60 minutes. A time is written 1:02:03 or 2:03.',
    ]);
  });

  test('a measure at the start of a line is no time', () => {
    expect(said('0:10 cut it\n3 1/2 by 4', 'txt')).toEqual(['cut it 3 1/2 by 4']);
  });
});

test('captions that roll say each line once', () => {
  const text = `WEBVTT

00:00.000 --> 00:02.000
fold the strip

00:02.000 --> 00:02.010
fold the strip

00:02.010 --> 00:04.000
fold the strip
and<00:02.500><c> press</c>

00:08.000 --> 00:09.000
and press
`;
  // The last is said again after a pause.
  expect(said(text)).toEqual(['fold the strip', 'and press', 'and press']);
});

describe('hostile files', () => {
  test.each([
    ['NUL', 'WEBVTT\n\n00:01.000 --> 00:02.000\na\0b\n', '4:2'],
    ['another encoding', 'WEBVTT\n\n00:01.000 --> 00:02.000\n\uFFFD\n', '4:1'],
    ['UTF-16 read as UTF-8', '\uFFFD\uFFFDW\0E\0B\0', '1:1'],
  ])('%s', (_, text, place) => {
    expect(found(text)).toEqual([
      `${place} error Here stands a sign that is not UTF-8. Save the file anew, and choose UTF-8 as its encoding.`,
    ]);
  });

  test('a huge file is not read', () => {
    expect(found('x'.repeat(MOST_CHARACTERS + 1))[0]).toContain('too long');
  });

  test('markup without end does no harm', () => {
    const deep = `${'<b>'.repeat(50_000)}fold${'<'.repeat(50_000)}`;
    expect(said(cue('00:01.000 --> 00:02.000', deep))).toEqual([`fold${'<'.repeat(50_000)}`]);
    expect(said(cue('00:01.000 --> 00:02.000', '<script>alert(1)</script> &lt;img onerror=x>'))).toEqual([
      'alert(1) <img onerror=x>',
    ]);
  });

  test('whatever it is given, it answers, in order of time', () => {
    const part = fc.oneof(
      fc.constantFrom(
        'WEBVTT',
        '\n',
        '\n\n',
        '00:01.000 --> 00:02.000',
        '-->',
        '<b>',
        '&amp;',
        'NOTE',
        'STYLE',
        '0:10 ',
        ',',
      ),
      fc.string({ unit: 'binary', maxLength: 8 }),
    );
    fc.assert(
      fc.property(fc.array(part, { maxLength: 30 }), fc.constantFrom<Kind>('vtt', 'srt', 'txt'), (parts, kind) => {
        const text = parts.join('');
        const { lines, problems } = read(text, kind);
        expect(lines.length + problems.length).toBeGreaterThan(0);
        for (const { from, to, text: words, line } of lines) {
          expect(from).toBeLessThan(to);
          expect(words).toMatch(/\S/);
          expect(line).toBeLessThanOrEqual(text.split(/\r\n|\r|\n/).length + 1);
        }
        for (const [i, { from }] of lines.entries()) expect(from).toBeGreaterThanOrEqual(lines[i - 1]?.from ?? 0);
        for (const problem of problems) {
          expect(problem.message).toMatch(/^[\p{Lu}\d].*\.$/u);
          expect(problem.fix).toMatch(/^\p{Lu}.*[.?]$/u);
          expect(problem.line).toBeGreaterThan(0);
          expect(problem.column).toBeGreaterThan(0);
        }
      }),
      { numRuns: 150 },
    );
  });
});
