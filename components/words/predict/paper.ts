import { textIn, textsIn } from '../given.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';

export const paper = ({ id, guesses, shows }: AttributeValues, words: QuestionText): OnPaper => ({
  picks: [{ kind: 'guess', id: textIn(id) ?? '', words, guesses: textsIn(guesses), shows: textIn(shows) ?? '' }],
});
