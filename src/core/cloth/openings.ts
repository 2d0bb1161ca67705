import { direction, minus } from '../geometry/point.ts';
import { leftOf, lineThrough, sides } from '../geometry/index.ts';
import { ON } from './ring.ts';
import { SAME } from '../measure/index.ts';
import type { ClothFault } from './fault.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Work } from './work.ts';
import type { WorkEdge } from './edge.ts';

/** An edge of a pair sewn round that was left open: the mouth of a bag, the end of a strap. */
export type Opening = { readonly line: Line; readonly from: Point; readonly to: Point };

/**
 * The openings of a work, where they lie now. Only those of pairs that were sewn round are known.
 *
 * @example
 * openingsOf(sewRound(front, back, { allowance: 6, open: ['top'] }).value).length // => 1
 */
export const openingsOf = ({ stitches }: Work): Opening[] =>
  stitches.flatMap(({ round }) =>
    round
      ? sides(round.ring).flatMap(({ from, to }, i) =>
          round.allowances[i] === 0 ? [{ line: lineThrough(from, to), from, to }] : [],
        )
      : [],
  );

/** Whether a straight stretch runs along an opening, or along a part of it, no more than so many mm away. */
const isAt = (edge: Pick<WorkEdge, 'from' | 'to'>, { line, from, to }: Opening, off = SAME): boolean => {
  const [begun, ended] = [leftOf(line, edge.from), leftOf(line, edge.to)];
  if (Math.max(Math.abs(begun), Math.abs(ended)) > off) return false;
  const way = direction(line.angle);
  const along = (p: Point) => way.x * minus(p, line.at).x + way.y * minus(p, line.at).y;
  const [a, b] = [along(edge.from), along(edge.to)];
  // The end of a row that comes from further in crosses it, and does not run along it.
  const isAcross = Math.abs(begun - ended) > Math.abs(a - b);
  return !isAcross && Math.min(Math.max(a, b), along(to)) - Math.max(Math.min(a, b), along(from)) > ON;
};

const openAt = (work: Work, edge: WorkEdge): boolean => openingsOf(work).some((opening) => isAt(edge, opening));

/** Why a step at edges would sew an opening shut, if one of them is an opening: lying flat, both its walls are sewn. */
export function sewsShut(work: Work, edges: readonly WorkEdge[]): ClothFault | undefined {
  const edge = edges.find((one) => openAt(work, one));
  if (!edge) return undefined;
  const message = `The ${edge.name} is an opening: sewn as it lies, through both layers, it would be sewn shut.`;
  return { code: 'opening', message, edge: edge.name };
}

/** Why a seam of works edge to edge would sew openings shut: two of them are openings, and belong together in the round. */
export function sewnShutTogether(layers: readonly { work: Work; edge: WorkEdge | string }[]): ClothFault | undefined {
  const open = layers.flatMap(({ work, edge }) => (typeof edge !== 'string' && openAt(work, edge) ? [edge] : []));
  if (open.length < 2) return undefined;
  const message = 'Two openings are joined here: sewn as they lie, both would be sewn shut.';
  return { code: 'opening', message, edge: open[0]!.name };
}

/** The same for rows that follow a curve or an outline, so many mm inside it. */
export function sewsShutAlong(work: Work, ways: readonly (readonly Point[])[], by: number): ClothFault | undefined {
  const beside = (opening: Opening) =>
    ways.some((way) => way.slice(1).some((end, i) => isAt({ from: way[i]!, to: end }, opening, by + SAME)));
  if (ways.length === 0 || !openingsOf(work).some(beside)) return undefined;
  return { code: 'opening', message: 'The row runs along an opening: through both layers, it would sew it shut.' };
}
