/** What is said in a recording, line by line with its times: WebVTT, SubRip, or a plain text of lines that begin with a time. */
import { createRequire } from 'node:module';
import type { Diagnostic } from '../diagnostic.ts';

// A module of the older kind.
const { WebVTTParser } = createRequire(import.meta.url)('webvtt-parser') as typeof import('webvtt-parser');

/** A line as it was said; times in seconds from the start of the recording. */
export type TimedLine = {
  from: number;
  to: number;
  /** Plain words on one line, without markup. */
  text: string;
  /** Where its words stand in the file, counted from 1. */
  line: number;
};

export type TimedText = { lines: TimedLine[]; problems: Diagnostic[] };

/** How a timed text may be written, by the ending of its file. */
export const KINDS = ['vtt', 'srt', 'txt'] as const;
export type Kind = (typeof KINDS)[number];

/** Two million characters are a hundred hours. */
export const MOST_CHARACTERS = 2_000_000;

/**
 * Reads a timed text. Never throws, whatever it is given; lines are in order of time.
 *
 * @param text of the file, as UTF-8
 * @param file its name in problems
 */
export function readTimedText(text: string, kind: Kind, file: string): TimedText {
  const refused = faultOfText(text, file);
  if (refused) return { lines: [], problems: [refused] };
  const plain = text.replace(/^\uFEFF/, '');
  const { lines, problems } = kind === 'txt' ? readPlain(plain, file) : readCues(plain, kind, file);
  if (lines.length === 0 && problems.length === 0) {
    const message = 'Nothing is said in this file.';
    problems.push({ file, line: 1, column: 1, severity: 'error', message, fix: `Write ${EXAMPLE[kind]}` });
  }
  return { lines: lines.toSorted((a, b) => a.from - b.from), problems };
}

const EXAMPLE = {
  vtt: 'a line of times, 00:01.000 --> 00:04.000, and below it what is said.',
  srt: 'a line of times, 00:00:01,000 --> 00:00:04,000, and below it what is said.',
  txt: 'a time and what is said from there on: 0:40 Now fold the strip.',
} as const;

/** A file that is no text in the encoding that all files here have. */
function faultOfText(text: string, file: string): Diagnostic | undefined {
  if (text.length > MOST_CHARACTERS) {
    const message = 'This file is too long for what somebody says: two million characters are the most.';
    return { file, line: 1, column: 1, severity: 'error', message, fix: 'Is it the recording itself?' };
  }
  // A NUL is what other encodings leave, and programs.
  const at = text.search(/[\uFFFD\0]/);
  if (at < 0) return undefined;
  const before = text.slice(0, at);
  return {
    file,
    line: before.split(/\r\n|\r|\n/).length,
    column: at - Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')),
    severity: 'error',
    message: 'Here stands a sign that is not UTF-8.',
    fix: 'Save the file anew, and choose UTF-8 as its encoding.',
  };
}

/** In seconds: captions that roll follow each other closer than this. */
const ROLLING = 0.05;

const LINE_END = /\r\n|\r|\n/;

/** Stand for the signs of markup while the times are read: what is said is never taken for markup by the reader of times. */
const [LESS, AND] = ['\uE000', '\uE001'];

function readCues(text: string, kind: 'vtt' | 'srt', file: string): TimedText {
  const written = text.split(LINE_END);
  // SubRip is the same but for its top and the comma in its times.
  const above = kind === 'srt' ? ['WEBVTT', ''] : [];
  const rows = [
    ...above,
    ...written.map((row) => {
      if (!row.includes('-->')) return row.replaceAll('<', LESS).replaceAll('&', AND);
      return kind === 'srt' ? row.replace(/(\d),(?=\d)/g, '$1.') : row;
    }),
  ];
  const { cues, errors } = new WebVTTParser().parse(rows.join('\n'), 'subtitles');
  const problems: Diagnostic[] = [];
  const blocks = new Set<number>();
  for (const error of errors) {
    // Words without times are noticed on the line after them.
    const isWords = error.message.startsWith('Cue identifier');
    const noticed = Math.min(written.length, Math.max(1, error.line - above.length - (isWords ? 1 : 0)));
    const block = written.slice(0, noticed - 1).lastIndexOf('');
    const line = isWords ? block + 2 : noticed;
    const explained = explain(error.message, written[line - 1] ?? '', kind);
    // What follows in the same block is most often the same slip, seen again.
    if (!explained || blocks.has(block)) continue;
    blocks.add(block);
    const column = error.col === undefined ? 1 : Math.max(1, Math.min(error.col, (written[line - 1] ?? '').length + 1));
    problems.push({ file, line, column, ...explained });
  }
  const lineOf = linesOfCues(rows, above.length);
  let last: string[] = [];
  let lastEnd = 0;
  const lines = cues.flatMap((cue): TimedLine[] => {
    const said = cue.text.split('\n').map(plainWords).filter(Boolean);
    // Captions made by machine show a line a second time, above the next.
    let again = cue.startTime - lastEnd < ROLLING ? Math.min(last.length, said.length) : 0;
    while (again > 0 && said.slice(0, again).join('\n') !== last.slice(-again).join('\n')) again -= 1;
    const fresh = again === said.length && last.length === again ? [] : said.slice(again);
    if (said.length > 0) [last, lastEnd] = [said, cue.endTime];
    if (fresh.length === 0 || cue.endTime <= cue.startTime) return [];
    const line = lineOf.get(`${cue.startTime} ${cue.endTime} ${cue.text}`) ?? 1;
    return [{ from: cue.startTime, to: cue.endTime, text: fresh.join(' '), line }];
  });
  return { lines, problems };
}

