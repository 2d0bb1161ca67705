import { textIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';

export function paper(given: AttributeValues, words: QuestionText): OnPaper | undefined {
  const [of, hint, id] = [given.of, given.hint, given.id].map(textIn);
  if (of === undefined) return undefined;
  return { sums: [{ of, ...(hint !== undefined && { hints: [hint] }), words, id: id ?? of }] };
}
