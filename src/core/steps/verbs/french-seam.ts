import { bothEdges, frenchParts, seam as seamField } from '../seams.ts';
import { eachAt } from '../words.ts';
import { edges, works } from '../fields.ts';
import { frenchSeam as sewFrench } from '../../cloth/enclosed.ts';
import { verb } from '../verb.ts';

export const frenchSeam = verb({
  name: 'french seam',
  fields: {
    'french seam': works('Seams two works with the raw edges enclosed.', { least: 2, most: 2 }),
    at: edges('the edge of each work: [right, left]; a single one stands for both.', { most: 2 }),
    seam: seamField,
  },
  handling: 5,
  title: ({ 'french seam': both, at }) => `Join ${eachAt(both, at)} with a French seam`,
  tools: () => ['machine', 'pins', 'iron', 'scissors'],
  apply: ({ at, seam }, { 'french seam': [a, b] }, setting) => {
    const named = bothEdges(at, a!, b!);
    if (!named.ok) return named;
    return sewFrench(a!, b!, { edges: named.value, ...frenchParts(seam ?? setting.seam) });
  },
});
