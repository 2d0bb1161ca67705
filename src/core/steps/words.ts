/** Words that the titles of steps share. */
import { listed } from '../measure/index.ts';

/** A name with its article: `the front`; `a strap` and `2 × napkin` need none. */
export const the = (name: string): string =>
  /^(the|a|an|each|both|\d+ ×) /iu.test(name) ? name : `the ${name.trim()}`;

/** `the front, the back and the lining`; two of one name are `both panels`. */
export function all(names: readonly string[]): string {
  const [first, second, ...others] = names;
  const isPair = first !== undefined && first === second && others.length === 0 && /^\p{L}+$/u.test(first);
  return isPair ? `both ${plural(first)}` : listed(names.map(the));
}

/** ` at the left and the right`; nothing where no edge is named, or all are. */
export const atEdges = (edges: readonly string[] = []): string =>
  edges.length === 0 || edges[0] === 'all' ? '' : ` at ${all(edges)}`;

/** `, with the zip between`; nothing where nothing is caught. */
export const withBetween = (caught: readonly string[] = []): string =>
  caught.length > 0 ? `, with ${all(caught)} between` : '';

/** `the bag and the facing at the top`, or each at an edge of its own: `the bag at the top and the base at the left`. */
export function eachAt(works: readonly string[], edges: readonly string[]): string {
  const [first] = edges;
  // An edge more belongs to what is caught between them.
  const own = edges.slice(0, works.length);
  if (first === undefined) return all(works);
  if (own.every((edge) => edge === first)) return `${all(works)} at ${the(first)}`;
  return listed(works.map((work, i) => `${the(work)} at ${the(edges[i] ?? first)}`));
}

/** Words in f that change it, and no others do. */
const IN_VES = /(hal|lea|scar|shel|loa|cal|kni|wi|li|thie|shea)fe?$/u;

/**
 * Several of a name, by its last word: `straps`, `patches`, `pocket linings`. A name in a single s is of several already.
 *
 * @example plural('strip of the quarter half') // => 'strip of the quarter halves'
 */
export function plural(name: string): string {
  if (/(ss|x|z|ch|sh)$/iu.test(name)) return `${name}es`;
  if (/s$/iu.test(name)) return name;
  if (/[^aeiou]y$/iu.test(name)) return `${name.slice(0, -1)}ies`;
  return IN_VES.test(name) ? name.replace(/fe?$/u, 'ves') : `${name}s`;
}