/** Where the words of each cue begin, by its times and its text: cues come back in order of time. */
function linesOfCues(rows: readonly string[], above: number): Map<string, number> {
  const found = new Map<string, number>();
  for (const [i, row] of rows.entries()) {
    const times = /^\s*([\d:.]+)\s*-->\s*([\d:.]+)/.exec(row);
    if (!times) continue;
    const said: string[] = [];
    for (let at = i + 1; rows[at] && !rows[at]!.includes('-->'); at += 1) said.push(rows[at]!);
    const key = `${secondsOf(times[1]!)} ${secondsOf(times[2]!)} ${said.join('\n')}`;
    if (!found.has(key)) found.set(key, i + 2 - above);
  }
  return found;
}

/** 1:02:03.500, 2:03, 2:03.5: seconds as the reader of times adds them up. */
function secondsOf(time: string): number {
  const [whole = '', part] = time.replace(',', '.').split('.');
  const sum = whole.split(':').reduce((all, one) => all * 60 + Number(one), 0);
  return part === undefined ? sum : sum + Number(part.padEnd(3, '0').slice(0, 3)) / 1000;
}

const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  nbsp: ' ',
  lrm: '',
  rlm: '',
  quot: '"',
  apos: "'",
};

/** What is said, without tags, their classes and what programs write between braces. */
const plainWords = (row: string): string =>
  row
    .replace(/\uE000\/?[a-z0-9.:][^>\uE000]*(?:>|$)/gi, '')
    .replace(/\{\\[^}]*\}/g, '')
    .replace(/\uE001(\w+);/g, (all, name: string) => NAMED[name.toLowerCase()] ?? all)
    .replaceAll(LESS, '<')
    .replaceAll(AND, '&')
    .replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
    .trim();

/** What the reader of times says, in an author's words; undefined for what does not touch the words or their times. */
function explain(
  said: string,
  row: string,
  kind: 'vtt' | 'srt',
): Pick<Diagnostic, 'severity' | 'message' | 'fix'> | undefined {
  const time = kind === 'vtt' ? '00:01:23.500' : '00:01:23,500';
  const error = (message: string, fix: string) => ({ severity: 'error' as const, message, fix });
  if (said.startsWith('No valid signature'))
    return error(
      'A WebVTT file begins with the line WEBVTT.',
      'Write WEBVTT at its top, and leave the next line empty.',
    );
  if (said.startsWith('End timestamp')) {
    const [from, to] = row.split('-->').map((one) => secondsOf(/[\d:.,]+/.exec(one)?.[0] ?? ''));
    return from === to
      ? error('This line ends when it begins.', 'Give it the time at which the next one begins.')
      : error('This line ends before it begins.', 'Exchange its two times, or mend the second.');
  }
  if (said.startsWith('Start timestamp is not greater')) {
    const message = 'This line begins before the one above it.';
    return { severity: 'warning', message, fix: 'Put the lines in the order of their times.' };
  }
  if (said.startsWith('Cue identifier')) {
    return /\d\s*-+>?\s*\d|→|—>/.test(row)
      ? error('The arrow between two times is written -->.', `Write ${time} --> and the second time.`)
      : error('These words have no times.', `Above them belongs a line such as ${time} --> and the second time.`);
  }
  if (said.includes('-->') || said.startsWith('No valid timestamp separator'))
    return error('Between two times stands -->, with a blank on each side.', `Write ${time} --> and the second time.`);
  if (TIME_FAULT.test(said))
    return error(`A time belongs here, written as ${time}.`, FIX_OF_TIME[said] ?? HOW_A_TIME_IS);
  return undefined;
}

