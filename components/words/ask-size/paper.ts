import { textIn } from '../given.ts';
import type { Given, OnPaper, Words } from '../word.ts';

export function paper(given: Given, words: Words): OnPaper | undefined {
  const [of, hint, id] = [given.of, given.hint, given.id].map(textIn);
  if (of === undefined) return undefined;
  return { sums: [{ of, ...(hint !== undefined && { hints: [hint] }), words, id: id ?? of }] };
}
