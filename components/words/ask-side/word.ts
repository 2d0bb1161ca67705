import { z } from 'zod';
import { questionHint, questionName } from '../question-fields.ts';
import { check } from './check.ts';
import { paper } from './paper.ts';
import { asked, saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  step: z.string().describe('The id of a step in the project file.'),
  shows: z.string().min(1).describe('What to point at: right side, wrong side, or a piece by its name.'),
  from: z.enum(['front', 'back']).optional().describe('From where the work is seen. Left out, front.'),
  hint: questionHint,
  id: questionName.optional(),
});
export type Attributes = z.infer<typeof attributes>;

export const AskSide: Word = {
  group: 'question',
  about:
    'A question for what shows of the work after a step, answered by pointing at its drawing or from a list. The drawing does not tell the sides.',
  example: '<AskSide step="turn" shows="right side">\n\nWhere does the right side of the cloth show?\n\n</AskSide>',
  attributes,
  names: { step: 'step' },
  texts: { hint: 'whole' },
  text: 'needed',
  view,
  check,
  paper,
  saves,
  asked,
  inSets: 'as it is',
};
