import { z } from 'zod';
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
};
