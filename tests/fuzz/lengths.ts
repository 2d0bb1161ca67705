/** Lengths as people type them: each is read to a length, or the fault stands within the text. */
import { formatLength, LONGEST, parseLength, type Edition } from '../../src/core/index.ts';
import type { Chance } from './chance.ts';
import { count, family, SLIP } from './family.ts';
import { ODD, piecesOf } from './texts.ts';

const PIECES = [
  ...[
    '0',
    '1',
    '2',
    '7',
    '12',
    '250',
    '99999',
    '100000',
    '1'.repeat(400),
    '.',
    ',',
    '/',
    '1/2',
    '3/8',
    '1/0',
    '0/0',
    '15/16',
  ],
  ...[
    ' ',
    ' ',
    '-',
    '+',
    '~',
    '≈',
    'in',
    '"',
    'inch',
    'ft',
    "'",
    'mm',
    'cm',
    'm',
    'yd',
    'metres',
    'e5',
    'E',
    '(',
    ')',
    '*',
    'and',
  ],
  ...ODD,
];
const UNITS = ['', '', ' in', '"', ' mm', 'cm', ' ft', ' m', ' yd', ' inches'];
/** As somebody writes a length, with a sign that does not belong there now and then. */
function written(from: Chance): string {
  const amount = from.of(['', '1/2', '3 3/4', '12½', '4', '2.5', '0,5', '1,000', `${from.below(200_000)}`, '7/8']);
  const text = `${from.of(['', '', '', '-', 'about '])}${amount}${from.of(UNITS)}${from.often(0.2) ? ` ${from.below(12)}${from.of(UNITS)}` : ''}`;
  const at = from.below(text.length + 1);
  return from.often(0.3) ? text.slice(0, at) + from.of(PIECES) + text.slice(at) : text;
}
const came = new Map<string, number>();

export const lengths = family<{ text: string; edition: Edition; mm: number }>(
  {
    name: 'lengths',
    makes: (from) => ({
      text: from.often(0.5) ? piecesOf(from, PIECES, 8) : written(from),
      edition: from.of(['inch', 'metric'] as const),
      mm: (from.share() - 0.2) * 10 ** from.below(5),
    }),
    broken({ text, edition, mm }) {
      const lines: string[] = [];
      const read = parseLength(text, edition);
      count(came, read.ok ? 'read' : 'refused');
      if (read.ok) {
        if (!Number.isFinite(read.value) || Math.abs(read.value) > LONGEST) lines.push(`reads ${read.value} mm`);
      } else {
        const { message, fix = '', start, end } = read.fault;
        if (message === '' || SLIP.test(message.replace(text, '')) || SLIP.test(fix.replace(text, '')))
          if (!SLIP.test(text)) lines.push(`says “${message} ${fix}”`);
        if (!(start >= 0 && start <= end && end <= text.length)) lines.push(`the fault stands from ${start} to ${end}`);
      }
      const shown = formatLength(mm, edition);
      const back = parseLength(shown.replace(/^≈\s*/u, ''), edition);
      // What is off the grid is shown as the nearest mark, and no mark lies further off than 1/32 in or 1/2 mm.
      const off = shown.startsWith('≈') ? 0.8 : 0.05;
      if (mm >= 0 && (!back.ok || Math.abs(back.value - mm) > off)) lines.push(`${mm} mm is shown as ${shown}`);
      if (SLIP.test(shown)) lines.push(`${mm} mm is shown as ${shown}`);
      return lines;
    },
  },
  came,
);
