import { THIN } from '../measure/index.ts';
import type { LineScope } from './tex.ts';
import { lineWriter } from './lines.ts';
import type { Formula, LengthNode, NameNode, Node, NumberNode } from './tree.ts';

/** The three lines of a worked sum as text that can be set in one line of type. */
export type TextLines = { names: string; numbers: string; result: string };

/**
 * A formula in three lines of plain text, for paper: with its names, with the numbers put in, and the result with its
 * relation sign. The same lines as `toTex`; a division stands on the line.
 *
 * @example toText(formula, scope).names // => 'packet width + 2 × ease'
 * @example toText(formula, scope).result // => '= 3¾ in'
 */
export function toText(formula: Formula, scope: LineScope): TextLines {
  const write = lineWriter(formula, scope, 'set', scope.format);
  const ends = { number: (node: NumberNode) => write.number(node), length: (node: LengthNode) => write.length(node) };
  const result = write.result();
  return {
    names: text(formula.tree, { ...ends, name: (node) => node.name }),
    numbers: text(formula.tree, { ...ends, name: (node) => guarded(write.value(node)) }),
    result: result.startsWith('≈') ? result : `=${THIN}${result}`,
  };
}

type Ends = {
  name: (node: NameNode) => string;
  number: (node: NumberNode) => string;
  length: (node: LengthNode) => string;
};

function text(node: Node, ends: Ends): string {
  const within = (part: Node, rank: number) => (ranks[part.kind] < rank ? `(${text(part, ends)})` : text(part, ends));
  switch (node.kind) {
    case 'name':
      return ends.name(node);
    case 'number':
      return ends.number(node);
    case 'length':
      return ends.length(node);
    case 'pi':
      return 'π';
    case 'root':
      return `the root of ${within(node.of, 4)}`;
    case 'minus':
      return `−${within(node.of, 2)}`;
    case 'min':
    case 'max':
      return `the ${extremes[node.kind]} of ${node.of.map((part) => text(part, ends)).join(' and ')}`;
    case 'round': {
      const way = node.way === 'nearest' ? '' : ` ${node.way}`;
      return `round${way} ${text(node.of, ends)} to ${within(node.to, 4)}`;
    }
    default: {
      const rank = ranks[node.kind];
      return `${within(node.left, rank)} ${signs[node.kind]} ${within(node.right, rank + 1)}`;
    }
  }
}

const signs = { '+': '+', '-': '−', '*': '×', '/': '÷' } as const;
const extremes = { min: 'smallest', max: 'largest' } as const;

/** How tightly each kind holds together, loosest first. */
const ranks = {
  ...{ round: 0, min: 0, max: 0, '+': 1, '-': 1, minus: 1, '*': 2, '/': 2 },
  ...{ root: 1.5, name: 4, number: 4, length: 4, pi: 4 },
} as const;

/** A value below zero in brackets: a sign may stand before it. */
const guarded = (value: string) => (/^(?:≈\s)?[−-]/u.test(value) ? `(${value})` : value);
