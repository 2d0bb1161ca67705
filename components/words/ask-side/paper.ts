import { textIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';
import { saves } from './view.ts';

export const paper = (given: AttributeValues, words: QuestionText): OnPaper => ({
  picks: [
    {
      ...{ kind: 'side', id: saves(given).name, words, side: given.from === 'back' ? 'back' : 'front' },
      ...{ step: textIn(given.step) ?? '', shows: textIn(given.shows) ?? '' },
    },
  ],
});
