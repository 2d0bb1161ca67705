/** Formulas as people type them: each comes to a finite value, or to a fault within the text. */
import { evaluate, formatQuantity, parseFormula, toWords, type Scope } from '../../src/core/index.ts';
import type { Chance } from './chance.ts';
import { count, family, SLIP } from './family.ts';
import { ODD, piecesOf } from './texts.ts';

const MEASURES: Record<string, number> = { 'card width': 95.25, seam: 6.35, in: 3, pi: 9, 'min ease': 0, wide: 99_999 };
const PIECES = [
  ...[
    ...Object.keys(MEASURES),
    'card',
    'width',
    'round',
    'up',
    'down',
    'to',
    'min',
    'max',
    'root of',
    'half of',
    'twice',
  ],
  ...['0', '1', '2', '1/2', '1/0', '3 1/4', '0.1', '1e9', '1e308', '9'.repeat(330), 'in', 'mm', 'cm', '"', 'ft'],
  ...['+', '-', '*', '/', '×', '÷', '(', ')', '((((', '))))', ',', '[', ']', '^', '%', '='],
  ...[' ', ' ', ' ', ' ', ' '],
  ...ODD,
];
const came = new Map<string, number>();
const SCOPE: Scope = {
  edition: 'inch',
  get: (name) =>
    Object.hasOwn(MEASURES, name) ? { ok: true, value: { value: MEASURES[name]!, dimension: 1 } } : undefined,
  known: Object.keys(MEASURES),
};

const ENDS = [...Object.keys(MEASURES), '2', '1/2', '3 1/4 in', '0', '40 mm', '0.1', '1e9', '99999', '2 ft', '12½"'];
/** A sum as somebody writes it, with a piece that does not belong there now and then. */
function sum(from: Chance, depth: number): string {
  if (from.often(0.02)) return from.of(PIECES);
  if (depth === 0 || from.often(0.3)) return from.of(ENDS);
  const [one, other] = [sum(from, depth - 1), sum(from, depth - 1)];
  const sign = from.of([' + ', ' - ', ' * ', ' / ', '+', '*']);
  return from.of([
    ...[`${one}${sign}${other}`, `${one}${sign}${other}`, `(${one}${sign}${other})`, `min(${one}, ${other})`],
    ...[`max(${one}, ${other})`, `root of (${one} * ${other})`, `round ${one} up to ${from.of(ENDS)}`, `-${one}`],
  ]);
}

export const formulas = family<string>(
  {
    name: 'formulas',
    makes: (from) =>
      from.often(0.02)
        ? from.of(['(', '-', 'min(', 'root of ', '2 * ', '1 + ']).repeat(from.below(3000))
        : from.often(0.4)
          ? piecesOf(from, PIECES, 14)
          : sum(from, 4),
    broken(text) {
      const read = parseFormula(text, { names: Object.keys(MEASURES) });
      if (!read.ok) {
        count(came, 'refused');
        return within(text, read.fault);
      }
      const value = evaluate(read.value, SCOPE);
      count(came, value.ok ? 'worked out' : 'without a value');
      if (!value.ok) return within(text, value.fault);
      const shown = [formatQuantity(value.value, { edition: 'inch' }), toWords(read.value, SCOPE)];
      return [
        ...(Number.isFinite(value.value.value) ? [] : [`comes to ${value.value.value}`]),
        ...(SLIP.test(text) ? [] : shown.filter((one) => SLIP.test(one)).map((one) => `is shown as ${one}`)),
      ];
    },
    tells: (text) => text,
  },
  came,
);

function within(
  text: string,
  { message, fix = '', start, end }: { message: string; fix?: string | undefined; start: number; end: number },
): string[] {
  const lines: string[] = [];
  if (message === '' || (!SLIP.test(text) && SLIP.test(`${message} ${fix}`))) lines.push(`says “${message} ${fix}”`);
  if (!(start >= 0 && start <= end && end <= text.length)) lines.push(`the fault stands from ${start} to ${end}`);
  return lines;
}
