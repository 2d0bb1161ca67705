import { atEdges, the } from '../words.ts';
import { choice, edges, length, optional, work } from '../fields.ts';
import { fail, SAME } from '../../measure/index.ts';
import { boxesStand } from '../../cloth/box.ts';
import { curvedAt } from '../../cloth/bind-curve.ts';
import { lengthInside } from '../../cloth/ribbon.ts';
import type { ClothFault } from '../../cloth/index.ts';
import type { CurvedEdge } from '../../cloth/bind-curve.ts';
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
    const curved = curvedAt(cloth, at);
    if (curved) return fail(puckers(curved, fold, then));
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

/** Why a curve is not hemmed: what is turned in is longer or shorter than where it comes to lie. */
function puckers({ ring, chains }: CurvedEdge, turn: number, then?: number): ClothFault {
  const lengthAt = (by: number) => chains.reduce((sum, one) => sum + lengthInside(one, by), 0);
  // The edge of the hem is its inner fold, or of a single turn the raw edge.
  const [edge, lands] = then === undefined ? [0, 2 * turn] : [turn, turn + 2 * then];
  const { name } = ring[chains[0]!.edges[0]!]!;
  const message = `The ${name} is curved: the edge that is turned in is … long there, and would have to lie along …. A hem would not lie flat.`;
  const fix =
    'Bind it with a strip on the bias, { bind: …, with: strip, at: …, width: … }, or face it with a piece of its shape.';
  return { code: 'not-straight', message, edge: name, lengths: [lengthAt(edge), lengthAt(lands)], fix };
}
