import { textIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';

/** The lesson's own words, for the class plan. */
export function paper({ of }: AttributeValues, words: QuestionText): OnPaper {
  const key = textIn(of);
  const own = words
    .map((part) => (typeof part === 'string' ? part : part.size))
    .join('')
    .trim();
  const sentences = own === '' ? [] : [own.replace(/\s+/g, ' ')];
  return { caution: { ...(key !== undefined && { of: key }), sentences } };
}
