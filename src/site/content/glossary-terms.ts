/** Terms of the glossary in the running text of a lesson, in the forms that they usually take. */

/** A term as it stands in a text: `text.slice(start, end)`. */
export type TermInText = { term: string; start: number; end: number };

/**
 * The terms of a glossary in a text, in order. Where two begin at one place the longer one counts.
 *
 * @param terms as the glossary writes them
 * @example
 * termsIn('Baste both raw edges.', ['raw edge', 'baste'])
 * // => [{ term: 'baste', start: 0, end: 5 }, { term: 'raw edge', start: 11, end: 20 }]
 */
export function termsIn(text: string, terms: readonly string[]): TermInText[] {
  const found = terms
    .flatMap((term) =>
      [...text.matchAll(formsOf(term))].map(({ index, 0: words }) => ({
        term,
        start: index,
        end: index + words.length,
      })),
    )
    .toSorted((a, b) => a.start - b.start || b.end - a.end);
  return found.filter(({ start }, i) => found.slice(0, i).every((before) => before.end <= start));
}

/** The id of what a page shows of a term. */
export const termId = (term: string): string => `term-${term.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-')}`;

/** The terms in texts, by the words that stand for them: `{ pleats: 'term-pleat' }`. */
export const termsByWords = (texts: readonly string[], terms: readonly string[]): Record<string, string> =>
  Object.fromEntries(
    texts.flatMap((text) =>
      termsIn(text, terms).map(({ term, start, end }) => [text.slice(start, end), termId(term)] as const),
    ),
  );

const patterns = new Map<string, RegExp>();

/**
 * A term, one or several, and what is done with it: pleat, pleats, pleated; baste, basted, basting. A term that ends in
 * “ing” is also a form of a verb: it counts as the thing only after a word such as “the”.
 */
function formsOf(term: string): RegExp {
  let pattern = patterns.get(term);
  if (pattern) return pattern;
  const words = term
    .toLowerCase()
    .replaceAll(/[.*+?^${}()|[\]\\]/gu, '\\$&')
    .replaceAll(/\s+/gu, '\\s+');
  const thing = /ing$/u.test(words)
    ? `(?<=\\b(?:an?|the|its?|of|your|this|each|every|and)\\s+(?:\\p{L}+\\s+)?)${words}|${words}s`
    : /\s/u.test(term)
      ? `${words}(?:e?s)?`
      : `${words}(?:e?s|e?d)?|${words.replace(/e$/u, '')}ing`;
  pattern = new RegExp(`(?<![\\p{L}-])(?:${thing})(?![\\p{L}-])`, 'giu');
  patterns.set(term, pattern);
  return pattern;
}
