import { formatLength, formatMixed, type Style } from '../measure/index.ts';
import { evaluate, literal, type Scope } from './evaluate.ts';
import { formatQuantity } from './quantity.ts';
import type { Formula, LengthNode, NameNode, NumberNode, Quantity } from './tree.ts';

/** How the quantities of a formula are written; by default `formatQuantity` in the scope's edition. */
export type LineScope = Scope & { format?(quantity: Quantity): string };

/** What a text says when there is no value to say. */
const UNKNOWN = '?';

/** Writes the quantities of a formula in one style. */
export type Writer = {
  /** The value of a name. */
  value(node: NameNode): string;
  /** A length that stands in the formula itself, on this edition's marks. */
  length(node: LengthNode): string;
  /** A plain number that stands in the formula itself. */
  number(node: NumberNode): string;
  /** The result of the whole, with its relation sign in `set` style: `= 4½ in` or `≈ 4½ in`. */
  result(): string;
};

export function writer(formula: Formula, scope: LineScope, style: Style): Writer {
  const { edition, grid } = scope;
  const write = (quantity: Quantity) => scope.format?.(quantity) ?? formatQuantity(quantity, { edition, grid, style });
  return {
    value({ name }) {
      const found = scope.get(name);
      return found?.ok ? write(found.value) : UNKNOWN;
    },
    length(node) {
      const value = literal(node, scope);
      if (scope.format) return scope.format({ value, dimension: 1 });
      return formatLength(value, edition ?? node.edition, { grid, style });
    },
    number({ value, under }) {
      if (under === undefined) return formatQuantity({ value, dimension: 0 }, { style });
      return formatMixed(Math.round(value * under), under, style);
    },
    result() {
      const found = evaluate(formula, scope);
      return found.ok ? write(found.value) : UNKNOWN;
    },
  };
}
