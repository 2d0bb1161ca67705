import { textIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';

/** The lesson's own words, for the class plan. */
export function paper({ of }: AttributeValues, words: QuestionText): OnPaper {
  const key = textIn(of);
  return { caution: { ...(key !== undefined && { of: key }), words } };
}
