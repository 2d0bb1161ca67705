import { z } from 'zod';
import { lengths } from '../../page/held/quantities.ts';
import { view } from './view.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({});

export const CutList: Word = {
  group: 'list',
  about: 'The list of pieces to cut.',
  example: '<CutList />',
  attributes,
  view,
  results: ({ pieces }) => Object.values(pieces).flatMap(({ size }) => lengths(size.width, size.height)),
};
