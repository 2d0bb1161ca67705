import { textIn } from '../given.ts';
import type { Given, OnPaper, Words } from '../word.ts';
import { kept } from './view.ts';

export const paper = (given: Given, words: Words): OnPaper => ({
  pick: {
    ...{ kind: 'side', id: kept(given).name, words, side: given.from === 'back' ? 'back' : 'front' },
    ...{ step: textIn(given.step) ?? '', shows: textIn(given.shows) ?? '' },
  },
});
