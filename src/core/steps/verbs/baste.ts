import { atEdges, the } from '../words.ts';
import { edges, optional, work } from '../fields.ts';
import { inFromEdge, rowsInside } from '../rows.ts';
import { verb } from '../verb.ts';

/** Where the row is sewn when the step does not say, in mm. Common practice, no source. */
const usual = { inch: 25.4 / 8, metric: 3 };

export const baste = verb({
  name: 'baste',
  fields: {
    baste: work('Long stitches that hold layers until a seam does: { baste: panel, at: [left, right] }.'),
    at: edges(),
    by: optional(inFromEdge),
  },
  handling: 1,
  title: ({ baste: cloth, at }) => `Baste ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine'],
  apply: ({ at, by }, { baste: cloth }, { edition }) => rowsInside(cloth, at, 'baste', by ?? usual[edition]),
});
