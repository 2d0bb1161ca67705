import { atEdges, the } from '../words.ts';
import { edges, work } from '../fields.ts';
import { rowFields, rowMeasured, rowsAlong, throughLayers } from '../rows.ts';
import { verb } from '../verb.ts';

/** Where the row is sewn when the step does not say, in mm. Common practice, no source. */
const usual = { inch: 25.4 / 8, metric: 3 };

export const baste = verb({
  name: 'baste',
  fields: {
    baste: work('Long stitches that hold layers until a seam does: { baste: panel, at: [left, right] }.'),
    at: edges(),
    ...rowFields,
  },
  handling: 1,
  title: ({ baste: cloth, at, ...row }) => `Baste ${the(cloth)}${atEdges(at)}${throughLayers(row)}`,
  measured: rowMeasured,
  tools: () => ['machine'],
  apply: ({ at, ...row }, { baste: cloth }, { edition }) => rowsAlong(cloth, at, 'baste', usual[edition], row),
});
