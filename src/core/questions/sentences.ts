/** What is said about each slip: second person, kind, and under twenty words a sentence. */
import { inSentence, listed, quote } from '../measure/index.ts';
import { constantAt, namesOf, type Edit } from './edits.ts';
import type { Formula, Node } from '../formula/index.ts';
import type { Pattern } from '../project/pattern.ts';
import type { UnitName } from './units.ts';

export type Wording = {
  /** What learners read for a measure. */
  label?: (name: string) => string | undefined;
  /** What a sentence calls it, where the label is no part of a sentence. */
  spoken?: (name: string) => string | undefined;
  /** Which two edges of what the sum is about take a measure each, where the pattern tells. */
  edges?: ((name: string) => Edges | undefined) | undefined;
  /** The name of the measure that is asked for. */
  asked?: string | undefined;
};

/** One or two sentences that say what an edit did, and what is wanted instead. */
export function sayEdit(edit: Edit, formula: Formula, wording: Wording): string {
  const { kind, at, about, times = 1, took = 1, sign = '+', instead } = edit;
  const written = (node: Node) => formula.text.slice(node.start, node.end);
  /** A part that is a sum of its own is said by what it holds. */
  const say = (node: Node) => {
    const names = namesOf(node);
    return names.length > 0 ? names.map((name) => called(name, wording)) : [quote(written(node))];
  };
  const all = [about, ...(edit.with ?? [])];
  const said = [...new Set(all.flatMap(say))];
  const thing = listed(said);
  const isOne = said.length === 1;
  const edges = times === 2 ? edgesOf(all, wording) : undefined;
  const whole = at === formula.tree && about === at;
  switch (kind) {
    case 'left-out':
      if (all.length > 1) return `You left out ${thing}. ${all.length > 2 ? 'They all' : 'Both'} belong in the sum.`;
      return `You left out ${thing}. ${needed(edges, times, sign, isOne)}`;
    case 'one-side': {
      const did = sign === '-' ? 'took away' : edges ? 'added' : 'counted';
      if (edges) return `You ${did} ${thing} ${edges.once}. ${edges.take(all.length)}`;
      const often = took === 1 ? 'only once' : `${took} times`;
      return `You ${did} ${thing} ${often}. ${needed(edges, times, sign, isOne)}`;
    }
    case 'alone':
      return `That is ${thing} alone. The rest of the sum is missing.`;
    case 'twice': {
      const did = sign === '-' ? 'took away' : 'added';
      if (times === 1) return `You ${did} ${thing} twice. Once is enough.`;
      if (edges) return `You ${did} ${thing} twice ${edges.each}. Once ${edges.each} is enough.`;
      return `You ${sign === '-' ? did : 'counted'} ${thing} four times. Twice is enough.`;
    }
    case 'wrong-sign':
      return `You ${sign === '+' ? 'took away' : 'added'} ${thing}. ${needed(undefined, 1, sign, isOne)}`;
    case 'one-too-many':
      return edit.isCount
        ? `You counted one too many. Look again at ${thing}.`
        : `You counted ${thing} one time too many.`;
    case 'one-too-few':
      return edit.isCount
        ? `You counted one too few. Look again at ${thing}.`
        : `You counted ${thing} one time too few.`;
    case 'rounded-down':
      return `You rounded down. ${wayOf(at, written)}`;
    case 'rounded-up':
      return `You rounded up. ${wayOf(at, written)}`;
    case 'not-rounded':
      return `You did not round. ${wayOf(at, written)}`;
    case 'other-mark':
      return `You rounded to another mark. ${wayOf(at, written)}`;
    case 'rough-constant': {
      const exact = constantAt(about)?.exact ?? 0;
      return `You took ${edit.text} for ${instead}. Use more digits, such as ${exact.toFixed(4)}.`;
    }
    case 'half':
      return 'That is half of it. The whole is wanted.';
    case 'whole':
      return whole ? 'That is twice as much as is wanted.' : `You took the whole of ${thing}. Half of it is wanted.`;
    case 'brackets':
      return `You multiplied or divided ${thing} alone. The whole sum in the brackets is meant.`;
    case 'smaller-for-larger':
      return 'You took the smaller size. The larger one is wanted here.';
    case 'larger-for-smaller':
      return 'You took the larger size. The smaller one is wanted here.';
    case 'finished-for-cut':
      return whole
        ? 'That is the finished size. The cut size is asked.'
        : 'You used a finished size. The cut size belongs here.';
    case 'cut-for-finished':
      return whole
        ? 'That is the cut size. The finished size is asked.'
        : 'You used a cut size. The finished size belongs here.';
    case 'width-height': {
      const other = called(instead ?? '', wording);
      if (!whole) return `You used ${other}. The sum needs ${thing}.`;
      const meant = called(wording.asked ?? '', wording);
      return `That is ${other}. You are asked for ${meant}.`;
    }
    case 'unit':
      return 'Check the unit.';
  }
}

