import { atEdges, the } from '../words.ts';
import { edgeOn } from '../../cloth/sides.ts';
import { fail } from '../../measure/index.ts';
import { edges, length, work } from '../fields.ts';
import { gather as drawUp, gatherOpening } from '../../cloth/gather.ts';
import { openingAsked, sewsShut } from '../../cloth/openings.ts';
import { verb } from '../verb.ts';

/** Gathers are drawn deeper than their second row and than the seam to come, in mm. */
const [ROWS, BESIDE] = [12, 6];

export const gather = verb({
  name: 'gather',
  fields: {
    gather: work(
      'Draws one edge up to a length, and leaves the rest as it is: { gather: skirt, at: top, to: waist }; an opening all ' +
        'round: { gather: skirt, at: opening, to: waist }.',
    ),
    at: edges('the edge or the opening that is drawn up.'),
    to: length('the length that it is drawn up to; of an opening, how long it is round then.'),
  },
  handling: 4,
  title: ({ gather: cloth, at }) => `Gather ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine', 'pins'],
  apply: ({ at, to }, { gather: cloth }, { seam }) => {
    if (at.length > 1 || at[0] === 'all') {
      return fail({ code: 'one-edge', message: 'One edge is drawn up to a length.' });
    }
    const depth = Math.max(ROWS, seam) + BESIDE;
    const opening = openingAsked(cloth, at);
    if (opening) return opening.ok ? gatherOpening(cloth, opening.value, { to, depth }) : opening;
    const edge = edgeOn(cloth, at[0] ?? '');
    if (!edge.ok) return edge;
    const shut = sewsShut(cloth, [edge.value]);
    return shut ? fail(shut) : drawUp(cloth, { edge: edge.value, to, depth });
  },
});
