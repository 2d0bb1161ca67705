import { choice, optional, work } from '../fields.ts';
import { rotate } from '../../cloth/index.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const quarterTurn = verb({
  name: 'quarter turn',
  fields: {
    'quarter turn': work('Turns a work by a quarter in its place, so that its top comes to lie at a side.'),
    towards: optional(choice(['left', 'right'], 'where its top comes to lie; left if left out.')),
  },
  handling: 0,
  title: ({ 'quarter turn': cloth, towards = 'left' }) => `Turn ${the(cloth)} by a quarter to the ${towards}`,
  tools: () => [],
  apply: ({ towards = 'left' }, { 'quarter turn': cloth }) => rotate(cloth, towards === 'left' ? 90 : -90),
});
