import { THIN } from '../measure/index.ts';
import type { Scope } from './evaluate.ts';
import { lineWriter } from './lines.ts';
import type { Formula, LengthNode, NameNode, Node, NumberNode, Quantity } from './tree.ts';

/** The three lines of a worked sum, each as TeX for KaTeX. */
export type TexLines = { names: string; numbers: string; result: string };

/** A scope, and how its quantities are written: by default as `formatQuantity` sets them in the scope's edition. */
export type LineScope = Scope & { format?: (quantity: Quantity) => string };

const allowed = new Set(['unknownSymbol', 'symbolNotInFont', 'unicodeTextInMathMode', 'htmlExtension']);

/**
 * The settings of KaTeX under which these lines are accepted: its strictest, and beyond that only what the lines need,
 * which is real fractions and narrow blanks inside text, and `\htmlData` for the slots. The output is HTML alone,
 * because refilling a slot would leave KaTeX's hidden second copy behind; `toWords` gives the words in its place.
 */
export const texSettings = {
  throwOnError: true,
  output: 'html',
  strict: (code: string): 'ignore' | 'error' => (allowed.has(code) ? 'ignore' : 'error'),
  trust: ({ command }: { command: string }): boolean => command === '\\htmlData',
} as const;

/**
 * A formula in three lines for KaTeX: with its names, with the numbers put in, and the result with its relation sign
 * (`=`, or `≈` for a rounded result). What has no value shows as `?`. All measures are in the style `set`, where `␣`
 * below is the narrow no-break space.
 *
 * With `slots` every text that can change with the values or the edition is wrapped in `{\htmlData{slot=N}{\text{…}}}`,
 * where N counts from 0 through names (lengths written in the formula), numbers and result. KaTeX turns each into an
 * element with `data-slot="N"` and nothing but that text in it, which `slotTexts` gives anew.
 *
 * @example toTex(formula, scope).names // => '\\text{packet width} + 2 \\times \\text{ease}'
 * @example toTex(formula, scope).result // => '\\text{=␣3¾␣in}'
 */
export function toTex(formula: Formula, scope: LineScope & { slots?: boolean }): TexLines {
  let count = 0;
  // The outer braces keep the space round a sign out of the slot, where refilling would lose it.
  const slot = (text: string) => `{\\htmlData{slot=${count++}}{${texText(text)}}}`;
  return lines(formula, scope, scope.slots ? slot : texText);
}

/**
 * The texts of the slots of `toTex`, in order. For one formula there are equally many in every scope.
 *
 * @example slotTexts(formula, scope) // => ['3¼␣in', '¼␣in', '=␣3¾␣in']
 */
export function slotTexts(formula: Formula, scope: LineScope): string[] {
  const texts: string[] = [];
  lines(formula, scope, (text) => {
    texts.push(text);
    return '';
  });
  return texts;
}

/**
 * Any text as TeX for KaTeX, in upright letters. What means something to TeX goes in by its number, and so do letters
 * with accents, which KaTeX would build from two signs.
 *
 * @example texText('packet width') // => '\\text{packet width}'
 * @example texText('50 %') // => '\\text{50 \\char"25{}}'
 */
export function texText(text: string): string {
  const safe = text.normalize('NFC').replace(/[\\{}$&#%_~^]|\P{ASCII}/gu, (sign) => {
    const whole = !/[\\{}$&#%_~^]/u.test(sign) && sign.normalize('NFD') === sign;
    return whole ? sign : `\\char"${sign.codePointAt(0)!.toString(16).toUpperCase()}{}`;
  });
  return `\\text{${safe}}`;
}

/** Writes the lines in reading order; `changing` is given each text that can change, and gives its TeX. */
function lines(formula: Formula, scope: LineScope, changing: (text: string) => string): TexLines {
  const write = lineWriter(formula, scope, 'set', scope.format);
  const value = (text: string, first: boolean) => changing(first ? primed(text) : guarded(primed(text)));
  const number = (node: NumberNode) => fixed(write.number(node));
  const length = (node: LengthNode, first: boolean) => value(write.length(node), first);
  return {
    names: tex(formula.tree, { name: (node) => texText(node.name), number, length }),
    numbers: tex(formula.tree, { name: (node, first) => value(write.value(node), first), number, length }),
    result: changing(related(primed(write.result()))),
  };
}

/** How the ends of the tree are written. `first`: nothing stands to the left, so a minus sign needs no brackets. */
type Leaves = {
  name: (node: NameNode, first: boolean) => string;
  number: (node: NumberNode) => string;
  length: (node: LengthNode, first: boolean) => string;
};

function tex(node: Node, leaves: Leaves, first = true): string {
  switch (node.kind) {
    case 'name':
      return leaves.name(node, first);
    case 'number':
      return leaves.number(node);
    case 'length':
      return leaves.length(node, first);
    case 'pi':
      return '\\pi';
    case 'root':
      return `\\sqrt{${tex(node.of, leaves)}}`;
    case 'minus':
      return `-${within(node.of, 2, leaves, false)}`;
    case 'min':
    case 'max':
      return `\\${node.kind}\\left(${node.of.map((part) => tex(part, leaves)).join(', ')}\\right)`;
    case 'round': {
      const way = node.way === 'nearest' ? '' : `${node.way} `;
      return `\\text{round ${way}}${tex(node.of, leaves)}\\text{ to }${within(node.to, 4, leaves, true)}`;
    }
    case '/':
      // Never smaller than the text: the numbers in it are read at arm's length.
      return `\\dfrac{${tex(node.left, leaves)}}{${tex(node.right, leaves)}}`;
    default: {
      const rank = ranks[node.kind];
      const left = within(node.left, rank, leaves, first);
      return `${left} ${signs[node.kind]} ${within(node.right, rank + 1, leaves, false)}`;
    }
  }
}

const signs = { '+': '+', '-': '-', '*': '\\times' } as const;

/** How tightly each kind holds together, loosest first. A fraction bar holds its parts by itself. */
const ranks = {
  ...{ round: 0, '+': 1, '-': 1, minus: 1, '*': 2 },
  ...{ '/': 4, min: 4, max: 4, root: 4, name: 4, number: 4, length: 4, pi: 4 },
} as const;

/** A part of a larger whole, in brackets where it holds together less tightly than `rank`. */
function within(node: Node, rank: number, leaves: Leaves, first: boolean): string {
  return ranks[node.kind] < rank ? `\\left(${tex(node, leaves)}\\right)` : tex(node, leaves, first);
}

/** A value below zero in brackets, for a place where a sign stands before it. */
const guarded = (text: string) => (/^(?:≈\s)?[−-]/u.test(text) ? `(${text})` : text);

const related = (text: string) => (text.startsWith('≈') ? text : `=${THIN}${text}`);

/** A number that never changes: digits as mathematics, a fraction as text. */
const fixed = (text: string) => (/^\d+(?:\.\d+)?$/u.test(text) ? text : texText(text));

/** KaTeX would curl straight quotation marks; after a number they are feet and inches. */
const primed = (text: string) => text.replaceAll('"', '″').replaceAll("'", '′');
