/** What formulas come to at a pattern, and how a page shows it. Plain functions: the content check uses them, too. */
import {
  evaluate,
  formatQuantity,
  oncePer,
  parseFormula,
  scopeOf,
  type Formula,
  type Pattern,
  type Quantity,
  type Result,
} from '../../src/core/index.ts';

export { scopeOf };

/** Formulas read so far, by the names they were read with: an option can take names away, and names decide how a text is read. */
const readings = new Map<string, Map<string, Result<Formula>>>();
const readingsOf = oncePer((pattern: Pattern) => {
  const names = Object.keys(pattern.measures).join('\n');
  const known = readings.get(names) ?? new Map<string, Result<Formula>>();
  readings.set(names, known);
  return known;
});

/** A formula over a pattern's names. A fault names what is unknown there, such as a piece that is left out. */
export function readFormula(text: string, pattern: Pattern): Result<Formula> {
  const known = readingsOf(pattern);
  let formula = known.get(text);
  if (!formula) known.set(text, (formula = parseFormula(text, { names: Object.keys(pattern.measures) })));
  return formula;
}

/** What a formula comes to at this learner's size; undefined where it has no value (a piece that is left out). */
export function valueOf(text: string, pattern: Pattern): Quantity | undefined {
  const formula = readFormula(text, pattern);
  if (!formula.ok) return undefined;
  const value = evaluate(formula.value, scopeOf(pattern));
  return value.ok ? value.value : undefined;
}

/** A quantity as a page shows it; a dash where there is none. */
export function showQuantity(
  quantity: Quantity | undefined,
  pattern: Pattern,
  style: 'set' | 'spoken' = 'set',
): string {
  return quantity ? formatQuantity(quantity, { edition: pattern.edition, grid: pattern.grid, style }) : '–';
}
