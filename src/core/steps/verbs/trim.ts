import { atEdges, the } from '../words.ts';
import { edges, length, optional, size as sizeField, work } from '../fields.ts';
import { edgesOn } from '../../cloth/sides.ts';
import { applyEach } from '../../cloth/group.ts';
import { trim as cutOff } from '../../cloth/trim.ts';
import { verb } from '../verb.ts';

export const trim = verb({
  name: 'trim',
  fields: {
    trim: work('Cuts a work to a size, or so much off a side: all that lies there, or the allowances outside a seam.'),
    at: optional(edges()),
    by: optional(length('how much is trimmed off.')),
    size: optional(
      sizeField(
        'the size to cut to, in the middle of the work; on a unit with a slanting seam the ruler lies on that seam.',
      ),
    ),
  },
  cuts: true,
  handling: 1,
  title: ({ trim: cloth, at, size }) => `Trim ${the(cloth)}${size ? ' to size' : atEdges(at)}`,
  tools: () => ['cutter', 'mat', 'ruler'],
  apply: ({ at = [], by = 0, size }, { trim: cloth }) => {
    if (size) return cutOff(cloth, { size });
    const found = edgesOn(cloth, at);
    return found.ok ? applyEach(cloth, found.value, (now, edge) => cutOff(now, { edge, by })) : found;
  },
});
