import { evaluate, parseFormula, type Formula, type LineScope, type Quantity } from '../formula/index.ts';
import { fail, ok, SAME, singleBlanks, type Result } from '../measure/index.ts';
import { scopeOf } from '../project/texts.ts';
import { partnersIn } from './slips.ts';
import type { Partner } from './edits.ts';
import type { Measure, Pattern, Piece } from '../project/pattern.ts';
import type { Edges } from './sentences.ts';

/** What a question asks for, at one size: the sum behind it, where its names are found, and what it comes to. */
export type Sum = {
  formula: Formula;
  scope: LineScope;
  /** The measure that the sum works out, where the question asks for one by its name. */
  asked?: string;
  wanted: Quantity;
};

/**
 * The sum behind a name or a formula. A name that only stands for another name, such as the height of a panel for that
 * of the strip it is folded from, is followed to the sum that works it out.
 *
 * @example sumFor('panel width', pattern).value.formula.text // => 'card width + 2 * ease + 2 * seam'
 */
export function sumFor(of: string, pattern: Pattern): Result<Sum> {
  const scope = scopeOf(pattern);
  const read = parseFormula(of, { names: scope.known! });
  if (!read.ok) return read;
  const value = evaluate(read.value, scope);
  if (!value.ok) return fail(value.fault);
  const { tree } = read.value;
  const formula = behind(read.value, pattern);
  return ok({ formula, scope, wanted: value.value, ...(tree.kind === 'name' && { asked: tree.name }) });
}

/** Follows bare names to the formula that works them out. */
function behind(formula: Formula, { measures }: Pattern): Formula {
  for (let at = formula; ;) {
    const next = at.tree.kind === 'name' ? measures[at.tree.name]?.formula : undefined;
    if (!next) return at;
    at = next;
  }
}

/** A size of a piece as it is cut, and as it is once its edges are sewn. */
const sizesOf = ({ name }: Piece, { measures }: Pattern) =>
  [
    { cut: 'width', finished: 'finished width', edges: 'sides' },
    { cut: 'length', finished: 'finished height', edges: 'ends' },
    { cut: 'height', finished: 'finished height', edges: 'ends' },
  ]
    .map(({ cut, finished, edges }) => ({
      cut: `${singleBlanks(name)} ${cut}`,
      finished: `${singleBlanks(name)} ${finished}`,
      edges: edges as Edges,
    }))
    // A measure of the author's own that has taken such a name is another size.
    .filter(({ cut, finished }) => [cut, finished].every((one) => !isOwn(measures[one])));

const isOwn = (measure: Measure | undefined) => measure?.source === 'stated' || measure?.source === 'derived';

/** Whether a name stands for this measure: it is its own, or that of the measure it is made by. */
const standsFor = (name: string, measure: string, { measures }: Pattern) =>
  name === measure || measures[measure]?.formula?.text === name;

/**
 * What a measure is taken for: by the words in its name, and, where it is the cut size of a piece, the finished size of
 * that piece.
 */
export function partnersOf(pattern: Pattern): (name: string) => Partner[] {
  const byWords = partnersIn(scopeOf(pattern));
  return (name) => {
    const finished = Object.values(pattern.pieces)
      .flatMap((piece) => sizesOf(piece, pattern))
      .find(({ cut, finished }) => standsFor(name, cut, pattern) && pattern.measures[finished]);
    const partners = byWords(name);
    if (!finished || partners.some((partner) => partner.name === finished.finished)) return partners;
    return [...partners, { kind: 'finished-for-cut', name: finished.finished }];
  };
}

/**
 * Which two edges take a measure each, told by the pieces that a sum is about: their left and right edges, or their top
 * and bottom, have an allowance of that size.
 */
export function edgesIn({ formula, asked }: Pick<Sum, 'formula' | 'asked'>, pattern: Pattern) {
  const names = [...(asked === undefined ? [] : [asked]), ...formula.names];
  const across = Object.values(pattern.pieces).flatMap((piece) =>
    sizesOf(piece, pattern).flatMap(({ cut, finished, edges }) => {
      const isMeant = names.some((name) => standsFor(name, cut, pattern) || standsFor(name, finished, pattern));
      const { left = 0, right = 0, bottom = 0, top = 0 } = piece.allowance;
      return isMeant ? [{ edges, allowances: edges === 'sides' ? [left, right] : [bottom, top] }] : [];
    }),
  );
  return (name: string): Edges | undefined => {
    const size = pattern.measures[name]?.value ?? 0;
    return across.find(({ allowances }) => allowances.every((one) => one > 0 && Math.abs(one - size) < SAME))?.edges;
  };
}
