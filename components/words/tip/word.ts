import { z } from 'zod';
import type { Word } from '../word.ts';

const attributes = z.strictObject({});

/** It has no view: all it shows is the text between its tags. */
export const Tip: Word = {
  group: 'note',
  about: 'A good way to do it.',
  example: '<Tip>\n\nMeasure three cards and take the widest.\n\n</Tip>',
  attributes,
  text: 'needed',
  anywhere: true,
};
