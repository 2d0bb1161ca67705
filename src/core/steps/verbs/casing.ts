import { atEdges, the } from '../words.ts';
import { edges, length, optional, work } from '../fields.ts';
import { fail, SAME } from '../../measure/index.ts';
import { boxesStand } from '../../cloth/box.ts';
import { edgesOn } from '../../cloth/sides.ts';
import { hem } from '../../cloth/hem.ts';
import { sewsShut } from '../../cloth/openings.ts';
import { verb } from '../verb.ts';

/** The row of a casing runs this far inside its inner fold, in mm, beside the room for the cord. Common practice, no source. */
const beside = { inch: 25.4 / 16, metric: 2 };

export const casing = verb({
  name: 'casing',
  fields: {
    casing: work('Turns an edge to a casing for a cord: { casing: bag, at: top, width: 1 }.'),
    at: edges(),
    width: length('the room for the cord. The row beside it takes 1/16 in or 2 mm more.'),
    then: optional(length('how much is turned in first. Left out, the measure called seam.')),
  },
  onWrongSide: true,
  ironsFirst: true,
  handling: 4,
  title: ({ casing: cloth, at }) => `Make a casing in ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine', 'iron', 'ruler', 'pins'],
  apply: ({ at, width, then }, { casing: cloth }, { edition, seam }) => {
    const found = edgesOn(cloth, at);
    if (!found.ok) return found;
    const shut = sewsShut(cloth, found.value);
    if (shut) return fail(shut);
    const [turn, inside] = [then ?? seam, beside[edition]];
    if (turn > width + inside + SAME) {
      const message = 'What is turned in first is wider than the casing that it lies in.';
      return fail({ code: 'too-deep', message, amount: turn - width - inside });
    }
    return boxesStand(cloth, hem(cloth, { edges: found.value, turn, then: width + inside, inside }));
  },
});
