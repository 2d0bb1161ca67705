import { z } from 'zod';
import { sizesOf } from '../../page/held/quantities.ts';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({ name: z.string().describe('A piece of the project.') });
export type Attributes = z.infer<typeof attributes>;

export const Piece: Word = {
  group: 'list',
  about: 'A drawing of one piece, to scale, with its sizes.',
  example: '<Piece name="pocket strip" />',
  attributes,
  names: { name: 'piece' },
  view,
  results: (pattern, { name }) => sizesOf(pattern.pieces[String(name)]),
};
