import { writer, type LineScope, type Writer } from './lines.ts';
import type { Formula, Node } from './tree.ts';

/**
 * The three lines of `toTex` as one plain sentence, for screen readers.
 *
 * @example toWords(formula, scope) // => 'packet width plus 2 times ease, that is 3 and a quarter inches plus …'
 */
export function toWords(formula: Formula, scope: LineScope): string {
  const write = writer(formula, scope, 'spoken');
  const names = say(formula.tree, write, ({ name }) => name);
  const numbers = say(formula.tree, write, write.value);
  return `${names}, that is ${numbers}, which makes ${write.result()}.`;
}

const joints = { '+': 'plus', '-': 'minus', '*': 'times', '/': 'divided by' } as const;

const ranks = {
  round: 0,
  '+': 1,
  '-': 1,
  '*': 2,
  '/': 2,
  minus: 1,
  min: 4,
  max: 4,
  name: 4,
  length: 4,
  number: 4,
} as const;

function say(node: Node, write: Writer, name: Writer['value']): string {
  const part = (child: Node, rank: number): string =>
    ranks[child.kind] < rank ? `open bracket ${say(child, write, name)} close bracket` : say(child, write, name);
  switch (node.kind) {
    case 'name':
      return name(node);
    case 'length':
      return write.length(node);
    case 'number':
      return write.number(node);
    case 'minus':
      return `minus ${part(node.of, 2)}`;
    case 'min':
    case 'max': {
      const all = node.of.map((child) => say(child, write, name)).join(', and ');
      return `the ${node.kind === 'min' ? 'smallest' : 'largest'} of ${all}`;
    }
    case 'round': {
      const way = node.way === 'nearest' ? '' : ` ${node.way}`;
      return `round${way} ${say(node.of, write, name)} to ${part(node.to, 4)}`;
    }
    default: {
      const rank = ranks[node.kind];
      return `${part(node.left, rank)} ${joints[node.kind]} ${part(node.right, rank + 1)}`;
    }
  }
}
