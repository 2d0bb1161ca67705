/**
 * The wrong answers that people really give, made from the right sum.
 *
 * Nobody writes them down for a question: each is the formula altered at one place, with the value that comes of it and
 * a sentence that says what happened.
 */
import {
  evaluate,
  parseFormula,
  type Dimension,
  type Formula,
  type Node,
  type Quantity,
  type Scope,
} from '../formula/index.ts';
import { ok, type Edition } from '../measure/index.ts';
import { edited, edits, namesOf, slipKinds, type Edit, type Names, type Partner, type SlipKind } from './edits.ts';
import { sayEdit, sayUnit, type Wording } from './sentences.ts';
import { unitSlips } from './units.ts';

/** A formula altered as people do it, without numbers. */
export type Alteration = {
  /** Names the slip for good, in reports and for authors: `one-side seam`. */
  key: string;
  kind: SlipKind | 'own';
  formula: Formula;
  /** What happened, in plain words. */
  sentence: string;
  /** The measures concerned. */
  names: string[];
  /** 0 for what an author expects, then from the most common on. */
  rank: number;
  /** How often it happens, where two come to the same: a rare one is thought of only where no likely one does. */
  likelihood: 'likely' | 'usual' | 'rare';
  /** The part of the right formula that was altered. */
  node: Node;
};

/** An alteration that comes to a value, in mm, mm² or a plain number. */
export type Slip = Alteration & {
  value: number;
  /** How far an answer may lie from `value`, where that is not the question's own tolerance. */
  within?: number;
};

/** A wrong way that an author expects: the sum as the learner then works it, and what to say to it. */
export type OwnSlip = { is: string; say: string };

/** What the slips may know besides the sum. */
export type SlipOptions = Wording & {
  own?: readonly OwnSlip[] | undefined;
  /** Measures that are easily taken for another; by default told by the words width, height and finished. */
  partners?: (name: string) => Partner[];
  /** Whether a plain number counts nothing, so that nobody takes one too few of it. */
  isRatio?: (name: string) => boolean;
};

/**
 * The slips of a formula, the most common first. With a scope each has a value; what then comes to nothing, to another
 * kind of thing or to the right sum is no slip, and neither is one that is another in disguise. Two different ones may
 * still have one value: `judge` sees to that.
 *
 * @example slips(formula('width + 2 * seam')).map((slip) => slip.key) // => ['left-out width', 'left-out seam', …]
 * @example slips(formula('width + 2 * seam'), scope)[2].sentence // => 'You counted the seam only once. It counts twice.'
 */
export function slips(formula: Formula): Alteration[];
export function slips(formula: Formula, scope: Scope, options?: SlipOptions): Slip[];
export function slips(formula: Formula, scope?: Scope, options: SlipOptions = {}): Alteration[] {
  const names: Names = scope
    ? {
        isCount: (name) => quantityOf(name, scope)?.dimension === 0 && !options.isRatio?.(name),
        partners: options.partners ?? partnersIn(scope),
        plain: (tree) => {
          const found = evaluate({ ...formula, tree }, scope);
          return found.ok && found.value.dimension === 0 ? found.value.value : undefined;
        },
      }
    : {};
  const made = [...edits(formula, names), ...ofTheWhole(formula, names, options.asked)].flatMap((edit) => {
    const { kind, about, at, instead } = edit;
    const read = parseFormula(edited(formula, edit), { names: [...formula.names, ...(instead ? [instead] : [])] });
    if (!read.ok) return [];
    const parts = about === formula.tree && !edit.with ? [] : [about, ...(edit.with ?? [])].map(namesOf);
    const concerned = [...new Set(parts.flat())];
    const first = parts.flatMap((names) => names.slice(0, 1));
    const key = [kind, first.join(', ')].filter(Boolean).join(' ');
    const sentence = sayEdit(edit, formula, options);
    const shared = {
      sentence,
      names: concerned,
      rank: rankOf(kind),
      likelihood: likelihoodOf(edit, formula),
      node: at,
    };
    return [{ key, kind, formula: read.value, ...shared }];
  });
  const all = [...expected(formula, options.own ?? [], scope), ...made];
  return (scope ? valued(formula, scope, all) : all).sort((a, b) => a.rank - b.rank);
}

/** The author's own slips. One that cannot be read says nothing here: the content check reports it. */
function expected(right: Formula, own: readonly OwnSlip[], scope?: Scope): Alteration[] {
  const names = new Set([...right.names, ...(scope?.known ?? [])]);
  return own.flatMap(({ is, say }, i): Alteration[] => {
    const read = parseFormula(is, { names });
    const about = { names: read.ok ? read.value.names : [], rank: 0, likelihood: 'likely' as const, node: right.tree };
    return read.ok ? [{ key: `own ${i + 1}`, kind: 'own', formula: read.value, sentence: say, ...about }] : [];
  });
}

const rankOf = (kind: SlipKind) => slipKinds.indexOf(kind) + 1;

/**
 * What is left out or counted once, and another size given for the whole, is common; a wrong sign, once too often and
 * more than two parts left out are rare. Common practice, no source.
 */
