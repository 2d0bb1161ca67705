import type { AttributeValues, OnPaper, PaperContext, QuestionText } from '../word.ts';
import { saves, subjectOf } from './view.ts';

export function paper(given: AttributeValues, words: QuestionText, { measured }: PaperContext): OnPaper {
  const subject = subjectOf(given);
  const sizes = measured?.(subject);
  return { pick: { kind: 'piece', id: saves(given).name, words, subject, ...(sizes && { sizes }) } };
}
