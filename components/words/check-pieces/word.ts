import { z } from 'zod';
import { paper } from './paper.ts';
import { measured, view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({});

export const CheckPieces: Word = {
  group: 'question',
  about:
    'All pieces of the cut list, each with room for what it really measures. All are compared at once, and each is told whether it is well.',
  example: '<CheckPieces />',
  attributes,
  view,
  paper,
  measured,
};
