import type { Scope } from './evaluate.ts';
import { lineWriter, type LineWriter } from './lines.ts';
import type { Formula, NameNode, Node } from './tree.ts';

/**
 * The three lines of `toTex` as one plain sentence, for screen readers.
 *
 * @example toWords(formula('2 * ease'), scope) // => '2 times ease, that is 2 times a quarter of an inch, which makes half an inch.'
 */
export function toWords(formula: Formula, scope: Scope): string {
  const write = lineWriter(formula, scope, 'spoken');
  const names = say(formula.tree, write, ({ name }) => name);
  const numbers = say(formula.tree, write, write.value);
  return `${names}, that is ${numbers}, which makes ${write.result()}.`;
}

function say(node: Node, write: LineWriter, name: (node: NameNode) => string): string {
  const whole = (part: Node) => say(part, write, name);
  const within = (part: Node, rank: number) =>
    ranks[part.kind] < rank ? `open bracket ${whole(part)} close bracket` : whole(part);
  switch (node.kind) {
    case 'name':
      return name(node);
    case 'number':
      return write.number(node);
    case 'length':
      return write.length(node);
    case 'pi':
      return 'pi';
    case 'root':
      return `the root of ${within(node.of, 4)}`;
    case 'minus':
      return `minus ${within(node.of, 2)}`;
    case 'min':
    case 'max': {
      const parts = node.of.map(whole);
      const last = parts.pop()!;
      if (parts.length === 0) return last;
      return `the ${extremes[node.kind]} of ${parts.join(', ')} and ${last}`;
    }
    case 'round': {
      const way = node.way === 'nearest' ? '' : ` ${node.way}`;
      return `round${way} ${whole(node.of)} to ${within(node.to, 4)}`;
    }
    default: {
      const rank = ranks[node.kind];
      return `${within(node.left, rank)} ${joints[node.kind]} ${within(node.right, rank + 1)}`;
    }
  }
}

const extremes = { min: 'smallest', max: 'largest' } as const;

const joints = { '+': 'plus', '-': 'minus', '*': 'times', '/': 'divided by' } as const;

/** How tightly each kind holds together when it is heard, loosest first. */
const ranks = {
  ...{ round: 0, min: 0, max: 0, '+': 1, '-': 1, minus: 1, '*': 2, '/': 2 },
  ...{ root: 1.5, name: 4, number: 4, length: 4, pi: 4 },
} as const;
