import { bothEdges, seam as seamField } from '../seams.ts';
import { eachAt } from '../words.ts';
import { edges, works } from '../fields.ts';
import { flatFelledSeam as sewFelled } from '../../cloth/enclosed.ts';
import { verb } from '../verb.ts';

export const flatFelledSeam = verb({
  name: 'flat-felled seam',
  fields: {
    'flat-felled seam': works('Seams two works; one allowance is folded round the other and sewn down.', {
      least: 2,
      most: 2,
    }),
    at: edges('the edge of each work: [right, left]; a single one stands for both.', { most: 2 }),
    seam: seamField,
  },
  handling: 5,
  title: ({ 'flat-felled seam': both, at }) => `Join ${eachAt(both, at)} with a flat-felled seam`,
  tools: () => ['machine', 'pins', 'iron', 'scissors'],
  apply: ({ at, seam }, { 'flat-felled seam': [a, b] }, setting) => {
    const named = bothEdges(at, a!, b!);
    if (!named.ok) return named;
    // 1/4 in trimmed to and 1/4 in turned of an allowance of 5/8 in (Whafi, How to sew a flat-felled seam).
    const allowance = seam ?? setting.seam;
    const part = 0.4 * allowance;
    return sewFelled(a!, b!, { edges: named.value, allowance, trimTo: part, turn: part });
  },
});
