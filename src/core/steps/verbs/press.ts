import { ok } from '../../measure/index.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import { work } from '../fields.ts';

export const press = verb({
  name: 'press',
  fields: { press: work('Presses a work.') },
  handledAtIron: true,
  handling: 1,
  title: ({ press: cloth }) => `Press ${the(cloth)}`,
  tools: () => ['iron', 'press cloth'],
  pressing: () => 'the work',
  apply: (_, { press: cloth }) => ok(cloth),
});
