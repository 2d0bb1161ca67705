import { dart as sewDarts } from '../../cloth/dart.ts';
import { fail, listed, quote } from '../../measure/index.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import { work } from '../fields.ts';

export const dart = verb({
  name: 'dart',
  fields: {
    dart: work(
      'Sews the darts that a piece has under pieces: each is folded along its middle, sewn from the edge to its point, and ' +
        'pressed toward the middle.',
    ),
  },
  handling: 4,
  onWrongSide: true,
  title: ({ dart: piece }) => `Sew the darts of ${the(piece)}, and press them toward the middle`,
  tools: () => ['ruler', 'pen', 'pins', 'machine', 'iron'],
  pressing: () => 'a fold',
  apply: ({ dart: name }, { dart: work }, { dartsOf }) => {
    const pieces = [...new Set(work.plies.map(({ piece }) => piece))].filter((piece) => dartsOf(piece).length > 0);
    const [piece, ...others] = pieces;
    if (piece === undefined) {
      const message = `${quote(name)} has no darts under pieces.`;
      return fail({
        code: 'unknown-piece',
        message,
        fix: 'Give it some: darts: [{ on: top, at: middle, width: 3/4, length: 3 }].',
      });
    }
    if (others.length > 0) {
      const message = `Several pieces here have darts: ${listed(pieces)}.`;
      return fail({ code: 'held', message, fix: 'Sew them before the pieces are sewn together.' });
    }
    return sewDarts(work, piece, dartsOf(piece));
  },
});
