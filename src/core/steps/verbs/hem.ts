import { atEdges, the } from '../words.ts';
import { choice, edges, length, optional, work } from '../fields.ts';
import { fail, SAME } from '../../measure/index.ts';
import { boxesStand } from '../../cloth/box.ts';
import { edgesOn } from '../../cloth/sides.ts';
import { hem as turnIn, hemOpening } from '../../cloth/hem.ts';
import { openingAsked, sewsShut } from '../../cloth/openings.ts';
import { verb } from '../verb.ts';

export const hem = verb({
  name: 'hem',
  fields: {
    hem: work(
      'Turns edges to the wrong side once or twice and sews them down; at an opening all round: { hem: bag, at: opening, fold: 1/4, then: 1 }.',
    ),
    fold: length('how much is turned in first.'),
    at: optional(edges()),
    then: optional(length('how much is turned in the second time; left out, a single turn.')),
    corners: optional(choice(['mitred', 'square'], 'how the corners are folded; square if left out.')),
  },
  onWrongSide: true,
  ironsFirst: true,
  handling: 3,
  title: ({ hem: cloth, at }) => `Hem ${the(cloth)}${atEdges(at)}`,
  tools: () => ['machine', 'iron', 'ruler', 'pins'],
  pressing: () => 'a fold',
  apply: ({ fold, at = ['all'], then, corners = 'square' }, { hem: cloth }) => {
    if (then !== undefined && fold > then + SAME) {
      const message = 'The first turn is wider than the hem that it lies in.';
      return fail({ code: 'too-deep', message, amount: fold - then });
    }
    const opening = openingAsked(cloth, at);
    if (opening) return opening.ok ? hemOpening(cloth, opening.value, { turn: fold, then }) : opening;
    const found = edgesOn(cloth, at);
    if (!found.ok) return found;
    const shut = sewsShut(cloth, found.value);
    if (shut) return fail(shut);
    return boxesStand(
      cloth,
      turnIn(cloth, { edges: found.value, turn: fold, corners, ...(then !== undefined && { then }) }),
    );
  },
});
