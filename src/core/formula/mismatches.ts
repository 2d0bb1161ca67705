/** What is said about a formula that reads well and cannot be worked out. */
import { quote, type Edition, type Diagnostic, type InText } from '../measure/index.ts';
import type { Dimension, JoinNode, NameNode, Node, Span } from './tree.ts';

const kinds = ['a plain number', 'a length', 'an area'] as const;

/** A part as the author wrote it, in quotation marks. */
const written = (text: string, { start, end }: Node) => quote(text.slice(start, end));

const at = ({ start, end }: Node) => ({ start, end });

/** Two parts of different kinds; a bare number among lengths gets the edition's unit, which it seems to lack. */
export function kindsDiffer(
  text: string,
  left: [Node, Dimension],
  right: [Node, Dimension],
  what: string,
  edition: Edition,
): Diagnostic<InText> {
  const [[small, smallKind], [large, largeKind]] = left[1] < right[1] ? [left, right] : [right, left];
  const pair = `${written(text, large)} is ${kinds[largeKind]} and ${written(text, small)} ${kinds[smallKind]}`;
  const code = 'kinds-differ';
  const also = at(large);
  const number = text.slice(small.start, small.end);
  if (small.kind !== 'number' || largeKind !== 1 || number.startsWith('(')) {
    return { severity: 'error', code, message: `${pair}. They cannot be ${what}.`, ...at(small), also };
  }
  const fix = `${number} ${edition === 'inch' ? 'in' : 'mm'}`;
  return { severity: 'error', code, message: `${pair}. Write “${fix}” if you mean a length.`, ...at(small), fix, also };
}

export function moreThanArea(text: string, node: JoinNode): Diagnostic<InText> {
  const product = `${written(text, node.left)} times ${written(text, node.right)}`;
  return {
    severity: 'error',
    code: 'more-than-area',
    message: `${product} is more than an area. Check what is multiplied.`,
    ...at(node),
  };
}

export function dividedByLarger(text: string, node: JoinNode, kind: Dimension, other: Dimension): Diagnostic<InText> {
  const { left, right } = node;
  const pair = `${written(text, left)} is ${kinds[kind]} and ${written(text, right)} ${kinds[other]}`;
  const code = 'divided-by-larger';
  const fix = `${text.slice(left.start, left.end)}/${text.slice(right.start, right.end)}`;
  // `3 / 4 in` is three over four inches; with the blanks left out it is three quarters of an inch.
  if (right.kind !== 'length' || !/^\d+\/\d+(?![\d.,/])/u.test(fix)) {
    return {
      severity: 'error',
      code,
      message: `${pair}. The one cannot be divided by the other.`,
      ...at(right),
      also: at(left),
    };
  }
  return { severity: 'error', code, message: `${pair}. Write “${fix}” if you mean a fraction.`, ...at(node), fix };
}

export function rootOfLength(text: string, of: Node, place: Span): Diagnostic<InText> {
  const message = `${written(text, of)} is a length, and a length has no root. An area has one: “root of (width * height)”.`;
  return { severity: 'error', code: 'root-of-length', message, ...place };
}

export function rootOfLess(text: string, of: Node): Diagnostic<InText> {
  const message = `${written(text, of)} is less than nothing, and has no root.`;
  return { severity: 'error', code: 'root-of-less', message, ...at(of) };
}

export function dividedByZero(text: string, node: Node): Diagnostic<InText> {
  const message = `${written(text, node)} is zero. Nothing can be divided by it.`;
  return { severity: 'error', code: 'divided-by-zero', message, ...at(node) };
}

export function roundedToNothing(text: string, node: Node): Diagnostic<InText> {
  const message = `${written(text, node)} is not more than zero. Nothing can be rounded to it.`;
  return { severity: 'error', code: 'rounded-to-nothing', message, ...at(node) };
}

export function restsOnFault(node: NameNode): Diagnostic<InText> {
  const message = `${quote(node.name)} has no value yet, because of a fault of its own.`;
  return { severity: 'error', code: 'rests-on-fault', message, ...at(node) };
}

export function notFinite(text: string, node: Node): Diagnostic<InText> {
  return {
    severity: 'error',
    code: 'not-finite',
    message: `${written(text, node)} does not come to a finite number.`,
    ...at(node),
  };
}
