import { z } from 'zod';
import { questionName, sumFields, sumTexts } from '../question-fields.ts';
import { check } from './check.ts';
import { paper } from './paper.ts';
import { asked, saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z.string().optional().describe('The answer: a formula over measures, or a measure that follows from others.'),
  asks: z
    .record(z.string().min(1), z.string().min(1))
    .optional()
    .describe(
      'Instead of one, several answers, each with its question: {{"depth + step": "How far to the next fold?"}}. The page sorts them by how many sums they take. The text between the tags then says what is practised.',
    ),
  also: z
    .array(z.string().min(1))
    .min(1)
    .optional()
    .describe(
      'Names of other questions of this lesson, chosen, ordered, matched or pointed at: {["first-fold", "terms"]}. One comes up after each sum that was right; edges and folds with new numbers. Its answers there do not touch those in the text.',
    ),
  numbers: z
    .enum(['rising', 'easy', 'finer', 'every mark'])
    .optional()
    .describe('How fine the numbers are; learners may choose otherwise. Left out, rising.'),
  rounds: z.int().min(1).max(10).optional().describe('How many in a row end it. Left out, {3}.'),
  ...sumFields,
  id: questionName.optional(),
});
export type Attributes = z.infer<typeof attributes>;

export const Practice: Word = {
  group: 'question',
  about:
    'Questions for sizes, or for how many, with new numbers again and again, until enough in a row were right at once. Its text names no sizes: each exercise lists what is given. It begins easy; with each right answer come questions that take more sums, and finer numbers. Other questions of the lesson can come up between the sums, mixed anew. On a worksheet those stand once, as questions of their own.',
  example: '<Practice of="panel width">\n\nHow wide do you cut the panel?\n\n</Practice>',
  attributes,
  names: { of: 'formula' },
  texts: { asks: 'meanings', ...sumTexts },
  text: 'needed',
  view,
  check,
  paper,
  saves,
  asked,
  inSets: {
    because: 'is a set of its own.',
    fix: 'Write its questions into this set, or take it out.',
  },
};
