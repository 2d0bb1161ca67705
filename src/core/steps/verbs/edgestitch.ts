import { atEdges, the } from '../words.ts';
import { edges, work } from '../fields.ts';
import { CLOSE, rowFields, rowMeasured, rowsAlong, sewShut, throughLayers } from '../rows.ts';
import { verb } from '../verb.ts';

export const edgestitch = verb({
  name: 'edgestitch',
  fields: {
    edgestitch: work('The same as topstitch, close to the edge.'),
    at: edges(),
    ...rowFields,
    'sew shut': sewShut,
  },
  handling: 4,
  title: ({ edgestitch: cloth, at, ...row }) => `Edgestitch ${the(cloth)}${atEdges(at)}${throughLayers(row)}`,
  measured: rowMeasured,
  tools: () => ['machine'],
  apply: ({ at, ...row }, { edgestitch: cloth }, { edition }) =>
    rowsAlong(cloth, at, 'edgestitch', CLOSE[edition], row),
});
