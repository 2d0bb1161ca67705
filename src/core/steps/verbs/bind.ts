import { atEdges, the } from '../words.ts';
import { bind as bindEdge } from '../../cloth/bind.ts';
import { edgeOn } from '../../cloth/sides.ts';
import { fail } from '../../measure/index.ts';
import { edges, length, work } from '../fields.ts';
import { sewsShut } from '../../cloth/openings.ts';
import { verb } from '../verb.ts';

export const bind = verb({
  name: 'bind',
  fields: {
    bind: work('Binds an edge with the strip that “with” names.'),
    with: work('the strip.'),
    at: edges('the edge that is bound; one for each strip.'),
    width: length('finished width.'),
  },
  sewsBeforeFolding: true,
  ironsFirst: true,
  handling: 6,
  title: ({ bind: cloth, with: strip, at }) => `Bind ${the(cloth)}${atEdges(at)} with ${the(strip)}`,
  tools: () => ['machine', 'iron', 'clips'],
  apply: ({ at, width }, { bind: cloth, with: strip }) => {
    if (at.length > 1 || at[0] === 'all') {
      const message = 'A strip binds one edge here: round corners it cannot be laid yet.';
      return fail({ code: 'one-edge', message });
    }
    const edge = edgeOn(cloth, at[0] ?? '');
    if (!edge.ok) return edge;
    const shut = sewsShut(cloth, [edge.value]);
    return shut ? fail(shut) : bindEdge(cloth, strip, { edge: edge.value, width });
  },
});
