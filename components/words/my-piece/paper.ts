import type { Given, OnPaper, PaperContext, Words } from '../word.ts';
import { kept, subjectOf } from './view.ts';

export function paper(given: Given, words: Words, { measured }: PaperContext): OnPaper {
  const subject = subjectOf(given);
  const sizes = measured?.(subject);
  return { pick: { kind: 'piece', id: kept(given).name, words, subject, ...(sizes && { sizes }) } };
}
