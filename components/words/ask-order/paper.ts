import { textIn, textsIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';

export const paper = ({ id, steps }: AttributeValues, words: QuestionText): OnPaper => ({
  picks: [{ kind: 'order', id: textIn(id) ?? '', words, steps: textsIn(steps) }],
});
