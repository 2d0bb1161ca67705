import { atEdges, the } from '../words.ts';
import { edgeOn } from '../edges.ts';
import { edges, length, work } from '../fields.ts';
import { gather as drawUp } from '../../cloth/gather.ts';
import { verb } from '../verb.ts';

export const gather = verb({
  name: 'gather',
  fields: {
    gather: work('Draws an edge up to a length: { gather: skirt, at: top, to: waist }.'),
    at: edges('the edge that is drawn up.'),
    to: length('the length the edge is drawn up to.'),
  },
  handling: 4,
  title: ({ gather: cloth, at }) => `Gather ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine', 'pins'],
  apply: ({ at, to }, { gather: cloth }) => {
    const edge = edgeOn(cloth, at[0] ?? '');
    return edge.ok ? drawUp(cloth, { edge: edge.value.name, to }) : edge;
  },
});
