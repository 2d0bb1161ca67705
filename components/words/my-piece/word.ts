import { z } from 'zod';
import { paper } from './paper.ts';
import { saves, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  piece: z.string().optional().describe('A piece of the project. Left out, the finished work.'),
  stage: z
    .enum(['cut', 'sewn'])
    .optional()
    .describe('cut: as it lies after cutting. sewn: between its seams, or folded where it has pleats. Left out, cut.'),
});
export type Attributes = z.infer<typeof attributes>;

export const MyPiece: Word = {
  group: 'question',
  about:
    'A place where learners write what their work really measures. It names the mistake that explains it best, and what can still be done.',
  example: '<MyPiece piece="facing">\n\nMeasure the piece you have cut.\n\n</MyPiece>',
  attributes,
  names: { piece: 'piece' },
  text: 'allowed',
  view,
  paper,
  saves,
  inSets: { because: 'measures a piece, and cannot be asked again.', fix: 'Take it out.' },
};
