import { atEdges, the } from '../words.ts';
import { edges, work } from '../fields.ts';
import { rowFields, rowMeasured, rowsAlong, sewShut, throughLayers } from '../rows.ts';
import { verb } from '../verb.ts';

/** Where the row is sewn when the step does not say, in mm. Common practice, no source. */
const usual = { inch: 25.4 / 16, metric: 2 };

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
    rowsAlong(cloth, at, 'edgestitch', usual[edition], row),
});
