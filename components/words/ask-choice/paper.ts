import { textIn, textsIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';

export const paper = ({ id, right, wrong }: AttributeValues, words: QuestionText): OnPaper => ({
  picks: [{ kind: 'choice', id: textIn(id) ?? '', words, right: textsIn(right), wrong: textsIn(wrong) }],
});
