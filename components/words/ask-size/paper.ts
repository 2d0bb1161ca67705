import type { PaperQuestion } from '../../../src/core/index.ts';
import { textIn, textsOf } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';

export function paper(given: AttributeValues, words: QuestionText): OnPaper | undefined {
  const [of, hint, id] = [given.of, given.hint, given.id].map(textIn);
  if (of === undefined) return undefined;
  return { sums: [{ of, ...(hint !== undefined && { hints: [hint] }), ...slipsIn(given), words, id: id ?? of }] };
}

/** What the author says to wrong sums: the key of the answers tells it. */
export function slipsIn({
  slips,
  reword,
  forbid,
}: AttributeValues): Pick<PaperQuestion, 'slips' | 'reword' | 'forbid'> {
  const own = Object.entries(textsOf(slips)).map(([is, say]) => ({ is, say }));
  return {
    ...(own.length > 0 && { slips: own }),
    ...(reword !== undefined && { reword: textsOf(reword) }),
    ...(Array.isArray(forbid) && { forbid: forbid.map(String) }),
  };
}
