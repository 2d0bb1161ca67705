import { z } from 'zod';
import { questionHint, questionName } from '../question-fields.ts';
import { checkTexts } from '../check-texts.ts';
import { paper } from './paper.ts';
import { asked, saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  id: questionName,
  steps: z.array(z.string().min(1)).min(3).describe('The steps in the right order. The page mixes them.'),
  hint: questionHint,
});
export type Attributes = z.infer<typeof attributes>;

export const AskOrder: Word = {
  group: 'question',
  about: 'Steps to put in order, by dragging or with buttons.',
  example:
    '<AskOrder id="pleating" steps={["Fuse the interfacing", "Mark the folds", "Fold", "Press"]}>\n\nIn which order do you work?\n\n</AskOrder>',
  attributes,
  texts: { steps: 'whole', hint: 'whole' },
  text: 'needed',
  anywhere: true,
  view,
  check: checkTexts(['steps']),
  paper,
  saves,
  asked,
  inSets: 'as it is',
};
