import { clipCorners as clip } from '../../cloth/allowances.ts';
import { length, optional, work } from '../fields.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const clipCorners = verb({
  name: 'clip corners',
  fields: {
    'clip corners': work(
      'Cuts the allowances of a work sewn round across at its corners, and notches them on its curves.',
    ),
    by: optional(length('how far from the stitches it is cut. Left out, 3 mm.')),
  },
  cuts: true,
  handling: 1,
  title: ({ 'clip corners': cloth }) => `Clip the corners of ${the(cloth)}`,
  tools: () => ['scissors'],
  apply: ({ by }, { 'clip corners': cloth }) => clip(cloth, by),
});
