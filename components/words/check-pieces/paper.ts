import { roomFor } from '../my-piece/paper.ts';
import type { AttributeValues, OnPaper, PaperContext, QuestionText } from '../word.ts';

/** Each piece of the cut list, with room for what it measures. */
export const paper = (_: AttributeValues, words: QuestionText, { pieces = [], measured }: PaperContext): OnPaper => ({
  picks: pieces.map((piece) => roomFor({ piece, stage: 'cut' }, words, measured)),
});
