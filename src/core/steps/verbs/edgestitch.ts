import { atEdges, the } from '../words.ts';
import { edges, optional, work } from '../fields.ts';
import { inFromEdge, rowsThatShow, sewShut } from '../rows.ts';
import { verb } from '../verb.ts';

/** Where the row is sewn when the step does not say, in mm. Common practice, no source. */
const usual = { inch: 25.4 / 16, metric: 2 };

export const edgestitch = verb({
  name: 'edgestitch',
  fields: {
    edgestitch: work('The same as topstitch, close to the edge.'),
    at: edges(),
    by: optional(inFromEdge),
    'sew shut': sewShut,
  },
  handling: 4,
  title: ({ edgestitch: cloth, at }) => `Edgestitch ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine'],
  apply: ({ at, by, 'sew shut': shut }, { edgestitch: cloth }, { edition }) =>
    rowsThatShow(cloth, at, 'edgestitch', by ?? usual[edition], shut),
});
