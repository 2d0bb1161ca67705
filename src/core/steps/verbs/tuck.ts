import { edgeOn } from '../../cloth/sides.ts';
import { length, optional, text, work } from '../fields.ts';
import { the } from '../words.ts';
import { tuck as sewTuck } from '../../cloth/pleat.ts';
import { verb } from '../verb.ts';

export const tuck = verb({
  name: 'tuck',
  fields: {
    tuck: work('Folds a tuck and sews it: { tuck: yoke, at: 3, from: top, depth: 1/4 }.'),
    at: length('the distance of its fold from the edge.'),
    depth: length('from its fold to its stitches.'),
    from: optional(text('the edge that at is measured from; top if left out.')),
  },
  ironsFirst: true,
  handling: 2,
  title: ({ tuck: cloth }) => `Sew a tuck in ${the(cloth)}`,
  tools: () => ['machine', 'ruler', 'pen', 'pins'],
  apply: ({ at, depth, from = 'top' }, { tuck: cloth }) => {
    const edge = edgeOn(cloth, from);
    return edge.ok ? sewTuck(cloth, { from: edge.value, at, depth }) : edge;
  },
});
