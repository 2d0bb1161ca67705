import type { Subject } from '../../../src/core/index.ts';
import { savedFor, subjectOf } from './view.ts';
import type { AttributeValues, OnPaper, PaperContext, QuestionText } from '../word.ts';

type Picks = Extract<OnPaper, { picks: unknown }>['picks'];

export const paper = (given: AttributeValues, words: QuestionText, { measured }: PaperContext): OnPaper => ({
  picks: [roomFor(subjectOf(given), words, measured)],
});

/** Room on paper for what a piece measures. */
export function roomFor(subject: Subject, words: QuestionText, measured: PaperContext['measured']): Picks[number] {
  const sizes = measured?.(subject);
  return { kind: 'piece', id: savedFor(subject).name, words, subject, ...(sizes && { sizes }) };
}
