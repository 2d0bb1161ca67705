import { z } from 'zod';
import { cautions } from './cautions.ts';
import { paper } from './paper.ts';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z
    .enum(Object.keys(cautions))
    .optional()
    .describe(`What can hurt: ${Object.keys(cautions).join(', ')}. Left out, only your own words.`),
});
export type Attributes = z.infer<typeof attributes>;

export const Caution: Word = {
  group: 'note',
  about: 'Where it can hurt. Your own words stand first, the usual ones for that tool after them.',
  example: '<Caution of="iron">\n\nLet each fold cool before you take hold of it.\n\n</Caution>',
  attributes,
  names: { of: 'caution' },
  text: 'allowed',
  anywhere: true,
  view,
  paper,
};
