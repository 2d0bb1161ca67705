import { textIn, textsIn } from '../given.ts';
import type { Given, OnPaper, Words } from '../word.ts';

export const paper = ({ id, steps }: Given, words: Words): OnPaper => ({
  pick: { kind: 'order', id: textIn(id) ?? '', words, steps: textsIn(steps) },
});
