import { z } from 'zod';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  a: z.string().optional().describe('Width of the first piece. Left out, a usual one.'),
  b: z.string().optional().describe('Width of the second piece. Left out, a usual one.'),
  allowance: z.string().optional().describe('Seam allowance of both. Left out, a usual one.'),
});
export type Attributes = z.infer<typeof attributes>;

export const SeamStudy: Word = {
  group: 'study',
  about: 'Two pieces and an allowance each: what they come to once they are joined.',
  example: '<SeamStudy a="panel width" b="panel width" allowance="seam" />',
  attributes,
  names: { a: 'length', b: 'length', allowance: 'length' },
  view,
};
