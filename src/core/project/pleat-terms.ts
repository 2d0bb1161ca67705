/** The sums of pleats, told once for all: for the names of a project file, and for bare numbers. */
import { numberTerm, oneLess, product, sum, type Signed, type Term } from './terms.ts';
import type { Part } from './names.ts';

/** What the file wishes for, as terms. */
export type PleatTerms = {
  /** Seam allowance at the panel's bottom and top edge. */
  bottom: Term | undefined;
  top: Term | undefined;
  pockets: Term;
  depth: Term;
  step: Term | undefined;
  lift: Term | undefined;
  head: Term | undefined;
  isLevel: boolean;
};

/** Another part of the same piece, which a sum goes on from. */
export type PartTerm = (part: Part) => Term;

/** Where fold `n` lies along the strip, from its bottom raw edge. Each way adds to the fold before. */
export function foldTerm(pleats: PleatTerms, n: number, of: PartTerm): Term {
  const { depth, step, isLevel } = pleats;
  if (n === 1) return pocketTopTerm(pleats, 1);
  const before: Signed = ['+', of({ what: 'fold', n: n - 1 })];
  if (isLevel) return sum(before, ['+', of({ what: 'pocket depth', n: Math.ceil(n / 2) })]);
  return n % 2 === 0 ? sum(before, ['+', depth]) : sum(before, ['+', depth], ...plus(step));
}

/** Height of a pocket's top above the panel's bottom raw edge. */
export function pocketTopTerm(pleats: PleatTerms, n: number): Term {
  const [first, ...others] = [...plus(pleats.bottom), ...plus(pleats.lift), ...plus(pleats.depth), ...steps(pleats, n)];
  return sum(first!, ...others);
}

/** Depth of a pocket. */
export function pocketDepthTerm(pleats: PleatTerms, n: number): Term {
  return sum(['+', pleats.depth], ...(pleats.isLevel ? steps(pleats, n) : []));
}

/** Height of the folded panel from raw edge to raw edge, where neither the file nor the strip's length says it. */
export function panelHeightTerm(pleats: PleatTerms): Term {
  const { bottom, lift, depth, step, pockets, head, top } = pleats;
  const rises = step && product(oneLess(pockets), step);
  const [first, ...others] = [bottom, lift, depth, rises, head ?? top].flatMap(plus);
  return sum(first!, ...others);
}

/** Length of a strip whose panel is not trimmed: the panel's height and twice the depth of each pocket more. */
export function stripLengthTerm({ pockets, depth, step, isLevel }: PleatTerms, of: PartTerm): Term {
  const height: Signed = ['+', of({ what: 'height' })];
  const two = numberTerm(2);
  if (!isLevel) return sum(height, ['+', product(two, pockets, depth)]);
  const each = sum(['+', product(two, depth)], ...plus(step && product(oneLess(pockets), step)));
  return sum(height, ['+', product(pockets, { ...each, loose: true })]);
}

const plus = (term: Term | undefined): Signed[] => (term ? [['+', term]] : []);

/** How much higher a pocket lies than the first. */
function steps({ step }: PleatTerms, n: number): Signed[] {
  if (!step || n === 1) return [];
  return plus(n === 2 ? step : product(numberTerm(n - 1), step));
}
