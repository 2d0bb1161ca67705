import { textIn, textsIn } from '../given.ts';
import type { Given, OnPaper, Words } from '../word.ts';
import { kept } from './view.ts';

export const paper = (given: Given, words: Words): OnPaper => ({
  pick: {
    ...{ kind: 'edges', id: kept(given).name, words, piece: textIn(given.piece) ?? '' },
    ...(given.edges !== undefined && { edges: textsIn(given.edges) }),
  },
});
