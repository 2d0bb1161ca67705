import { textIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';
import { foldIn, kept } from './view.ts';

export const paper = (given: AttributeValues, words: QuestionText): OnPaper => ({
  pick: { kind: 'folds', id: kept(given).name, words, piece: textIn(given.piece) ?? '', picksInPattern: foldIn(given) },
});
