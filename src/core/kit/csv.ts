/** A list as a table for a spreadsheet (RFC 4180). */
import { tellLine } from './tell.ts';
import type { Edition } from '../measure/index.ts';
import type { Kit } from './kit.ts';

const HEAD = ['What', 'Material', 'For', 'Buy', 'Amount', 'Unit', 'Price', 'Per', 'Cost', 'Currency', 'How'];

/**
 * The list of a group: a line for each thing to buy, then the sum and each maker's share.
 *
 * @example kitCsv(kit, 'metric').split('\r\n')[0] // => 'What,Material,For,Buy,Amount,Unit,Price,Per,Cost,Currency,How'
 */
export function kitCsv(kit: Kit, edition: Edition): string {
  const { currency, cost } = kit;
  const rows = kit.lines.flatMap((line) =>
    tellLine(line, edition, 'plain').map(({ label, material, pieces, buy, amount, unit, per, how }) => [
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

/** Rows as CSV, every line ended. */
export const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

/**
 * A cell. A text that a spreadsheet would take for a formula gets an apostrophe in front, so that it stays a text
 * (OWASP, CSV Injection: =, +, -, @, tab and carriage return); numbers stay numbers.
 */
function cell(value: string | number): string {
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  const text = /^[=+\-@\t\r\n＝＋－＠]/u.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
