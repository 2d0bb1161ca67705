import { z } from 'zod';
import { questionHint, questionName } from '../question-fields.ts';
import { check } from './check.ts';
import { paper } from './paper.ts';
import { asked, saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  piece: z.string().describe('A piece of the project.'),
  edges: z
    .array(z.string())
    .min(1)
    .optional()
    .describe('The edges that are right: {["left", "right"]}. Left out, those with a seam allowance.'),
  hint: questionHint,
  id: questionName.optional(),
});
export type Attributes = z.infer<typeof attributes>;

export const AskEdge: Word = {
  group: 'question',
  about: 'A question for edges of a piece, answered by pointing at its drawing or from a list.',
  example: '<AskEdge piece="flap">\n\nWhich edges of the flap take a seam allowance?\n\n</AskEdge>',
  attributes,
  names: { piece: 'piece' },
  texts: { hint: 'whole' },
  text: 'needed',
  view,
  check,
  paper,
  saves,
  asked,
  inSets: 'with new numbers',
};
