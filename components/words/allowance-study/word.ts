import { z } from 'zod';
import { sizesOf } from '../../page/held/quantities.ts';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({ piece: z.string().describe('A piece with seam allowances.') });
export type Attributes = z.infer<typeof attributes>;

export const AllowanceStudy: Word = {
  group: 'study',
  about: 'From the finished size and the allowance of each edge to the cut size.',
  example: '<AllowanceStudy piece="flap" />',
  attributes,
  names: { piece: 'piece' },
  view,
  results: (pattern, { piece }) => sizesOf(pattern.pieces[String(piece)]),
};
