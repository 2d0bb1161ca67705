import { z } from 'zod';
import { foldsAskedFor } from '../../page/held/quantities.ts';
import { questionHint, questionName } from '../question-fields.ts';
import { check } from './check.ts';
import { paper } from './paper.ts';
import { asked, foldIn, saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  piece: z.string().describe('A piece with pleats.'),
  fold: z.int().min(1).max(48).optional().describe('Which fold, counted in the order they are made: {3}.'),
  kind: z
    .enum(['mountain', 'valley'])
    .optional()
    .describe('Instead of one fold, all of a kind: each fold is a line to choose. Left out with fold, mountain.'),
  hint: questionHint,
  id: questionName.optional(),
});
export type Attributes = z.infer<typeof attributes>;

export const AskFold: Word = {
  group: 'question',
  about:
    'A question for a fold of a pleated piece, answered by pointing at its flat strip or from a list. Wrong places are those where people put it.',
  example: '<AskFold piece="pocket strip" fold={3}>\n\nWhere will the third fold lie?\n\n</AskFold>',
  attributes,
  names: { piece: 'pleated piece' },
  texts: { hint: 'whole' },
  text: 'needed',
  view,
  check,
  paper,
  saves,
  asked,
  inSets: 'with new numbers',
  asksFor: (pattern, given) => foldsAskedFor(pattern.pieces[String(given.piece)], foldIn(given)),
};
