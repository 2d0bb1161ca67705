import { textIn } from '../given.ts';
import type { Given, OnPaper, Words } from '../word.ts';
import { foldIn, kept } from './view.ts';

export const paper = (given: Given, words: Words): OnPaper => ({
  pick: { kind: 'folds', id: kept(given).name, words, piece: textIn(given.piece) ?? '', picksInPattern: foldIn(given) },
});
