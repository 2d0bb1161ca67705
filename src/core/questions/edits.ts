/**
 * Where people go wrong in a sum: every place of a formula, and what they write there instead.
 *
 * An edit is a piece of new text for a part of the formula's own text, so that the altered formula is read like any
 * other and can be shown, worked out and set in TeX.
 */
import type { Formula, Node, NumberNode, RoundNode } from '../formula/index.ts';

/** What was done to a formula. The order is how common each is in class: common practice, no source. */
export const slipKinds = [
  'left-out',
  'one-side',
  'alone',
  'unit',
  'finished-for-cut',
  'cut-for-finished',
  'twice',
  'one-too-many',
  'one-too-few',
  'width-height',
  'wrong-sign',
  'rounded-down',
  'rounded-up',
  'not-rounded',
  'other-mark',
  'rough-constant',
  'half',
  'whole',
  'brackets',
  'smaller-for-larger',
  'larger-for-smaller',
] as const;
export type SlipKind = (typeof slipKinds)[number];

/** A measure that is easily taken for another one. */
export type Partner = {
  kind: Extract<SlipKind, 'finished-for-cut' | 'cut-for-finished' | 'width-height'>;
  name: string;
};

export type Edit = {
  kind: SlipKind;
  /** The part whose text is replaced, and the text that stands there instead. */
  at: Node;
  text: string;
  /** The part that the slip is about: what was left out, doubled, rounded. */
  about: Node;
  /** Other parts that the same was done to. */
  with?: readonly Node[];
  /** How often the right sum takes that part, how often it was taken, and whether it is added or taken away. */
  times?: number;
  took?: number;
  sign?: '+' | '-';
  /** What was taken in its place. */
  instead?: string;
  /** The part is a number of things, and not what is taken so many times. */
  isCount?: boolean;
};

/** What the edits need to know about names; without it, what depends on it is left out. */
export type Names = {
  isCount?: (name: string) => boolean;
  partners?: (name: string) => Partner[];
  /** What a part comes to that is a plain number; undefined for a size. */
  plain?: (node: Node) => number | undefined;
};

/** Of a longer sum not every selection of parts is thought of as left out. */
const LONGEST_SUM = 6;

/** Numbers that stand for an irrational one, what people take for it, and what it is called. */
const constants = [
  { exact: Math.SQRT2, rough: '1.4', called: 'the square root of 2' },
  { exact: Math.PI, rough: '3', called: 'pi' },
] as const;

/** The irrational number that a plain number of a formula, the word pi or a root stands for. */
export function constantAt(node: Node) {
  const value = plainValue(node);
  return value === undefined ? undefined : constants.find(({ exact }) => Math.abs(value - exact) < 0.005);
}

function plainValue(node: Node): number | undefined {
  if (node.kind === 'number') return node.value;
  if (node.kind === 'pi') return Math.PI;
  return node.kind === 'root' && node.of.kind === 'number' ? Math.sqrt(node.of.value) : undefined;
}

