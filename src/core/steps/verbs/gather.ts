import { atEdges, the } from '../words.ts';
import { edgeOn } from '../../cloth/sides.ts';
import { fail } from '../../measure/index.ts';
import { edges, length, work } from '../fields.ts';
import { gather as drawUp } from '../../cloth/gather.ts';
import { sewsShut } from '../../cloth/openings.ts';
import { verb } from '../verb.ts';

/** Gathers are drawn deeper than their second row and than the seam to come, in mm. */
const [ROWS, BESIDE] = [12, 6];

export const gather = verb({
  name: 'gather',
  fields: {
    gather: work('Draws one edge up to a length, and leaves the rest as it is: { gather: skirt, at: top, to: waist }.'),
    at: edges('the edge that is drawn up.'),
    to: length('the length the edge is drawn up to.'),
  },
  handling: 4,
  title: ({ gather: cloth, at }) => `Gather ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine', 'pins'],
  apply: ({ at, to }, { gather: cloth }, { seam }) => {
    if (at.length > 1 || at[0] === 'all') {
      return fail({ code: 'one-edge', message: 'One edge is drawn up to a length.' });
    }
    const edge = edgeOn(cloth, at[0] ?? '');
    if (!edge.ok) return edge;
    const shut = sewsShut(cloth, [edge.value]);
    return shut ? fail(shut) : drawUp(cloth, { edge: edge.value, to, depth: Math.max(ROWS, seam) + BESIDE });
  },
});
