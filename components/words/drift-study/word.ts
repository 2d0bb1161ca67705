import { z } from 'zod';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z.string().describe('The finished size.'),
  seams: z.int().min(1).max(40).describe('How many seams lie across it.'),
  takes: z
    .union([z.literal(1), z.literal(2)])
    .optional()
    .describe(
      'Allowances of the size that each seam takes: 2 where it joins parts, 1 at an outer edge. 2 if left out.',
    ),
});
export type Attributes = z.infer<typeof attributes>;

export const DriftStudy: Word = {
  group: 'study',
  about: 'What becomes of a finished size when every seam is a little too wide: at worst, and as it is likely.',
  example: '<DriftStudy of="folio width" seams={2} takes={1} />',
  attributes,
  names: { of: 'length' },
  view,
};
