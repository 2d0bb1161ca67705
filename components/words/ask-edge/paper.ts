import { textIn, textsIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';
import { saves } from './view.ts';

export const paper = (given: AttributeValues, words: QuestionText): OnPaper => ({
  picks: [
    {
      ...{ kind: 'edges', id: saves(given).name, words, piece: textIn(given.piece) ?? '' },
      ...(given.edges !== undefined && { edges: textsIn(given.edges) }),
    },
  ],
});
