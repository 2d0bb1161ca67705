import { THIN } from '../measure/index.ts';
import { writer, type LineScope } from './lines.ts';
import type { Formula, LengthNode, NameNode, Node, NumberNode } from './tree.ts';

/** The three lines of a worked sum, each as TeX for KaTeX. */
export type TexLines = { names: string; numbers: string; result: string };

/**
 * The settings of KaTeX under which these lines are accepted, and only what they need beyond its strictest: real
 * fractions and narrow blanks inside text, and `\htmlData` for the slots. `output: 'html'`, because a slot that is
 * refilled would leave the hidden MathML copy behind; give the reader's words with `toWords`.
 */
export const texSettings = {
  throwOnError: true,
  output: 'html',
  strict: (code: string): 'ignore' | 'error' => (allowed.has(code) ? 'ignore' : 'error'),
  trust: ({ command }: { command: string }): boolean => command === '\\htmlData',
} as const;

const allowed = new Set(['unknownSymbol', 'symbolNotInFont', 'unicodeTextInMathMode', 'htmlExtension']);

/**
 * A formula in three lines for KaTeX: with its names, with the numbers put in, and the result with its relation sign
 * (`=`, or `≈` for a rounded result). What has no value shows as `?`.
 *
 * With `slots` every text that can change with the values or the edition is wrapped in `\htmlData{slot=N}{\text{…}}`,
 * where N counts from 0 through names (lengths written in the formula), numbers and result. KaTeX turns it into an
 * element with `data-slot="N"`, whose text `slotTexts` gives anew.
 *
 * @example toTex(formula, scope).names // => '\\text{packet width} + 2 \\times \\text{ease}'
 * @example toTex(formula, scope).result // => '\\text{= 3¾ in}'
 */
export function toTex(formula: Formula, scope: LineScope & { slots?: boolean }): TexLines {
  let count = 0;
  return lines(formula, scope, (text) => {
    const shown = `\\text{${escape(text)}}`;
    return scope.slots ? `\\htmlData{slot=${count++}}{${shown}}` : shown;
  });
}

/**
 * The texts of the slots of `toTex`, in order. For one formula their number is the same in every scope.
 *
 * @example slotTexts(formula, scope) // => ['3¼ in', '¼ in', '= 3¾ in']
 */
export function slotTexts(formula: Formula, scope: LineScope): string[] {
  const texts: string[] = [];
  lines(formula, scope, (text) => {
    texts.push(text);
    return '';
  });
  return texts;
}

/** Writes the lines in reading order; `changing` is given each text that can change, and gives its TeX. */
function lines(formula: Formula, scope: LineScope, changing: (text: string) => string): TexLines {
  const write = writer(formula, scope, 'set');
  const length = (node: LengthNode, first: boolean) => changing(signed(prime(write.length(node)), first));
  const number = (node: NumberNode) => fixed(write.number(node));
  const names: Leaves = { name: ({ name }) => `\\text{${escape(name)}}`, length, number };
  const numbers: Leaves = { name: (node, first) => changing(signed(prime(write.value(node)), first)), length, number };
  return {
    names: tex(formula.tree, names),
    numbers: tex(formula.tree, numbers),
    result: changing(related(prime(write.result()))),
  };
}

/** How the ends of the tree are written. `first`: nothing stands to the left, so a minus sign needs no brackets. */
type Leaves = {
  name(node: NameNode, first: boolean): string;
  length(node: LengthNode, first: boolean): string;
  number(node: NumberNode): string;
};

function tex(node: Node, leaves: Leaves, first = true): string {
  switch (node.kind) {
    case 'name':
      return leaves.name(node, first);
    case 'length':
      return leaves.length(node, first);
    case 'number':
      return leaves.number(node);
    case 'minus':
      return `-${within(node.of, 2, leaves, false)}`;
    case 'min':
    case 'max':
      return `\\${node.kind}\\left(${node.of.map((part) => tex(part, leaves)).join(', ')}\\right)`;
    case 'round': {
      const way = node.way === 'nearest' ? '' : ` ${node.way}`;
      return `\\text{round${way} }${tex(node.of, leaves)}\\text{ to }${within(node.to, 4, leaves, true)}`;
    }
    case '/':
      return `\\frac{${tex(node.left, leaves)}}{${tex(node.right, leaves)}}`;
    default: {
      const rank = ranks[node.kind];
      const left = within(node.left, rank, leaves, first);
      return `${left} ${signs[node.kind]} ${within(node.right, rank + 1, leaves, false)}`;
    }
  }
}

const signs = { '+': '+', '-': '-', '*': '\\times' } as const;

/** How tightly each kind holds together, loosest first. */
const ranks = {
  round: 0,
  '+': 1,
  '-': 1,
  '*': 2,
  minus: 1,
  '/': 4,
  min: 4,
  max: 4,
  name: 4,
  length: 4,
  number: 4,
} as const;

/** A part of a larger whole, in brackets where it holds together less tightly than `rank`. */
function within(node: Node, rank: number, leaves: Leaves, first: boolean): string {
  return ranks[node.kind] < rank ? `\\left(${tex(node, leaves)}\\right)` : tex(node, leaves, first);
}

/** A value below zero, in brackets where a sign stands before it. */
const signed = (text: string, first: boolean) => (!first && /^[−-]/u.test(text) ? `(${text})` : text);

const related = (text: string) => (text.startsWith('≈') ? text : `=${THIN}${text}`);

const fixed = (text: string) => (/^\d+(?:\.\d+)?$/u.test(text) ? text : `\\text{${escape(text)}}`);

/** KaTeX would curl straight quotation marks; after a number they are feet and inches. */
const prime = (text: string) => text.replace(/"/gu, '″').replace(/'/gu, '′');

const special: Record<string, string> = {
  '\\': '\\textbackslash{}',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
};

/** Any text, made safe inside `\text{…}`. */
const escape = (text: string) => text.replace(/[\\{}$&#%_~^]/gu, (sign) => special[sign] ?? `\\${sign}`);
