import { didYouMean, fail, ok, plainName, quote } from '../../measure/index.ts';
import { hasJoin, pushIn as push } from '../../cloth/put.ts';
import { pushTube, tubeRow } from '../../cloth/push-tube.ts';
import { text, work } from '../fields.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import type { Ply } from '../../cloth/index.ts';

export const pushIn = verb({
  name: 'push in',
  fields: {
    'push in': text(
      'Pushes the lining into the bag, once both are sewn together round their openings, or as one long tube, and turned: { push in: lining, into: bag }.',
    ),
    into: work('the work that both are now.'),
  },
  keeps: 'into',
  handling: 2,
  title: ({ 'push in': lining, into }) => `Push ${the(lining)} into ${the(into)}`,
  tools: () => ['iron'],
  pressing: () => 'a fold',
  apply: ({ 'push in': asked, into }, { into: cloth }, { nthOf }) => {
    const name = plainName(asked);
    const isOf = ({ piece }: Ply) => plainName(piece) === name || plainName(piece).startsWith(`${name} `);
    if (!hasJoin(cloth) && tubeRow(cloth)) return pushTube(cloth, isOf, { work: asked, nth: nthOf(asked) });
    return push(cloth, (put, inner, outer) => {
      if (name === plainName(put) || (inner.some(isOf) && !outer.some(isOf))) return ok('inner');
      if (outer.some(isOf) || name === plainName(into)) return ok('outer');
      const pieces = [...inner, ...outer].map(({ piece }) => piece);
      const fix = didYouMean(asked, [put, ...pieces]);
      const message = `Neither of the two works is called ${quote(asked)}, or has a piece of that name.`;
      return fail({ code: 'unknown-piece', message, field: 'push in', ...(fix && { fix }) });
    });
  },
});