const TIME_FAULT =
  /^(No timestamp|Timestamp must (start|not have)|No time unit|Must be exactly|No seconds found|No decimal|Milliseconds|You cannot have more)/;
const HOW_A_TIME_IS = 'Hours, minutes and seconds have two digits each, and thousandths have three.';
const FIX_OF_TIME: Readonly<Record<string, string>> = {
  'You cannot have more than 59 minutes.': 'An hour has 60 minutes: write the hours before them.',
  'You cannot have more than 59 seconds.': 'A minute has 60 seconds.',
};

/** What people say in a second where nothing else is known: 150 words a minute, common practice, no source. */
const WORDS_A_SECOND = 2.5;
/** Slower than this nobody speaks: then it was quiet, and the words were said at the start. */
const SLOWEST = 1;
/** So many words make a line of their own. */
const WORDS_A_LINE = 9;
/** Words that belong to a size: a line is not broken beside them. */
const OF_A_SIZE =
  /^(\d.*|a|an|and|of|by|point|about|half|halves|thirds?|quarters?|eighths?|eights?|sixteenths?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|inch(es)?|in|yards?|feet|foot|mil|mm|cm|centimet\w+|millimet\w+|met(er|re)s?|to|or)[.,]?$/i;

/** Lines that begin with a time; what has none goes on with the line above. */
function readPlain(text: string, file: string): TimedText {
  const problems: Diagnostic[] = [];
  const said: { at: number; line: number; words: string[] }[] = [];
  for (const [i, row] of text.split(LINE_END).entries()) {
    const line = i + 1;
    const [, lead = '', time, rest = ''] =
      /^(\s*[[(]?)((?:\d{1,2}:)?\d{1,3}:\d{2}(?:[.,]\d{1,3})?)(?![\d:])[\])]?\s*[-–—]?\s*(.*)$/.exec(row) ?? [];
    const words = (time === undefined ? row : rest)
      .replace(/[\p{Cc}\p{Cf}]+/gu, ' ')
      .split(/\s+/)
      .filter(Boolean);
    const before = said.at(-1);
    if (time === undefined) {
      if (before) before.words.push(...words);
      else if (words.length > 0) {
        const message = 'These words have no time before them.';
        const problem = { file, line, column: 1, severity: 'error' as const, message };
        if (problems.length === 0) problems.push({ ...problem, fix: `Write ${EXAMPLE.txt}` });
      }
      continue;
    }
    const at = secondsOf(time);
    const problem = { file, line, column: lead.length + 1, severity: 'error' as const };
    const [seconds = 0, minutes = 0] = time
      .replace(/[.,].*/, '')
      .split(':')
      .toReversed()
      .map(Number);
    if (seconds > 59 || (minutes > 59 && time.split(':').length > 2)) {
      const message = `${time} is no time: a minute has 60 seconds, an hour 60 minutes.`;
      problems.push({ ...problem, message, fix: 'A time is written 1:02:03 or 2:03.' });
    } else if (before && at < before.at) {
      problems.push({
        ...problem,
        message: 'This line begins before the one above it.',
        fix: 'Mend one of the two times.',
      });
    } else said.push({ at, line, words });
  }
  const lines = said.flatMap(({ at, line, words }, i): TimedLine[] => {
    if (words.length === 0) return [];
    const next = said.slice(i + 1).find((one) => one.at > at)?.at;
    const pace = next === undefined ? WORDS_A_SECOND : Math.max(words.length / (next - at), SLOWEST);
    let done = 0;
    return inPieces(words).map((piece) => {
      const from = at + done / pace;
      done += piece.length;
      return { from, to: at + done / pace, text: piece.join(' '), line };
    });
  });
  return { lines, problems };
}

function inPieces(words: readonly string[]): string[][] {
  const pieces: string[][] = [[]];
  for (const [i, word] of words.entries()) {
    const piece = pieces.at(-1)!;
    const before = words[i - 1] ?? '';
    const isTogether = OF_A_SIZE.test(word) || OF_A_SIZE.test(before);
    if ((piece.length >= WORDS_A_LINE && !isTogether) || piece.length >= 3 * WORDS_A_LINE) pieces.push([word]);
    else piece.push(word);
  }
  return pieces;
}
