import { choice, edges, length, optional, work } from '../fields.ts';
import { fail } from '../../measure/index.ts';
import { foldInFour } from '../../cloth/fold-in-four.ts';
import { CLOSE } from '../rows.ts';
import { isSide } from '../../cloth/sides.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const foldStrip = verb({
  name: 'fold in four',
  fields: {
    'fold in four': work(
      'Folds a strip for a strap or a tie, wrong side inside: both long sides to the middle, and then in half. It is then a ' +
        'quarter as wide: { fold in four: strap, edgestitch: both sides }.',
    ),
    'ends in': optional(length('how much is turned in first at its ends, such as those of a tie.')),
    at: optional(edges('the end that is turned in, where it is one alone.')),
    from: optional(
      choice(['top', 'right', 'bottom', 'left'], 'a side that comes to the middle. Left out, its long sides do.'),
    ),
    edgestitch: optional(
      choice(
        ['open side', 'both sides'],
        'it is sewn close beside the side that opens, or beside both. Left out, it is pressed alone.',
      ),
    ),
  },
  onWrongSide: true,
  ironsFirst: true,
  handling: 6,
  title: ({ 'fold in four': strip, 'ends in': turned, at, edgestitch }) => {
    const ends = turned === undefined ? '' : `, ${at?.length === 1 ? `the ${at[0]!} end` : 'its ends'} turned in first`;
    const sewn =
      edgestitch === undefined ? '' : `, and sew along ${edgestitch === 'open side' ? 'the open side' : 'both sides'}`;
    return `Fold ${the(strip)} in four${ends}${sewn}`;
  },
  tools: ({ edgestitch }) => ['iron', 'ruler', ...(edgestitch ? (['machine'] as const) : [])],
  pressing: () => 'a fold',
  apply: ({ 'ends in': turned, at, from, edgestitch }, { 'fold in four': strip }, { edition }) => {
    const other = at?.find((side) => !isSide(side));
    if (turned === undefined && at) {
      const message = 'How much is turned in there is not said.';
      return fail({ code: 'one-edge', message, field: 'at', fix: 'Say it with “ends in”, or leave “at” out.' });
    }
    if (other !== undefined) {
      return fail({
        code: 'unknown-edge',
        message: 'An end is a side of the strip: top, right, bottom or left.',
        edge: other,
      });
    }
    return foldInFour(strip, {
      inside: CLOSE[edition],
      ...(from && { from }),
      ...(edgestitch && { edgestitch }),
      ...(turned !== undefined && { ends: { in: turned, ...(at && { at: at.filter(isSide) }) } }),
    });
  },
});
