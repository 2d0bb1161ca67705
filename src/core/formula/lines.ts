import { formatLength, formatMixed, type Style } from '../measure/index.ts';
import { evaluate, lengthIn, type Scope } from './evaluate.ts';
import { formatQuantity } from './quantity.ts';
import type { Formula, LengthNode, NameNode, NumberNode, Quantity } from './tree.ts';

/** What a line says where there is no value to say. */
const unknown: Record<Style, string> = { plain: '?', set: '?', spoken: 'an unknown value' };

/** Writes the ends of a formula's tree, and its result, in one style. */
export type LineWriter = {
  /** The value of a name. */
  value: (node: NameNode) => string;
  /** A length that stands in the formula itself, on this edition's marks. */
  length: (node: LengthNode) => string;
  /** A plain number that stands in the formula itself. */
  number: (node: NumberNode) => string;
  /** The value of the whole. */
  result: () => string;
};

/** A writer in the scope's edition; `format` takes the place of `formatQuantity` for every quantity. */
export function lineWriter(
  formula: Formula,
  scope: Scope,
  style: Style,
  format?: (quantity: Quantity) => string,
): LineWriter {
  const { edition, grid } = scope;
  const write = format ?? ((quantity) => formatQuantity(quantity, { edition, grid, style }));
  return {
    value({ name }) {
      const found = scope.get(name);
      return found?.ok ? write(found.value) : unknown[style];
    },
    length(node) {
      const value = lengthIn(node, scope);
      return format?.({ value, dimension: 1 }) ?? formatLength(value, edition ?? node.edition, { grid, style });
    },
    number({ value, under }) {
      // As it was written: a fraction stays one.
      if (under === undefined) return formatQuantity({ value, dimension: 0 }, { style });
      return formatMixed(Math.round(value * under), under, style);
    },
    result() {
      const found = evaluate(formula, scope);
      return found.ok ? write(found.value) : unknown[style];
    },
  };
}
