import { z } from 'zod';
import { makeUp } from '../../../src/core/index.ts';
import { sizesAfter } from '../../page/held/quantities.ts';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({});

export const MakeUp: Word = {
  group: 'making',
  about: 'All steps of the making, to be played through, with the numbers as a table.',
  example: '<MakeUp />',
  attributes,
  view,
  showsAllSteps: true,
  results: (pattern) => makeUp(pattern).flatMap(sizesAfter),
};
