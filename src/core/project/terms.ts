/** Terms: formulas while they are put together, each with its text and its tree. */
import { formatLength } from '../measure/index.ts';
import type { Grid } from '../measure/index.ts';
import type { Node, Operator } from '../formula/index.ts';
import type { RawValue } from './raw-value.ts';

export type Term = {
  /** As people write it; not to be shown where `sayable` is false. */
  text: string;
  /** Its spans count in `text`. */
  tree: Node;
  /** Needs brackets inside a longer term. */
  loose: boolean;
  /** Whether its text says all of it. A length stated for both editions, or off the marks, has no text. */
  sayable: boolean;
};

export type Signed = [sign: '+' | '-', term: Term];

/** What needs no brackets inside a longer term. */
const ATOMS: ReadonlySet<string> = new Set(['name', 'number', 'length', 'pi', 'min', 'max']);

/** A measure or a part of a piece. */
export function nameTerm(name: string): Term {
  return atom(name, { kind: 'name', name, start: 0, end: name.length });
}

/** A whole number, from 0 up. */
export function numberTerm(value: number): Term {
  const text = String(value);
  return atom(text, { kind: 'number', value, start: 0, end: text.length });
}

/** A value of the file. */
export function rawTerm(raw: RawValue, grid: Grid): Term {
  if (raw.kind === 'formula') {
    const { tree } = raw.formula;
    const blanks = raw.text.length - raw.text.trimStart().length;
    return { text: raw.text.trim(), tree: moved(tree, -blanks), loose: !ATOMS.has(tree.kind), sayable: true };
  }
  const { inch, metric } = raw.stated;
  const edition = inch === undefined ? 'metric' : 'inch';
  const value = inch ?? metric!;
  const text = formatLength(value, edition, { grid });
  const other = edition === 'inch' ? metric : undefined;
  const [start, end] = [0, text.length];
  const sayable = other === undefined && !text.startsWith('≈');
  const tree: Node =
    value < 0
      ? { kind: 'minus', of: { kind: 'length', value: -value, edition, start: 1, end }, start, end }
      : { kind: 'length', value, edition, start, end };
  if (other === undefined) return { ...atom(text, tree), sayable };
  return { ...atom(text, { kind: 'length', value, edition, other, start, end }), sayable };
}

/** Terms added to and taken from each other, in their order. The first has no sign. */
export function sum(...parts: [Signed, ...Signed[]]): Term {
  const [[, first], ...others] = parts;
  return others.reduce((left, [sign, right]) => joined(left, sign, inBrackets(right), true), bare(first));
}

/** Terms multiplied by each other. */
export function product(first: Term, ...others: Term[]): Term {
  return others.reduce((left, right) => joined(left, '*', inBrackets(right), false), inBrackets(first));
}

/** One term divided by another. */
export const quotient = (left: Term, right: Term): Term => joined(inBrackets(left), '/', inBrackets(right), false);

/** One less than a number of things. */
export function oneLess(term: Term): Term {
  return joined(inBrackets(term), '-', numberTerm(1), true);
}

const atom = (text: string, tree: Node): Term => ({ text, tree, loose: false, sayable: true });

function joined(left: Term, kind: Operator, right: Term, loose: boolean): Term {
  const before = `${left.text} ${kind} `;
  const behind = moved(right.tree, before.length);
  return {
    text: before + right.text,
    tree: { kind, left: left.tree, right: behind, start: left.tree.start, end: behind.end },
    loose,
    sayable: left.sayable && right.sayable,
  };
}

function inBrackets(term: Term): Term {
  if (!term.loose) return term;
  const text = `(${term.text})`;
  return { ...term, text, tree: { ...moved(term.tree, 1), start: 0, end: text.length }, loose: false };
}

/** A term without brackets of its own that only hold a single thing. */
function bare(term: Term): Term {
  if (term.loose || !term.text.startsWith('(') || !ATOMS.has(term.tree.kind)) return term;
  const text = term.text.slice(1, -1);
  return { ...term, text, tree: { ...moved(term.tree, -1), start: 0, end: text.length } };
}

/** The same tree in a text that starts so many characters earlier. */
function moved<N extends Node>(node: N, by: number): N;
function moved(node: Node, by: number): Node {
  if (by === 0) return node;
  const span = { start: node.start + by, end: node.end + by };
  switch (node.kind) {
    case 'name':
    case 'number':
    case 'length':
    case 'pi':
      return { ...node, ...span };
    case 'minus':
    case 'root':
      return { ...node, ...span, of: moved(node.of, by) };
    case 'min':
    case 'max':
      return { ...node, ...span, of: node.of.map((part) => moved(part, by)) };
    case 'round':
      return { ...node, ...span, of: moved(node.of, by), to: moved(node.to, by) };
    default:
      return { ...node, ...span, left: moved(node.left, by), right: moved(node.right, by) };
  }
}
