import { atEdges, the } from '../words.ts';
import { edges, work } from '../fields.ts';
import { rowFields, rowMeasured, rowsAlong, sewShut, throughLayers } from '../rows.ts';
import { verb } from '../verb.ts';

/** Where the row is sewn when the step does not say, in mm. Common practice, no source. */
const usual = { inch: 25.4 / 8, metric: 3 };

export const topstitch = verb({
  name: 'topstitch',
  fields: {
    topstitch: work(
      'Sews a visible row along edges, straight or curved, { topstitch: pocket, at: [left, curve, right] }, or all round an ' +
        'outline: { topstitch: panel, at: pocket outline }.',
    ),
    at: edges(),
    ...rowFields,
    'sew shut': sewShut,
  },
  handling: 4,
  title: ({ topstitch: cloth, at, ...row }) => `Topstitch ${the(cloth)}${atEdges(at)}${throughLayers(row)}`,
  measured: rowMeasured,
  tools: () => ['machine'],
  apply: ({ at, ...row }, { topstitch: cloth }, { edition }) => rowsAlong(cloth, at, 'topstitch', usual[edition], row),
});
