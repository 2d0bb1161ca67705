import { textIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';
import { foldIn, saves } from './view.ts';

export const paper = (given: AttributeValues, words: QuestionText): OnPaper => ({
  picks: [{ kind: 'folds', id: saves(given).name, words, piece: textIn(given.piece) ?? '', fold: foldIn(given) }],
});
