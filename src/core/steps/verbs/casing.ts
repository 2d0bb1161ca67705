import { atEdges, the } from '../words.ts';
import { edges, length, optional, work } from '../fields.ts';
import { edgesOn } from '../edges.ts';
import { hem } from '../../cloth/hem.ts';
import { verb } from '../verb.ts';

/** The row of a casing runs this far inside its inner fold, in mm, beside the width that the cord needs. */
const INSIDE = 2;

export const casing = verb({
  name: 'casing',
  fields: {
    casing: work('Turns an edge to a casing for a cord: { casing: bag, at: top, width: 1 }.'),
    at: edges(),
    width: length('the room for the cord.'),
    then: optional(length('how much is turned in first. Left out, the measure called seam.')),
  },
  onWrongSide: true,
  ironsFirst: true,
  handling: 4,
  title: ({ casing: cloth, at }) => `Make a casing in ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine', 'iron', 'ruler', 'pins'],
  apply: ({ at, width, then }, { casing: cloth }, { seam }) => {
    const found = edgesOn(cloth, at);
    if (!found.ok) return found;
    const names = found.value.map(({ name }) => name);
    return hem(cloth, { edges: names, turn: then ?? seam, then: width + INSIDE, inside: INSIDE });
  },
});