/** Every edit of a formula, in reading order. */
export function edits(formula: Formula, names: Names = {}): Edit[] {
  const found: Edit[] = [];
  const written = (node: Node) => formula.text.slice(node.start, node.end);
  const add = (kind: SlipKind, at: Node, text: string, about: Node, more: Partial<Edit> = {}) =>
    void found.push({ kind, at, text, about, ...more });

  /** Looks through a sum; what is no sum is a sum of one term. `counted` is what the sum says how often to take. */
  function visit(sum: Node, counted?: Node): void {
    const all = terms(sum);
    const parts = all.map(({ sign, node }): Part => ({ sign, text: written(node) }));
    const put = (i: number, ...instead: Part[]) => joined([...parts.slice(0, i), ...instead, ...parts.slice(i + 1)]);
    const isWhole = sum === formula.tree;
    const withNumber = all.some(({ node }) => node.kind === 'number');
    const taken = all.map(({ node }) => timesOf(node, written, names));
    for (const [i, { sign, node }] of all.entries()) {
      const extra = i > 0;
      if (node.kind === 'number') {
        if (extra) {
          const [less, more] = sign === '-' ? missCounts.toReversed() : missCounts;
          const [about, how] = [counted ?? all[0]!.node, { isCount: !counted }];
          add(less!, sum, put(i), about, how);
          add(more!, sum, put(i, { sign, text: `2 * ${written(node)}` }), about, how);
        } else descend(node, withNumber, counted);
        continue;
      }
      const { times, text, about, total } = taken[i]!;
      const take = (n: number) => put(i, { sign, text: n === 1 ? text : `${n} * ${text}` });
      const how = { times: total, sign };
      if (all.length > 1 && (extra || all[1]!.sign === '+')) add('left-out', sum, put(i), about, how);
      if (times === 2) add('one-side', sum, take(1), about, { ...how, took: total / 2 });
      if (times > 2 && total === times) {
        add('one-too-few', sum, take(times - 1), about, how);
        add('one-too-many', sum, take(times + 1), about, how);
      }
      if (total > 2) add('one-side', sum, put(i, { sign, text: written(about) }), about, { ...how, took: 1 });
      if (total <= 2 && all.length > 1) add('twice', sum, take(2 * times), about, how);
      if (extra) add('wrong-sign', sum, put(i, { sign: sign === '+' ? '-' : '+', text: written(node) }), about, how);
      descend(node, withNumber, counted);
    }
    if (all.length > LONGEST_SUM || withNumber) return;
    // Several parts at once, and all but one.
    const indexes = all.map((_, i) => i);
    for (const gone of selections(indexes)) {
      const left = indexes.filter((i) => !gone.includes(i));
      const [only] = left.length === 1 && isWhole ? left : [];
      if (only !== undefined && (gone.length > 1 || all[only]!.sign === '-')) {
        const { about, text, times } = taken[only]!;
        add('alone', sum, times === 1 ? written(all[only]!.node) : `${times} * ${text}`, about);
      } else if (gone.length > 1 && left.length > 0 && all[left[0]!]!.sign === '+') {
        const [about, ...others] = gone.map((i) => taken[i]!.about);
        add('left-out', sum, joined(left.map((i) => parts[i]!)), about!, { with: others });
      }
    }
    for (const once of selections(indexes.filter((i) => taken[i]!.times === 2 && taken[i]!.total === 2))) {
      if (once.length < 2) continue;
      const [about, ...others] = once.map((i) => taken[i]!.about);
      const text = joined(parts.map((part, i) => (once.includes(i) ? { ...part, text: taken[i]!.text } : part)));
      add('one-side', sum, text, about!, { with: others, times: 2, took: 1, sign: all[once[0]!]!.sign });
    }
  }

  function descend(node: Node, withNumber: boolean, counted?: Node): void {
    switch (node.kind) {
      case 'name':
        for (const { kind, name } of names.partners?.(node.name) ?? []) add(kind, node, name, node, { instead: name });
        // `pockets - 1` already says where one goes wrong by one.
        if (withNumber || !names.isCount?.(node.name)) return;
        add('one-too-few', node, `${node.name} - 1`, counted ?? node, { isCount: !counted });
        add('one-too-many', node, `${node.name} + 1`, counted ?? node, { isCount: !counted });
        return;
      case 'number':
      case 'pi':
      case 'root': {
        const constant = constantAt(node);
        if (constant) add('rough-constant', node, constant.rough, node, { instead: constant.called });
        else if (node.kind === 'root') visit(node.of);
        return;
      }
      case 'minus':
        return visit(node.of);
      case 'min':
      case 'max': {
        const listed = node.of.map(written).join(', ');
        if (node.kind === 'max') add('smaller-for-larger', node, `min(${listed})`, node.of[0]!);
        else add('larger-for-smaller', node, `max(${listed})`, node.of[0]!);
        return node.of.forEach((part) => visit(part));
      }
      case 'round':
        roundings(node);
        return visit(node.of);
      case '*':
      case '/': {
        const { left, right } = node;
        if (node.kind === '/' ? isNumber(right, 2) : isNumber(right, 0.5)) add('whole', node, written(left), left);
        if (node.kind === '*' && isNumber(left, 0.5)) add('whole', node, written(right), right);
        // Without the brackets the sign reaches the nearest term only.
        const [before, after] = [terms(left), terms(right)];
        if (before.length > 1) {
          const last = before.at(-1)!;
          const parts = before.map(({ sign, node }): Part => ({ sign, text: written(node) }));
          const reached = { sign: last.sign, text: `${written(last.node)} ${node.kind} ${written(right)}` };
          add('brackets', node, joined([...parts.slice(0, -1), reached]), last.node);
        }
        if (after.length > 1) {
          const [first, ...rest] = after.map(({ sign, node }): Part => ({ sign, text: written(node) }));
          const reached: Part = { sign: '+', text: `${written(left)} ${node.kind} ${first!.text}` };
          add('brackets', node, joined([reached, ...rest]), after[0]!.node);
        }
        visit(left, isPlain(right) ? undefined : right);
        return visit(right, isPlain(left) ? undefined : left);
      }
    }
  }

  function roundings(node: RoundNode): void {
    const { of, to, way } = node;
    const round = (how: RoundNode['way'], step: string) =>
      `round ${how === 'nearest' ? '' : `${how} `}(${written(of)}) to (${step})`;
    if (way !== 'down') add('rounded-down', node, round('down', written(to)), of);
    if (way !== 'up') add('rounded-up', node, round('up', written(to)), of);
    add('not-rounded', node, written(of), of);
    add('other-mark', node, round(way, `2 * ${written(to)}`), of);
    add('other-mark', node, round(way, `${written(to)} / 2`), of);
  }

  visit(formula.tree);
  return found;
}

