/** Words that the titles of steps share. */
import { listed } from '../measure/index.ts';

/** A name with its article: `the front`; `a strap` has one already. */
export const the = (name: string): string => (/^(the|a|an) /iu.test(name) ? name : `the ${name.trim()}`);

/** `the front, the back and the lining`. */
export const all = (names: readonly string[]): string => listed(names.map(the));

/** ` at the left and the right`; nothing where no edge is named, or all are. */
export const atEdges = (edges: readonly string[] = []): string =>
  edges.length === 0 || edges[0] === 'all' ? '' : ` at ${all(edges)}`;

/** `, with the zip between`; nothing where nothing is caught. */
export const withBetween = (caught: readonly string[] = []): string =>
  caught.length > 0 ? `, with ${all(caught)} between` : '';

/** `the bag and the facing at the top`, or each at an edge of its own: `the bag at the top and the base at the left`. */
export function eachAt(works: readonly string[], edges: readonly string[]): string {
  const [first] = edges;
  if (first === undefined) return all(works);
  if (edges.every((edge) => edge === first)) return `${all(works)} at ${the(first)}`;
  return listed(works.map((work, i) => `${the(work)} at ${the(edges[i] ?? first)}`));
}
