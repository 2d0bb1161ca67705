import { textIn, textsIn } from '../given.ts';
import type { AttributeValues, OnPaper, PaperContext, QuestionText } from '../word.ts';

export function paper(
  { id, terms, pairs: own }: AttributeValues,
  words: QuestionText,
  { glossary = {} }: PaperContext,
): OnPaper {
  const defined = terms === undefined ? [] : textsIn(terms).map((term) => [term, glossary[term] ?? '']);
  const pairs = { ...Object.fromEntries(defined), ...Object(own) } as Record<string, string>;
  return { picks: [{ kind: 'pairs', id: textIn(id) ?? '', words, pairs }] };
}
