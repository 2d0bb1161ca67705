import { z } from 'zod';
import { questionName } from '../question-fields.ts';
import { checkTexts } from '../check-texts.ts';
import { paper } from './paper.ts';
import { saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  id: questionName,
  guesses: z.array(z.string().min(1)).min(2).describe('What one may guess.'),
  shows: z.string().min(1).describe('What really happens.'),
});
export type Attributes = z.infer<typeof attributes>;

export const Predict: Word = {
  group: 'question',
  about:
    'A guess that nobody gets wrong; then the page says what happens. Put it before a study, which then keeps its result back until the guess is made.',
  example:
    '<Predict id="wider" guesses={["[step] more", "[2 * step] more"]} shows="It is [2 * step] more: there are two.">\n\nHow much more cloth does it take?\n\n</Predict>',
  attributes,
  texts: { guesses: 'whole', shows: 'whole' },
  text: 'needed',
  anywhere: true,
  view,
  check: checkTexts(['guesses']),
  paper,
  saves,
  inSets: {
    because: 'is a guess, and a guess is never wrong.',
    fix: 'Ask it with <AskChoice>, or take it out.',
  },
};
