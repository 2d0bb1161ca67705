/** Formulas in the texts an author writes: `Add [2 * seam] to it.` One place says what is one, and works it out. */
import { evaluate, type Scope } from './evaluate.ts';
import { parseFormula } from './parse.ts';
import { formatQuantity } from './quantity.ts';
import type { Style } from '../measure/index.ts';

/** A formula in square brackets: from its opening bracket up to the character after the closing one, as UTF-16 indices. */
export type Bracket = { start: number; end: number; formula: string };

/**
 * The formulas in a text. No formulas are: a bracket behind a backslash (`\[`), an empty one, the box of a list
 * (`- [x] pressed`), a footnote (`[^1]`) and a link (`[words](address)`).
 *
 * @example bracketsIn('Add [2 * seam].') // => [{ start: 4, end: 14, formula: '2 * seam' }]
 */
export function bracketsIn(text: string): Bracket[] {
  return [...text.matchAll(BRACKET)].flatMap(({ 0: written, 1: inside = '', index: start }) => {
    const formula = inside.replace(/\s+/gu, ' ').trim();
    const isBox = /^x$/iu.test(formula) && /(^|\n)\s*([-*+]|\d+[.)])\s+$/u.test(text.slice(0, start));
    if (formula === '' || formula.startsWith('^') || isBox) return [];
    return [{ start, end: start + written.length, formula }];
  });
}

/** Not behind an odd number of backslashes, and no link. What lies before is looked at where a bracket stands, and nowhere else. */
const BRACKET = /\[(?<!(?<!\\)(?:\\\\)*\\\[)([^\][]*)\](?!\()/gu;

/** Words and formulas in turn; the first are always words, if only none. A backslash before a bracket is taken away. */
export function partsOf(text: string): string[] {
  const parts: string[] = [];
  let from = 0;
  for (const { start, end, formula } of bracketsIn(text)) {
    parts.push(plain(text.slice(from, start)), formula);
    from = end;
  }
  return [...parts, plain(text.slice(from))];
}

/** Words that may hold brackets of their own, as they stand in a text with formulas. */
export const literal = (words: string): string => words.replace(/[\][]/gu, '\\$&');

const plain = (words: string): string => words.replace(/\\([\][])/gu, '$1');

/**
 * A text with its formulas worked out; a dash stands where one has no value, as of a piece that an option leaves out.
 *
 * @param style how sizes are written: for reading, or to be spoken
 * @example workedText('Add [2 * seam].', scope) // => 'Add ½ in.'
 */
export function workedText(text: string, scope: Scope, style: Style = 'set'): string {
  if (!text.includes('[')) return text;
  return partsOf(text)
    .map((part, i) => (i % 2 === 1 ? workedOut(part, scope, style) : part))
    .join('');
}

function workedOut(text: string, scope: Scope, style: Style): string {
  const formula = parseFormula(text, scope.known && { names: scope.known });
  const value = formula.ok ? evaluate(formula.value, scope) : formula;
  return value.ok ? formatQuantity(value.value, { edition: scope.edition, grid: scope.grid, style }) : '–';
}
