import { z } from 'zod';
import { sizesOf } from '../../page/held/quantities.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({ piece: z.string().describe('A piece with pleats.') });
export type Attributes = z.infer<typeof attributes>;

/** It has no view: its drawings are made while a slider moves, from the pattern that every page has. */
export const PleatStudy: Word = {
  group: 'study',
  about: 'Sliders for the pleats of a piece; the strip, the folded front and the section follow, fold by fold.',
  example: '<PleatStudy piece="pocket strip" />',
  attributes,
  names: { piece: 'pleated piece' },
  results: (pattern, { piece }) => sizesOf(pattern.pieces[String(piece)]),
};
