import { z } from 'zod';
import { workedOut } from '../../page/held/quantities.ts';
import { sumFields, sumTexts } from '../question-fields.ts';
import { check } from './check.ts';
import { paper } from './paper.ts';
import { asked, saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z.string().describe('The answer: a measure, or a formula over measures.'),
  ...sumFields,
  id: z.string().min(1).optional().describe('A name of its own, when two questions of a lesson ask for the same.'),
});
export type Attributes = z.infer<typeof attributes>;

export const AskSize: Word = {
  group: 'question',
  about:
    'A question that asks for a size, or for how many. The text between the tags is the question. What stands above and prints the answer keeps it back until then.',
  example: '<AskSize of="panel width" hint="The seams lie outside.">\n\nHow wide do you cut the panel?\n\n</AskSize>',
  attributes,
  names: { of: 'formula' },
  texts: sumTexts,
  text: 'needed',
  view,
  check,
  paper,
  saves,
  asked,
  inSets: {
    because: 'takes a sum, and a set asks for those by itself.',
    fix: 'Write its sum into of or asks.',
  },
  asksFor: (pattern, { of }) => workedOut(of, pattern),
};
