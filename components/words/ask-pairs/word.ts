import { z } from 'zod';
import { questionHint, questionName } from '../question-fields.ts';
import { checkTexts } from '../check-texts.ts';
import { paper } from './paper.ts';
import { asked, saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  id: questionName,
  terms: z.array(z.string()).optional().describe('Terms of the glossary, which gives their meanings.'),
  pairs: z
    .record(z.string().min(1), z.string().min(1))
    .optional()
    .describe('Pairs of your own: {{"facing": "covers the back"}}.'),
  hint: questionHint,
});
export type Attributes = z.infer<typeof attributes>;

export const AskPairs: Word = {
  group: 'question',
  about: 'Terms to match with what they mean.',
  example: '<AskPairs id="terms" terms={["ease", "facing"]}>\n\nWhat does each word mean?\n\n</AskPairs>',
  attributes,
  names: { terms: 'term' },
  texts: { pairs: 'whole', hint: 'whole' },
  text: 'needed',
  anywhere: true,
  view,
  check: checkTexts(['terms']),
  paper,
  saves,
  asked,
  inSets: 'as it is',
};
