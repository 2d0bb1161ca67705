import { the } from '../words.ts';
import { turn as turnOut } from '../../cloth/turn.ts';
import { isJoined, turnThrough } from '../../cloth/put.ts';
import { verb } from '../verb.ts';
import { area, bounds } from '../../geometry/index.ts';
import { covers } from '../../cloth/ring.ts';
import { didYouMean, fail, plainName, quote } from '../../measure/index.ts';
import { length, optional, text, work } from '../fields.ts';
import type { Ply, Work } from '../../cloth/index.ts';

/** The piece that lies along the teeth of a zip in its own layer of a pair sewn round, from end to end. */
function shutBy({ plies, stitches }: Work, zip: string): string | undefined {
  const round = stitches.findLast((stitch) => stitch.round !== undefined)?.round;
  if (!round) return undefined;
  const isZip = ({ piece }: Ply) => plainName(piece) === plainName(zip);
  const from = plies.findIndex(({ id }) => id === round.over);
  for (const layer of [plies.slice(0, from), plies.slice(from)]) {
    const [tape] = layer.filter(isZip).toSorted((a, b) => area(b.outline) - area(a.outline));
    if (!tape) continue;
    const { x, y, width, height } = bounds(tape.outline);
    const middle = { x: x + width / 2, y: y + height / 2 };
    const behind = layer.find((ply) => !isZip(ply) && !round.caught.includes(ply.id) && covers(ply.outline, middle));
    return behind?.piece;
  }
  return undefined;
}

export const turn = verb({
  name: 'turn',
  fields: {
    turn: work('Turns a work right side out through its gap.'),
    'by way of': optional(
      text(
        'the piece that it is turned through where no gap is left: a zip that is open, { turn: pouch, by way of: zip }.',
      ),
    ),
    'turn of cloth': optional(
      length(
        'how much is allowed for the outside to go round its lining: taken off the lining, or rolled over the edge.',
      ),
    ),
  },
  turnsOver: true,
  turnsOut: true,
  handling: 3,
  title: ({ turn: cloth, 'by way of': through }) =>
    `Turn ${the(cloth)} right side out${through === undefined ? '' : ` by way of ${the(through)}`}`,
  tools: () => ['point turner', 'iron'],
  pressing: () => 'the work',
  apply: ({ 'by way of': through }, { turn: cloth }, { hardwareOf, kindOf }) => {
    if (isJoined(cloth)) return turnThrough(cloth);
    if (through === undefined) return turnOut(cloth);
    const field = 'by way of';
    const ply = cloth.plies.find(({ piece }) => plainName(piece) === plainName(through));
    if (!ply) {
      const fix = didYouMean(
        through,
        cloth.plies.map(({ piece }) => piece),
      );
      return fail({
        code: 'unknown-piece',
        message: `There is no piece ${quote(through)} here.`,
        field,
        ...(fix && { fix }),
      });
    }
    if (hardwareOf(ply.material)?.hardware === 'zip' || kindOf(ply.material) === undefined) {
      const behind = shutBy(cloth, through);
      if (behind === undefined) return turnOut(cloth, true);
      const message = `${quote(behind)} lies uncut along the teeth of ${quote(through)}: the zip opens, and the work does not.`;
      return fail({
        code: 'no-gap',
        message,
        field,
        fix: 'Join the zip between two works, or leave a gap when you sew round.',
      });
    }
    return fail({ code: 'no-gap', message: `${quote(through)} is no zip, and does not open.`, field });
  },
});
