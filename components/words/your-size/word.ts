import { z } from 'zod';
import type { Word } from '../word.ts';

const attributes = z.strictObject({});

/** It has no view: the panel shows the learner's own choices, which exist in the browser alone. */
export const YourSize: Word = {
  group: 'size',
  about: 'The panel in which a learner changes the size and the features, for the whole page.',
  example: '<YourSize />',
  attributes,
};
