import { z } from 'zod';
import { questionHint, questionName } from '../question-fields.ts';
import { checkTexts } from '../check-texts.ts';
import { paper } from './paper.ts';
import { asked, saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  id: questionName,
  right: z.array(z.string().min(1)).min(1).describe('The right answer, or all of them.'),
  wrong: z
    .union([z.array(z.string().min(1)).min(1), z.record(z.string().min(1), z.string().min(1))])
    .describe('The others: a list, or each with what to say to whoever picks it.'),
  hint: questionHint,
});
export type Attributes = z.infer<typeof attributes>;

export const AskChoice: Word = {
  group: 'question',
  about: 'A question with answers to choose from: one, or all that are right.',
  example:
    '<AskChoice id="first-fold" right={["Mountain fold"]} wrong={{"Valley fold": "That one sinks away from you."}}>\n\nWhich fold makes the top of a pocket?\n\n</AskChoice>',
  attributes,
  texts: { right: 'whole', wrong: 'whole', hint: 'whole' },
  text: 'needed',
  anywhere: true,
  view,
  check: checkTexts(['right', 'wrong']),
  paper,
  saves,
  asked,
  inSets: 'as it is',
};
