import { z } from 'zod';
import { view } from './view.ts';
import { textIn } from '../given.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z
    .string()
    .describe('A measure, a formula over measures, or “layers of” a step: the most that it leaves in one place.'),
});
export type Attributes = z.infer<typeof attributes>;

export const Size: Word = {
  group: 'size',
  about: 'A size in the words of a sentence: a measure, or a sum of measures. It follows the edition and the sliders.',
  example: 'The panel is cut <Size of="panel width" /> wide.',
  attributes,
  names: { of: 'formula or layers' },
  view,
  sizeInText: ({ of }) => textIn(of),
};
