import { drawIn, hasCasing } from '../../cloth/draw-in.ts';
import { fail, ok } from '../../measure/index.ts';
import { length, optional, text, work } from '../fields.ts';
import { openingNamed, openingsOf } from '../../cloth/openings.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

/** How far the ends of elastic overlap: its ring and 1 in or 25 mm are cut (Singer NZ, How to insert elastic in a casing). */
const lap = { inch: 25.4, metric: 25 };

export const draw = verb({
  name: 'draw',
  fields: {
    draw: work(
      'Draws elastic into a casing that goes round, joins it into a ring and closes the way in: { draw: elastic, into: skirt, to: waist }. ' +
        'A cord draws nothing up, and its ends hang out: { draw: cord, into: bag }.',
    ),
    into: work('the work with the casing.'),
    at: optional(text('the opening that the casing goes round, where there are several: top opening.')),
    to: optional(
      length('of elastic: how long the opening is round then. The elastic is cut as long as that, and its overlap.'),
    ),
    overlap: optional(
      length('how far the ends of the elastic overlap where they are sewn together. Left out, 1 in or 25 mm.'),
    ),
  },
  keeps: 'into',
  laysFirst: true,
  handling: 4,
  title: ({ draw: strip, into, at, to }) =>
    `Draw ${the(strip)} into the casing of ${the(into)}${at === undefined ? '' : ` at ${the(at)}`}${to === undefined ? '' : ', join its ends and close the way in'}`,
  tools: ({ to }) => (to === undefined ? ['safety pin'] : ['machine', 'safety pin', 'pins']),
  apply: ({ at, to, overlap }, { draw: strip, into }, { edition }) => {
    // Where one casing goes round alone, its opening is meant.
    const cased = openingsOf(into).filter(({ line }) => hasCasing(into, line));
    const opening = at === undefined && cased.length === 1 ? ok(cased[0]!) : openingNamed(into, at);
    if (!opening.ok) return opening;
    if (to === undefined && overlap !== undefined) {
      const message = 'The ends of a cord are not sewn together: only elastic, with “to”, has an overlap.';
      return fail({ code: 'unclear-casing', message, field: 'overlap', fix: 'Leave “overlap” out, or write “to”.' });
    }
    return drawIn(into, strip, {
      opening: opening.value,
      overlap: overlap ?? lap[edition],
      ...(to !== undefined && { to }),
    });
  },
});
