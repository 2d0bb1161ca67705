/** Many pages of a site show the same word at the same pattern: what is slow to work out is worked out once. */
import { oncePer, type Pattern } from '../../src/core/index.ts';

/** The same view, remembered for each pattern by what its author gave. */
export function oncePerGiven<A extends object, V>(view: (pattern: Pattern, attributes: A) => V) {
  const once = oncePer((pattern: Pattern, given: string) => view(pattern, JSON.parse(given) as A));
  return (pattern: Pattern, attributes: A): V => once(pattern, JSON.stringify(attributes));
}
