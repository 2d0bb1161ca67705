import { z } from 'zod';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({ step: z.string().describe('The id of a step in the project file.') });
export type Attributes = z.infer<typeof attributes>;

export const LayerStudy: Word = {
  group: 'study',
  about:
    'The layers of the work after a step, from above, cut through or taken apart: how many lie where, how thick they are, and what goes through them.',
  example: '<LayerStudy step="sew-round" />',
  attributes,
  names: { step: 'step' },
  view,
};
