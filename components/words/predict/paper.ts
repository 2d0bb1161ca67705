import { textIn, textsIn } from '../given.ts';
import type { Given, OnPaper, Words } from '../word.ts';

export const paper = ({ id, guesses, shows }: Given, words: Words): OnPaper => ({
  pick: { kind: 'guess', id: textIn(id) ?? '', words, guesses: textsIn(guesses), shows: textIn(shows) ?? '' },
});
