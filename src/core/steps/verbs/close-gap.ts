import { choice, optional, work } from '../fields.ts';
import { closeGap as close } from '../../cloth/gap.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const closeGap = verb({
  name: 'close gap',
  fields: {
    'close gap': work('Closes the gap a work was turned through.'),
    stitch: optional(choice(['by hand', 'by machine'], 'how; by hand if left out.')),
  },
  handling: 1,
  title: ({ 'close gap': cloth, stitch }) =>
    `Close the gap of ${the(cloth)}${stitch === 'by machine' ? '' : ' by hand'}`,
  tools: ({ stitch }) => (stitch === 'by machine' ? ['machine'] : ['needle']),
  apply: ({ stitch }, { 'close gap': cloth }) => close(cloth, stitch === 'by machine' ? 'edgestitch' : 'slipstitch'),
});