/** What is said when a number was right in one unit and read in another. */
export const sayUnit = (meant: UnitName, read: UnitName): string =>
  `Your number is right in ${meant}, but it was read as ${read}. Check the unit.`;

/**
 * A measure as a sentence calls it: by its label where that is a short name or says what it is, or else by its own name.
 *
 * @example called('seam', { label: () => 'Seam allowance' }) // => 'the seam allowance'
 * @example called('per edge', { label: () => 'What each edge takes' }) // => 'what each edge takes'
 */
export function called(name: string, { label, spoken }: Wording): string {
  const said = spoken?.(name);
  if (said !== undefined) return `the ${said}`;
  const shown = label?.(name);
  if (shown === undefined) return `the ${name}`;
  if (/^what(?: \p{L}+){1,6}$/iu.test(shown)) return shown.charAt(0).toLowerCase() + shown.slice(1);
  const short = /^\p{L}+(?: \p{L}+){0,2}$/u.test(shown) && !/^(?:how|which)\b/iu.test(shown);
  if (!short) return `the ${name}`;
  return `the ${inSentence(shown)}`;
}

/** How sentences call the measures of a pattern. */
export const wordingOf = ({ measures }: Pick<Pattern, 'measures'>): Wording => ({
  label: (name) => measures[name]?.label,
  spoken: (name) => measures[name]?.spoken,
});

/** The edges at the left and the right, or at the top and the bottom. */
export type Edges = 'sides' | 'ends';

type Told = { once: string; each: string; take: (things: number) => string };

const tellings: Record<Edges, Told> = {
  sides: {
    once: 'on one side only',
    each: 'at each side',
    take: (things) => `Both side edges take ${things > 1 ? 'them' : 'it'}.`,
  },
  ends: {
    once: 'at one edge only',
    each: 'at each edge',
    take: (things) => `Top and bottom both take ${things > 1 ? 'them' : 'it'}.`,
  },
};

/** Where the parts are taken, if the pattern tells that of all of them alike. */
function edgesOf(parts: readonly Node[], { edges }: Wording): Told | undefined {
  const [first, ...others] = parts.map((part) => (part.kind === 'name' ? edges?.(part.name) : undefined));
  return first && others.every((other) => other === first) ? tellings[first] : undefined;
}

function needed(edges: Told | undefined, times: number, sign: '+' | '-', isOne: boolean): string {
  if (times === 1) return `${isOne ? 'It is' : 'They are'} ${sign === '+' ? 'added' : 'taken away'} here.`;
  if (edges) return edges.take(1);
  return `${isOne ? 'It counts' : 'They count'} ${times === 2 ? 'twice' : `${times} times`}.`;
}

function wayOf(at: Node, written: (node: Node) => string): string {
  if (at.kind !== 'round') return '';
  const to = written(at.to);
  return at.way === 'nearest' ? `The nearest ${to} is wanted.` : `Here you round ${at.way} to ${to}.`;
}
