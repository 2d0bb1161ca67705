import { atEdges, the } from '../words.ts';
import { edges, length, optional, work } from '../fields.ts';
import { fail, ok, quote, SAME } from '../../measure/index.ts';
import { boxesStand } from '../../cloth/box.ts';
import { stripAsCasing, stripBetween, withChannels } from '../../cloth/channel.ts';
import { edgesOn } from '../../cloth/sides.ts';
import { hem, hemOpening } from '../../cloth/hem.ts';
import { openingAsked, sewsShut } from '../../cloth/openings.ts';
import { verb } from '../verb.ts';

/**
 * The row of a casing runs this far inside its inner fold, or inside the edge of the strip that it sews down, in mm, beside
 * the room for the cord. Common practice, no source.
 */
const beside = { inch: 25.4 / 16, metric: 2 };

export const casing = verb({
  name: 'casing',
  fields: {
    casing: work(
      'Makes a casing for a cord: an edge is turned, { casing: skirt, at: top, width: 1 }, or that of an opening all round, { casing: bag, at: opening, width: 1 }, or a strip that was laid on is topstitched along both edges and open at its ends, { casing: bag, at: [strip top, strip bottom] }.',
    ),
    at: edges(),
    width: optional(
      length(
        'of a turned edge, the room for the cord. The row beside it takes 1/16 in or 2 mm more. That of a strip is what lies between its rows.',
      ),
    ),
    then: optional(length('of a turned edge, how much is turned in first. Left out, the measure called seam.')),
    'way in': optional(
      length(
        'of one round an opening: how much of its row is left open on the upper side, to draw the cord or elastic in.',
      ),
    ),
    by: optional(length('of a strip, how far inside its edges it is sewn. Left out, 1/16 in or 2 mm.')),
  },
  onWrongSide: true,
  ironsFirst: true,
  handling: 4,
  measured: ({ 'way in': gap }) => (gap === undefined ? [] : [{ says: 'Leave … of the row open.', length: gap }]),
  title: ({ casing: cloth, at }) => `Make a casing in ${the(cloth)}${atEdges(at)}`,
  tools: ({ width }) => (width === undefined ? ['machine', 'pins'] : ['machine', 'iron', 'ruler', 'pins']),
  apply: ({ at, width, then, by, 'way in': gap }, { casing: cloth }, { edition, seam }) => {
    const opening = openingAsked(cloth, at);
    if (opening && !opening.ok) return opening;
    const found = opening ? ok([]) : edgesOn(cloth, at);
    if (!found.ok) return found;
    const strip = stripBetween(cloth, found.value);
    if (strip) {
      if (width === undefined && then === undefined) {
        return stripAsCasing(cloth, found.value, by ?? beside[edition], strip);
      }
      const message = `${quote(strip.laid.work)} is sewn down as it lies: the room for the cord is what lies between its rows.`;
      return fail({ code: 'unclear-casing', message });
    }
    if (width === undefined || by !== undefined) {
      const message = by === undefined ? 'How much room is there for the cord?' : 'No strip is sewn down here.';
      return fail({ code: 'unclear-casing', message });
    }
    const shut = sewsShut(cloth, found.value);
    if (shut) return fail(shut);
    const [turn, inside] = [then ?? seam, beside[edition]];
    if (turn > width + inside + SAME) {
      const message = 'What is turned in first is wider than the casing that it lies in.';
      return fail({ code: 'too-deep', message, amount: turn - width - inside });
    }
    if (!opening && gap !== undefined) {
      const message = 'A casing that is open at its ends needs no other way in.';
      return fail({ code: 'unclear-casing', message, field: 'way in', fix: 'Leave “way in” out.' });
    }
    if (opening) {
      const round = hemOpening(cloth, opening.value, { turn, then: width + inside, inside, gap });
      return round.ok ? ok(withChannels(cloth, round.value, width)) : round;
    }
    const made = hem(cloth, { edges: found.value, turn, then: width + inside, inside });
    return boxesStand(cloth, made.ok ? ok(withChannels(cloth, made.value, width)) : made);
  },
});
