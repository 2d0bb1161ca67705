import {
  closest,
  fail,
  inEdition,
  ok,
  ON_MARK,
  type Edition,
  type Diagnostic,
  type InText,
  type Grid,
  type Result,
} from '../measure/index.ts';
import * as mismatches from './mismatches.ts';
import * as refusals from './refusals.ts';
import type {
  Dimension,
  ExtremeNode,
  Formula,
  JoinNode,
  LengthNode,
  NameNode,
  Node,
  Quantity,
  RootNode,
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
  get: (name: string) => Result<Quantity> | undefined;
  edition?: Edition;
  grid?: Grid;
  known?: Iterable<string>;
};

/**
 * Works a formula out: plain numbers, lengths in mm, areas in mm². Kinds are checked on the way: lengths add to
 * lengths, length times length is an area, length over length a plain number. Faults name the places in the formula's
 * text: kinds that do not fit, unknown names, division by zero, and what does not come to a finite number.
 *
 * @example evaluate(formula('3 in / 2'), scope) // => { ok: true, value: { value: 38.1, dimension: 1 } }
 * @example evaluate(formula('ease + 2'), scope) // => { ok: false, fault: { code: 'kinds-differ', fix: '2 in', ... } }
 */
export function evaluate(formula: Formula, scope: Scope): Result<Quantity> {
  const run: Run = { text: formula.text, scope, dimension: 0, fault: undefined };
  const value = walk(formula.tree, run);
  if (run.fault) return fail(run.fault);
  if (!Number.isFinite(value)) return fail(mismatches.notFinite(formula.text, formula.tree));
  return ok({ value: value === 0 ? 0 : value, dimension: run.dimension });
}

/** One working-out. `walk` leaves the kind of what it returns in `dimension`, so that no pair is made at each step. */
type Run = {
  readonly text: string;
  readonly scope: Scope;
  dimension: Dimension;
  fault: Diagnostic<InText> | undefined;
};

/** The value of a part; NaN once there is a fault. */
function walk(node: Node, run: Run): number {
  switch (node.kind) {
    case 'number':
      run.dimension = 0;
      return node.value;
    case 'length':
      run.dimension = 1;
      return lengthIn(node, run.scope);
    case 'pi':
      run.dimension = 0;
      return Math.PI;
    case 'name':
      return named(node, run);
    case 'minus':
      return -walk(node.of, run);
    case 'root':
      return root(node, run);
    case 'min':
    case 'max':
      return extreme(node, run);
    case 'round':
      return rounded(node, run);
    default:
      return joined(node, run);
  }
}

/** The value of a length written in a formula: a base measure like any other, stated for one edition. */
export function lengthIn(
  { value, edition: own, other }: LengthNode,
  { edition, grid }: Pick<Scope, 'edition' | 'grid'>,
): number {
  if (edition === undefined || edition === own) return value;
  if (other !== undefined) return other;
  return inEdition(own === 'inch' ? { inch: value } : { metric: value }, edition, grid);
}

function named(node: NameNode, run: Run): number {
  const found = run.scope.get(node.name);
  if (!found) return refuse(run, refusals.unknownName(node.name, closest(node.name, run.scope.known ?? []), node));
  if (!found.ok) return refuse(run, mismatches.restsOnFault(node));
  run.dimension = found.value.dimension;
  return found.value.value;
}

function joined(node: JoinNode, run: Run): number {
  const left = walk(node.left, run);
  const kind = run.dimension;
  if (run.fault) return NaN;
  const right = walk(node.right, run);
  const other = run.dimension;
  if (run.fault) return NaN;
  switch (node.kind) {
    case '+':
      return kind === other ? left + right : kindsDiffer(run, node.left, kind, node.right, 'added');
    case '-':
      return kind === other ? left - right : kindsDiffer(run, node.left, kind, node.right, 'taken from each other');
    case '*':
      if (kind + other > 2) return refuse(run, mismatches.moreThanArea(run.text, node));
      run.dimension = (kind + other) as Dimension;
      return left * right;
    case '/':
      if (kind < other) return refuse(run, mismatches.dividedByLarger(run.text, node, kind, other));
      if (isNothing(right, other)) return refuse(run, mismatches.dividedByZero(run.text, node.right));
      run.dimension = (kind - other) as Dimension;
      return left / right;
  }
}

function root({ of, start, end }: RootNode, run: Run): number {
  const value = walk(of, run);
  if (run.fault) return NaN;
  if (run.dimension === 1) return refuse(run, mismatches.rootOfLength(run.text, of, { start, end }));
  if (value < 0 && !isNothing(value, run.dimension)) return refuse(run, mismatches.rootOfLess(run.text, of));
  run.dimension = run.dimension === 2 ? 1 : 0;
  return Math.sqrt(Math.max(0, value));
}

function extreme({ kind, of }: ExtremeNode, run: Run): number {
  let best = walk(of[0]!, run);
  const dimension = run.dimension;
  for (let i = 1; i < of.length; i++) {
    if (run.fault) return NaN;
    const value = walk(of[i]!, run);
    if (run.fault) return NaN;
    if (run.dimension !== dimension) return kindsDiffer(run, of[0]!, dimension, of[i]!, 'compared');
    best = kind === 'min' ? Math.min(best, value) : Math.max(best, value);
  }
  return best;
}

function rounded({ way, of, to }: RoundNode, run: Run): number {
  const value = walk(of, run);
  const dimension = run.dimension;
  if (run.fault) return NaN;
  const step = walk(to, run);
  if (run.fault) return NaN;
  if (run.dimension !== dimension) return kindsDiffer(run, of, dimension, to, 'rounded to each other');
  if (step < 0 || isNothing(step, dimension)) return refuse(run, mismatches.roundedToNothing(run.text, to));
  return steps(value / step, way, REST[dimension] / step) * step;
}

/**
 * What the rounding of floating-point sums may leave where nothing should be left, by kind: of numbers, mm and mm².
 * Far below any pleat, and far above that rounding for all that fits on a table.
 */
const REST = [1e-9, ON_MARK, 1e-4] as const;

const isNothing = (value: number, dimension: Dimension) => Math.abs(value) < REST[dimension];

/** A whole number of steps; half a step goes away from zero. `hair` is how far a count may fall short of a step. */
function steps(count: number, way: RoundNode['way'], hair: number): number {
  if (way === 'up') return Math.ceil(count - hair);
  if (way === 'down') return Math.floor(count + hair);
  return Math.sign(count) * Math.floor(Math.abs(count) + 0.5 + hair);
}

function kindsDiffer(run: Run, left: Node, kind: Dimension, right: Node, what: string): number {
  const edition = run.scope.edition ?? 'metric';
  return refuse(run, mismatches.kindsDiffer(run.text, [left, kind], [right, run.dimension], what, edition));
}

function refuse(run: Run, fault: Diagnostic<InText>): number {
  run.fault ??= fault;
  return NaN;
}
