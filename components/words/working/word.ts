import { z } from 'zod';
import { quantityIn } from '../../page/held/quantities.ts';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z.string().describe('A formula; of a measure that follows from others, its name will do.'),
});
export type Attributes = z.infer<typeof attributes>;

export const Working: Word = {
  group: 'size',
  about:
    'A sum, worked out: with its names, with the numbers put in, and the result. It follows the learner’s size. The result waits where a question below asks for it.',
  example: '<Working of="panel width" />',
  attributes,
  names: { of: 'formula' },
  view,
  results: (pattern, { of }) => quantityIn(of, pattern),
};
