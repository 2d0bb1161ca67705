import { flip } from '../../cloth/index.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import { work } from '../fields.ts';

export const turnOver = verb({
  name: 'turn over',
  fields: { 'turn over': work('Turns a work over in its place, left to right.') },
  turnsOver: true,
  handling: 0,
  title: ({ 'turn over': cloth }) => `Turn ${the(cloth)} over`,
  tools: () => [],
  apply: (_, { 'turn over': cloth }) => flip(cloth),
});
