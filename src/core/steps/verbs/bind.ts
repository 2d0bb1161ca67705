import { atEdges, the } from '../words.ts';
import { bind as bindEdge } from '../../cloth/bind.ts';
import { edgeOn } from '../edges.ts';
import { edges, length, work } from '../fields.ts';
import { verb } from '../verb.ts';

export const bind = verb({
  name: 'bind',
  fields: {
    bind: work('Binds edges with the strip that “with” names.'),
    with: work('the strip.'),
    at: edges('the edge that is bound.'),
    width: length('finished width.'),
  },
  sewsBeforeFolding: true,
  ironsFirst: true,
  handling: 6,
  title: ({ bind: cloth, with: strip, at }) => `Bind ${the(cloth)}${atEdges(at)} with ${the(strip)}`,
  tools: () => ['machine', 'iron', 'clips'],
  apply: ({ at, width }, { bind: cloth, with: strip }) => {
    const edge = edgeOn(cloth, at[0] ?? '');
    return edge.ok ? bindEdge(cloth, strip, { edge: edge.value.name, width }) : edge;
  },
});
