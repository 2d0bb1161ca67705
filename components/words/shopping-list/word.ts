import { z } from 'zod';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({});

export const ShoppingList: Word = {
  group: 'list',
  about: 'What one maker buys, worked out from the pieces and the stitches: cloth, thread, needles and the rest.',
  example: '<ShoppingList />',
  attributes,
  view,
};
