/** What a text is made of: words as they are, and words that have a meaning in the glossary. */
export type TermPart = { text: string; term?: string };

const LETTER = /[\p{L}-]/u;

/**
 * Parts a text at the first use of each term, so that it reads calmly.
 *
 * @param terms the id of what the page holds of each term, by the words that stand for it
 * @example termParts('Press the pleats.', { pleats: 'term-pleat' })
 * // => [{ text: 'Press the ' }, { text: 'pleats', term: 'term-pleat' }, { text: '.' }]
 */
export function termParts(text: string, terms: Readonly<Record<string, string>>): TermPart[] {
  const found = Object.entries(terms)
    .map(([words, term]) => ({ words, term, at: wholeWordsIn(text, words) }))
    .filter(({ at }) => at >= 0)
    .toSorted((a, b) => a.at - b.at || b.words.length - a.words.length);
  const parts: TermPart[] = [];
  const used = new Set<string>();
  let from = 0;
  for (const { words, term, at } of found) {
    if (at < from || used.has(term)) continue;
    used.add(term);
    if (at > from) parts.push({ text: text.slice(from, at) });
    parts.push({ text: words, term });
    from = at + words.length;
  }
  if (from < text.length) parts.push({ text: text.slice(from) });
  return parts;
}

/** Where the words stand by themselves, and not inside of others; -1 where they do not. */
function wholeWordsIn(text: string, words: string): number {
  let at = text.indexOf(words);
  while (at >= 0 && (LETTER.test(text[at - 1] ?? '') || LETTER.test(text[at + words.length] ?? '')))
    at = text.indexOf(words, at + 1);
  return at;
}
