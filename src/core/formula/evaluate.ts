import {
  closest,
  fail,
  inEdition,
  ok,
  ON_MARK,
  quote,
  type Edition,
  type Fault,
  type Grid,
  type Result,
} from '../measure/index.ts';
import { unknown } from './parse.ts';
import type {
  Dimension,
  ExtremeNode,
  Formula,
  JoinNode,
  LengthNode,
  NameNode,
  Node,
  Quantity,
  RoundNode,
} from './tree.ts';

/**
 * Where a formula finds its names.
 *
 * `get` gives the quantity of a name, a fault where the name has no value of its own, undefined where there is no such
 * name. `known` lists the names, for near-miss suggestions. With `edition` a length written in a unit of the other
 * edition is moved to the marks of this one (`grid`).
 */
export type Scope = {
  get(name: string): Result<Quantity> | undefined;
  edition?: Edition;
  grid?: Grid;
  known?: Iterable<string>;
};

/**
 * Works a formula out: plain numbers, lengths in mm, areas in mm². Kinds are checked on the way: lengths add to
 * lengths, length times length is an area, length over length a plain number. Faults name the places in the formula's
 * text: kinds that do not fit, unknown names, division by zero, and results that are not finite.
 *
 * @example evaluate(formula('3 in / 2'), scope) // => { ok: true, value: { value: 38.1, dimension: 1 } }
 * @example evaluate(formula('ease + 2'), scope) // => { ok: false, fault: { code: 'kinds-differ', mend: '2 in', ... } }
 */
export function evaluate(formula: Formula, scope: Scope): Result<Quantity> {
  const run: Run = { text: formula.text, scope, dimension: 0, fault: undefined };
  const value = walk(formula.tree, run);
  if (run.fault) return fail(run.fault);
  if (!Number.isFinite(value)) return fail(notFinite(formula.text, formula.tree));
  return ok({ value, dimension: run.dimension });
}

/** One working-out. `walk` leaves the kind of what it returns in `dimension`, so that no pair is made at each step. */
type Run = { readonly text: string; readonly scope: Scope; dimension: Dimension; fault: Fault | undefined };

/** The value of a part; NaN once there is a fault. */
function walk(node: Node, run: Run): number {
  switch (node.kind) {
    case 'number':
      run.dimension = 0;
      return node.value;
    case 'length':
      run.dimension = 1;
      return literal(node, run.scope);
    case 'name':
      return named(node, run);
    case 'minus':
      return -walk(node.of, run);
    case 'min':
    case 'max':
      return extreme(node, run);
    case 'round':
      return rounded(node, run);
    default:
      return combined(node, run);
  }
}

/** The value of a length written in a formula: a base measure that was stated in one edition. */
export function literal(node: LengthNode, { edition, grid }: Pick<Scope, 'edition' | 'grid'>): number {
  if (edition === undefined || edition === node.edition) return node.value;
  return inEdition(node.edition === 'inch' ? { inch: node.value } : { metric: node.value }, edition, grid);
}

function named(node: NameNode, run: Run): number {
  const { name, start, end } = node;
  const found = run.scope.get(name);
  if (found?.ok) {
    run.dimension = found.value.dimension;
    return found.value.value;
  }
  if (found) {
    const message = `${quote(name)} has no value yet, because of a fault of its own.`;
    return refuse(run, { code: 'rests-on-fault', message, start, end });
  }
  return refuse(run, unknown(name, closest(name, run.scope.known ?? []), start, end));
}

function combined(node: JoinNode, run: Run): number {
  const left = walk(node.left, run);
  if (run.fault) return NaN;
  const dimension = run.dimension;
  const right = walk(node.right, run);
  if (run.fault) return NaN;
  switch (node.kind) {
    case '+':
    case '-':
      if (dimension !== run.dimension) return refuse(run, kindsDiffer(node.left, dimension, node.right, run));
      return node.kind === '+' ? left + right : left - right;
    case '*':
      if (dimension + run.dimension > 2) return refuse(run, tooMany(node, run));
      run.dimension = (dimension + run.dimension) as Dimension;
      return left * right;
    default:
      if (dimension < run.dimension) return refuse(run, overLarger(node, dimension, run));
      if (isNothing(right, run.dimension)) return refuse(run, byZero(node.right, run));
      run.dimension = (dimension - run.dimension) as Dimension;
      return left / right;
  }
}

