import { z } from 'zod';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z.string().optional().describe('The cloth to begin with: a role under materials. Left out, the first.'),
});
export type Attributes = z.infer<typeof attributes>;

export const LayoutStudy: Word = {
  group: 'study',
  about:
    'The pieces on the cloth they are cut from: pick the cloth, its width, a pre-cut, offcuts of your own or several bolts, and how you cut; see how long a piece you buy.',
  example: '<LayoutStudy of="outer" />',
  attributes,
  names: { of: 'cloth' },
  view,
};