type Term = { sign: '+' | '-'; node: Node };
type Part = { sign: '+' | '-'; text: string };

const missCounts: readonly SlipKind[] = ['one-too-few', 'one-too-many'];

/** The terms of a sum from left to right, through the brackets of its first term. */
function terms(node: Node): Term[] {
  if (node.kind !== '+' && node.kind !== '-') return [{ sign: '+', node }];
  return [...terms(node.left), { sign: node.kind, node: node.right }];
}

const joined = (parts: readonly Part[]) =>
  parts.map(({ sign, text }, i) => (i === 0 ? text : ` ${sign} ${text}`)).join('');

type Taken = {
  /** The whole number that stands before it, and the rest of the product. */
  times: number;
  text: string;
  /** The size that is taken so often, and how often in all where that is a whole number, else 1. */
  about: Node;
  total: number;
};

/** `2 * seam` as twice the seam, `2 * pockets * depth` as so many times the depth; anything else as once itself. */
function timesOf(node: Node, written: (node: Node) => string, { plain }: Names): Taken {
  const all = factors(node);
  const i = all.length > 1 ? all.findIndex((factor) => factor.kind === 'number' && Number.isInteger(factor.value)) : -1;
  const first = (all[i] as NumberNode | undefined)?.value ?? 1;
  const times = first < 2 ? 1 : first;
  const others = times === 1 ? all : all.toSpliced(i, 1);
  const sizes = all.filter((factor) => factor.kind !== 'number' && plain?.(factor) === undefined);
  const counts = all.filter((factor) => !sizes.includes(factor));
  const product = counts.reduce(
    (product, factor) => product * (factor.kind === 'number' ? factor.value : plain!(factor)!),
    1,
  );
  const counted = plain && sizes.length === 1 && counts.length > 0 && Number.isInteger(product) && product > 0;
  const rest = { times, text: times === 1 ? written(node) : others.map(written).join(' * ') };
  if (counted) return { ...rest, about: sizes[0]!, total: product };
  return { ...rest, about: times === 1 ? node : others.at(-1)!, total: times };
}

/** Every selection of some of the things, and of all. */
function selections<T>(things: readonly T[]): T[][] {
  const all = Array.from({ length: 2 ** things.length }, (_, bits) => things.filter((_, i) => bits & (1 << i)));
  return all.slice(1);
}

const factors = (node: Node): Node[] => (node.kind === '*' ? [...factors(node.left), node.right] : [node]);

const isPlain = (node: Node) => node.kind === 'number';
const isNumber = (node: Node, value: number) => node.kind === 'number' && node.value === value;

/** The formula's text with an edit made. What is no longer the whole is put in brackets. */
export function edited(formula: Formula, { at, text }: Pick<Edit, 'at' | 'text'>): string {
  if (at === formula.tree) return text;
  return `${formula.text.slice(0, at.start)}(${text})${formula.text.slice(at.end)}`;
}

/** The names in a part, each once, in order. */
export function namesOf(node: Node): string[] {
  switch (node.kind) {
    case 'name':
      return [node.name];
    case 'number':
    case 'length':
    case 'pi':
      return [];
    case 'minus':
    case 'root':
      return namesOf(node.of);
    case 'min':
    case 'max':
      return [...new Set(node.of.flatMap(namesOf))];
    case 'round':
      return [...new Set([...namesOf(node.of), ...namesOf(node.to)])];
    default:
      return [...new Set([...namesOf(node.left), ...namesOf(node.right)])];
  }
}
