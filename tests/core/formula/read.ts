import {
  evaluate,
  ok,
  parseFormula,
  type Dimension,
  type Edition,
  type Formula,
  type Quantity,
  type Scope,
} from '../../../src/core/index.ts';

/** A formula that must be readable; one that is not fails the test with its message. */
export function formula(text: string, names?: Iterable<string>): Formula {
  const read = parseFormula(text, names ? { names } : {});
  if (!read.ok) throw new Error(`${text}: ${read.fault.message}`);
  return read.value;
}

/** The fault of a formula that must not be readable. */
export function unreadable(text: string, names?: Iterable<string>) {
  const read = parseFormula(text, names ? { names } : {});
  if (read.ok) throw new Error(`${text} was read`);
  return read.fault;
}

/** The result of a formula that must work out. */
export function result(text: string, scope: Scope, names?: Iterable<string>): Quantity {
  const found = evaluate(formula(text, names), scope);
  if (!found.ok) throw new Error(`${text}: ${found.fault.message}`);
  return found.value;
}

export const number = (value: number): Quantity => ({ value, dimension: 0 });
export const length = (value: number): Quantity => ({ value, dimension: 1 });
export const quantity = (value: number, dimension: Dimension): Quantity => ({ value, dimension });

/** A scope over a few named quantities. */
export function scopeOf(named: Record<string, Quantity>, edition?: Edition): Scope & { known: string[] } {
  return {
    get: (name) => (Object.hasOwn(named, name) ? ok(named[name]!) : undefined),
    known: Object.keys(named),
    ...(edition && { edition }),
  };
}

/** The folio that the examples here are about, in inches. */
export const folio = {
  'packet width': length(82.55),
  ease: length(6.35),
  pockets: number(4),
  'distance to fold 1': length(50.8),
  'cut up': length(-3.175),
};
