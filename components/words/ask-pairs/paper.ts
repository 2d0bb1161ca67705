import { textIn, textsIn } from '../given.ts';
import type { Given, OnPaper, PaperContext, Words } from '../word.ts';

export function paper({ id, terms, pairs: own }: Given, words: Words, { glossary = {} }: PaperContext): OnPaper {
  const told = terms === undefined ? [] : textsIn(terms).map((term) => [term, glossary[term] ?? '']);
  const pairs = { ...Object.fromEntries(told), ...Object(own) } as Record<string, string>;
  return { pick: { kind: 'pairs', id: textIn(id) ?? '', words, pairs } };
}
