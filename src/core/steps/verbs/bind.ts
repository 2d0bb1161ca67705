import { atEdges, the } from '../words.ts';
import { bind as bindEdge } from '../../cloth/bind.ts';
import { bindCurve, curvedAt } from '../../cloth/bind-curve.ts';
import { bindOpening } from '../../cloth/bind-opening.ts';
import { bindRound } from '../../cloth/bind-round.ts';
import { edgesOn } from '../../cloth/sides.ts';
import { fail } from '../../measure/index.ts';
import { edges, length, optional, work } from '../fields.ts';
import { sewShut } from '../rows.ts';
import { openingAsked, sewsShut, sewsShutAlong } from '../../cloth/openings.ts';
import { verb } from '../verb.ts';

export const bind = verb({
  name: 'bind',
  fields: {
    bind: work('Binds an edge with the strip that “with” names.'),
    with: work('the strip.'),
    at: edges(
      'the edge that is bound. Several that follow one another, or all, are bound with one strip that is mitred where ' +
        'they meet; all round, a seam joins its ends: { bind: mat, with: strip, at: all, width: 1/2 }. Along a curve the strip is ' +
        'cut on the bias, and is as long as the stitch line there. An opening is bound all round, too: ' +
        '{ bind: bag, with: strip, at: opening, width: 1/2 }.',
    ),
    width: length('finished width.'),
    seam: optional(
      length(
        'allowance of the seam that joins the ends of a strip that goes all round. Left out, the measure called seam.',
      ),
    ),
    'sew shut': sewShut,
  },
  sewsBeforeFolding: true,
  ironsFirst: true,
  handling: 6,
  title: ({ bind: cloth, with: strip, at }) =>
    `Bind ${the(cloth)}${at[0] === 'all' ? ' all round' : atEdges(at)} with ${the(strip)}`,
  tools: () => ['machine', 'iron', 'clips'],
  apply: ({ at, width, seam, 'sew shut': isMeant }, { bind: cloth, with: strip }, setting) => {
    const opening = openingAsked(cloth, at);
    if (opening) {
      if (!opening.ok) return opening;
      return bindOpening(cloth, strip, opening.value, { width, seam: seam ?? setting.seam });
    }
    const curved = curvedAt(cloth, at);
    if (curved) {
      const ways = curved.chains.map(({ frames }) => frames.map((one) => one.at));
      const shut = isMeant ? undefined : sewsShutAlong(cloth, ways, width);
      const isBias = setting.onBias(strip.plies[0]?.piece ?? '');
      return shut ? fail(shut) : bindCurve(cloth, strip, curved, { width, seam: seam ?? setting.seam, isBias });
    }
    const found = edgesOn(cloth, at);
    if (!found.ok) return found;
    const shut = isMeant ? undefined : sewsShut(cloth, found.value);
    if (shut) return fail(shut);
    if (found.value.length > 1) return bindRound(cloth, strip, { at, width, seam: seam ?? setting.seam });
    return bindEdge(cloth, strip, { edge: found.value[0]!, width });
  },
});
