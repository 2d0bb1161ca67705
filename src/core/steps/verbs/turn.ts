import { the } from '../words.ts';
import { turn as turnOut } from '../../cloth/turn.ts';
import { verb } from '../verb.ts';
import { length, optional, work } from '../fields.ts';

export const turn = verb({
  name: 'turn',
  fields: {
    turn: work('Turns a work right side out through its gap.'),
    'turn of cloth': optional(
      length(
        'how much is allowed for the outside to go round its lining: taken off the lining, or rolled over the edge.',
      ),
    ),
  },
  turnsOver: true,
  turnsOut: true,
  handling: 3,
  title: ({ turn: cloth }) => `Turn ${the(cloth)} right side out`,
  tools: () => ['point turner', 'iron'],
  pressing: () => 'the work',
  apply: (_, { turn: cloth }) => turnOut(cloth),
});
