/** A list as a table for a spreadsheet (RFC 4180). */
import { kitRows } from './rows.ts';
import type { Edition } from '../measure/index.ts';
import type { Kit } from './kit.ts';

const HEAD = ['What', 'Material', 'For', 'Buy', 'Amount', 'Unit', 'Price', 'Per', 'Cost', 'Currency', 'How'];

/**
 * The list of a group: a line for each thing to buy, then the sum and each maker's share.
 *
 * @example kitCsv(kit, 'metric').split('\r\n')[0] // => '"What","Material","For", …'
 */
export function kitCsv(kit: Kit, edition: Edition): string {
  const { currency, cost } = kit;
  const rows = kit.lines.flatMap((line) =>
    kitRows(line, edition, 'plain').map(({ label, material, pieces, buy, amount, unit, per, how }) => [
      ...[label, material, pieces.join('; '), buy, amount, unit],
      ...(line.price ? [line.price.amount, per ?? '', line.price.cost, currency] : ['', '', '', '']),
      how.map((part) => `${part.amount} ${part.what}`).join('; '),
    ]),
  );
  const sum = (what: string, amount: number) => [what, '', '', '', '', '', '', '', money(amount), currency, ''];
  const sums = kit.lines.some(({ price }) => price)
    ? [sum('Together', cost.total), sum('For each maker', cost.perMaker)]
    : [];
  return csv([HEAD, ...rows, ...sums]);
}

const money = (amount: number): number => Math.round(amount * 100) / 100;

/**
 * Rows as CSV: every line ended, every text in quotes, numbers bare. A number that is not finite is an empty cell.
 *
 * @example csv([['felt', 0.3]]) // => '"felt",0.3\r\n'
 */
export const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

const cell = (value: string | number): string => {
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  return `"${value.replace(FORMULA, "'").replaceAll('"', '""')}"`;
};

/**
 * Where a spreadsheet would begin a formula (OWASP, CSV Injection: =, +, -, @, their full-width forms, tab and line
 * ends; and, no source, their small forms and the minus sign). An apostrophe there keeps a text a text. Blanks and quotes before the sign do not help, as some programs drop
 * them. A program that expects semicolons or tabs begins a cell after each of them, quotes or not.
 */
const FORMULA = /(?<=^|[;\t\r\n])(?=(?:[\p{Z}"]|(?![\t\r\n])\p{C})*[=+\-@＝＋－＠﹢﹣﹦﹫−])|^(?=[\t\r\n])/gu;
