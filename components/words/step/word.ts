import { z } from 'zod';
import { makeUp } from '../../../src/core/index.ts';
import { sizesAfter } from '../../page/held/quantities.ts';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({ id: z.string().describe('The id of a step in the project file.') });
export type Attributes = z.infer<typeof attributes>;

export const Step: Word = {
  group: 'making',
  about:
    'One step of the making: before and after, what it measures now, tools, minutes and cautions, and a tick when it is done. Your own words may stand between the tags.',
  example: '<Step id="pleat">\n\nFold at one pair of ticks after the other.\n\n</Step>',
  attributes,
  names: { id: 'step' },
  text: 'allowed',
  view,
  results: (pattern, { id }) =>
    makeUp(pattern)
      .filter((step) => step.id === id)
      .flatMap(sizesAfter),
};
