import { atEdges, the } from '../words.ts';
import { edges, optional, work } from '../fields.ts';
import { inFromEdge, rowsThatShow, sewShut } from '../rows.ts';
import { verb } from '../verb.ts';

/** Where the row is sewn when the step does not say, in mm. Common practice, no source. */
const usual = { inch: 25.4 / 8, metric: 3 };

export const topstitch = verb({
  name: 'topstitch',
  fields: {
    topstitch: work('Sews a visible row along edges.'),
    at: edges(),
    by: optional(inFromEdge),
    'sew shut': sewShut,
  },
  handling: 4,
  title: ({ topstitch: cloth, at }) => `Topstitch ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine'],
  apply: ({ at, by, 'sew shut': shut }, { topstitch: cloth }, { edition }) =>
    rowsThatShow(cloth, at, 'topstitch', by ?? usual[edition], shut),
});
