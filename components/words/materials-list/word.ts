import { z } from 'zod';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({});

export const MaterialsList: Word = {
  group: 'list',
  about: 'What the project is made of.',
  example: '<MaterialsList />',
  attributes,
  view,
};
