import { cutApart as cut } from '../../cloth/apart.ts';
import { length, optional, whole, work } from '../fields.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const cutApart = verb({
  name: 'cut apart',
  fields: {
    'cut apart': work(
      'Cuts a work across into slices alike, from the left, such as a set of strips: ' +
        '{ cut apart: strip set, every: 2 1/2, makes: pair }. Later steps take them one by one.',
    ),
    every: length('how wide each slice is.'),
    into: optional(whole('how many are cut. As many as there are if left out.')),
  },
  cuts: true,
  handling: 2,
  title: ({ 'cut apart': cloth, into }) => `Cut ${the(cloth)} apart${into === undefined ? '' : ` into ${into}`}`,
  measured: ({ every }) => [{ says: 'Cut across every ….', length: every }],
  tools: () => ['cutter', 'mat', 'ruler'],
  apply: ({ every, into }, { 'cut apart': cloth }) => cut(cloth, { every, ...(into !== undefined && { into }) }),
});
