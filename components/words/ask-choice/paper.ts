import { textIn, textsIn } from '../given.ts';
import type { Given, OnPaper, Words } from '../word.ts';

export const paper = ({ id, right, wrong }: Given, words: Words): OnPaper => ({
  pick: { kind: 'choice', id: textIn(id) ?? '', words, right: textsIn(right), wrong: textsIn(wrong) },
});