function likelihoodOf(
  { kind, at, with: others = [], took = 1, times = 2 }: Edit,
  { tree }: Formula,
): Alteration['likelihood'] {
  if (kind === 'wrong-sign' || kind === 'twice' || others.length > 1) return 'rare';
  if (kind === 'left-out' || kind === 'alone' || (kind === 'one-side' && times === 2 * took)) return 'likely';
  return isPartner(kind) && at === tree ? 'likely' : 'usual';
}

/** Edits of the whole result: another measure of the same piece, half of it, twice it. */
function ofTheWhole({ tree, text }: Formula, names: Names, asked: string | undefined): Edit[] {
  const made = (asked === undefined ? undefined : names.partners?.(asked)) ?? [];
  return [
    ...made.map(({ kind, name }): Edit => ({ kind, at: tree, text: name, about: tree, instead: name })),
    { kind: 'half', at: tree, text: `(${text}) / 2`, about: tree },
    { kind: 'whole', at: tree, text: `2 * (${text})`, about: tree },
  ];
}

/** Gives each alteration its value, and drops what is none. */
function valued(formula: Formula, scope: Scope, made: readonly Alteration[]): Slip[] {
  const right = evaluate(formula, scope);
  if (!right.ok) return [];
  const { value: wanted, dimension } = right.value;
  const elsewhere = moved(scope);
  const print = (formula: Formula) => [scope, elsewhere].map((scope) => valueOf(formula, scope, dimension));
  const known: (number | undefined)[][] = [print(formula)];
  const slips: Slip[] = [];
  // Another measure of the same piece comes last: it is often what was left out, said in other words.
  const order = (slip: Alteration) => slip.rank + (isPartner(slip.kind) ? slipKinds.length : 0);
  for (const alteration of made.toSorted((a, b) => order(a) - order(b))) {
    const values = print(alteration.formula);
    const [value] = values;
    if (value === undefined || (dimension > 0 && value <= 0) || value < 0) continue;
    const disguised = isPartner(alteration.kind) && slips.some((slip) => explains(slip) && same(slip.value, value));
    if (disguised || known.some((other) => other.every((one, i) => same(one, values[i])))) continue;
    known.push(values);
    slips.push({ ...alteration, value });
  }
  return [...slips, ...inOtherUnits(formula, { value: wanted, dimension }, scope.edition)];
}

/** Whether it says better what happened than that another size was taken. */
const explains = ({ kind, likelihood }: Alteration) => likelihood === 'likely' || kind === 'twice' || isPartner(kind);

/** Another measure was taken for the one that is meant. */
export const isPartner = (kind: Alteration['kind']) =>
  kind === 'finished-for-cut' || kind === 'cut-for-finished' || kind === 'width-height';

function inOtherUnits(formula: Formula, right: Quantity, edition: Edition | undefined): Slip[] {
  return unitSlips(right, edition).map(({ meant, read, value, within }) => ({
    key: `unit ${meant} as ${read}`,
    kind: 'unit',
    formula,
    sentence: sayUnit(meant, read),
    names: [],
    rank: rankOf('unit'),
    likelihood: 'usual',
    node: formula.tree,
    value,
    within,
  }));
}

function valueOf(formula: Formula, scope: Scope, dimension: Dimension): number | undefined {
  const found = evaluate(formula, scope);
  return found.ok && found.value.dimension === dimension ? found.value.value : undefined;
}

const same = (a: number | undefined, b: number | undefined) =>
  a === b || (a !== undefined && b !== undefined && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a)));

/**
 * The same names with other values. Sums that agree here and there are one sum written in two ways; sums that agree
 * by chance part here.
 */
function moved(scope: Scope): Scope {
  const factors = new Map<string, number>();
  return {
    ...scope,
    get(name) {
      const found = scope.get(name);
      if (!found?.ok) return found;
      if (!factors.has(name)) factors.set(name, 1 + (((factors.size + 1) * 0.618_034) % 1));
      return ok({ ...found.value, value: found.value.value * factors.get(name)! });
    },
  };
}

function quantityOf(name: string, scope: Scope): Quantity | undefined {
  const found = scope.get(name);
  return found?.ok ? found.value : undefined;
}

/** Pairs of words in names: whoever mixes the measures up takes the one for the other. */
const pairs = [
  [/\bfinished (?=width|height)/u, '', 'cut-for-finished'],
  [/\b(?=(?:width|height)\b)(?<!finished )/u, 'finished ', 'finished-for-cut'],
  [/\bwidth\b/u, 'height', 'width-height'],
  [/\bwidth\b/u, 'length', 'width-height'],
  [/\b(?:height|length)\b/u, 'width', 'width-height'],
] as const;

/** The partners of a name that have a value, told by the words in it. */
export function partnersIn(scope: Scope): (name: string) => Partner[] {
  return (name) =>
    pairs.flatMap(([word, instead, kind]) => {
      const other = name.replace(word, instead);
      return other !== name && quantityOf(other, scope) ? [{ kind, name: other }] : [];
    });
}