function extreme(node: ExtremeNode, run: Run): number {
  const first = node.of[0]!;
  let best = walk(first, run);
  const dimension = run.dimension;
  for (let i = 1; i < node.of.length && !run.fault; i++) {
    const value = walk(node.of[i]!, run);
    if (run.fault) return NaN;
    if (run.dimension !== dimension) return refuse(run, kindsDiffer(first, dimension, node.of[i]!, run));
    best = node.kind === 'min' ? Math.min(best, value) : Math.max(best, value);
  }
  return best;
}

function rounded(node: RoundNode, run: Run): number {
  const value = walk(node.of, run);
  if (run.fault) return NaN;
  const dimension = run.dimension;
  const step = walk(node.to, run);
  if (run.fault) return NaN;
  if (run.dimension !== dimension) return refuse(run, kindsDiffer(node.of, dimension, node.to, run));
  if (step < 0 || isNothing(step, dimension)) {
    const message = `Round to more than nothing: ${quote(run.text.slice(node.to.start, node.to.end))} is not.`;
    return refuse(run, { code: 'round-to-nothing', message, start: node.to.start, end: node.to.end });
  }
  const steps = value / step;
  const nearest = Math.floor(steps + 0.5);
  // A sum that should lie on a step may come out a hair beside it; that must not cost a whole step.
  if (node.way === 'nearest' || Math.abs(steps - nearest) <= 1e-9 * Math.max(1, Math.abs(steps))) return nearest * step;
  return (node.way === 'up' ? Math.ceil(steps) : Math.floor(steps)) * step;
}

/** Zero; for a length or an area also what is left of one by the rounding of floating-point sums. */
const isNothing = (value: number, dimension: Dimension) =>
  dimension === 0 ? value === 0 : Math.abs(value) < (dimension === 1 ? ON_MARK : ON_MARK * ON_MARK);

function refuse(run: Run, fault: Fault): number {
  run.fault ??= fault;
  return NaN;
}

const kinds = ['a plain number', 'a length', 'an area'] as const;

/** A part as the author wrote it, in quotation marks. */
const written = (node: Node, run: Run) => quote(run.text.slice(node.start, node.end));

/** Both places of a sum or comparison of things of two kinds; a bare number gets the unit it seems to lack. */
function kindsDiffer(left: Node, leftKind: Dimension, right: Node, run: Run): Fault {
  const rightKind = run.dimension;
  const [small, large] = leftKind < rightKind ? [left, right] : [right, left];
  const lower = Math.min(leftKind, rightKind) as Dimension;
  const higher = Math.max(leftKind, rightKind) as Dimension;
  const pair = `${written(large, run)} is ${kinds[higher]} and ${written(small, run)} ${kinds[lower]}`;
  const lacksUnit = lower === 0 && higher === 1 && small.kind === 'number';
  const unit = (run.scope.edition ?? 'metric') === 'inch' ? 'in' : 'mm';
  const mend = lacksUnit ? `${run.text.slice(small.start, small.end)} ${unit}` : undefined;
  const advice = mend ? `Write “${mend}” if you mean a length.` : 'They do not go together.';
  return {
    code: 'kinds-differ',
    message: `${pair}. ${advice}`,
    start: small.start,
    end: small.end,
    ...(mend && { mend }),
    also: { start: large.start, end: large.end },
  };
}

function tooMany(node: JoinNode, run: Run): Fault {
  const message = `${written(node.left, run)} times ${written(node.right, run)} is more than an area. Check what is multiplied.`;
  return { code: 'more-than-area', message, start: node.start, end: node.end };
}

function overLarger(node: JoinNode, kind: Dimension, run: Run): Fault {
  const { left, right } = node;
  const message = `${written(left, run)} is ${kinds[kind]} and cannot be divided by ${written(right, run)}, ${kinds[run.dimension]}.`;
  return {
    code: 'divided-by-larger',
    message,
    start: right.start,
    end: right.end,
    also: { start: left.start, end: left.end },
  };
}

function byZero(node: Node, run: Run): Fault {
  return {
    code: 'divided-by-zero',
    message: `${written(node, run)} is zero. Nothing can be divided by it.`,
    start: node.start,
    end: node.end,
  };
}

function notFinite(text: string, node: Node): Fault {
  const message = `${quote(text.slice(node.start, node.end))} comes to a number too large to use.`;
  return { code: 'not-finite', message, start: node.start, end: node.end };
}
