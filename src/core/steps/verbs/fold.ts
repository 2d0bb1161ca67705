import { all, the } from '../words.ts';
import { boxesStand } from '../../cloth/box.ts';
import { boxOf } from '../../cloth/size.ts';
import { fail } from '../../measure/index.ts';
import { choice, length, names, optional, work } from '../fields.ts';
import { fold as foldAlong } from '../../cloth/index.ts';
import { verb } from '../verb.ts';
import { withoutPiping } from '../../cloth/piping.ts';
import type { Line } from '../../geometry/index.ts';
import type { Work } from '../../cloth/index.ts';

const sides = ['top', 'right', 'bottom', 'left'] as const;

export const fold = verb({
  name: 'fold',
  fields: {
    fold: work('Folds a work along a line: { fold: folio, from: top, at: 2 }.'),
    at: length('the distance of the line from the edge.'),
    from: optional(choice(sides, 'the edge that at is measured from; top if left out.')),
    lands: optional(choice(['over', 'under'], 'where the folded part comes to lie; over if left out.')),
    only: optional(names('the pieces that fold, when others stay.')),
    'turn of cloth': optional(
      length('how much is allowed for the fold itself, where a flap goes round the top of a bag, or many layers fold.'),
    ),
  },
  handling: 1,
  title: ({ fold: cloth, only, lands = 'over' }) => `Fold ${only ? `${all(only)} of ` : ''}${the(cloth)} ${lands}`,
  tools: () => [],
  apply: ({ at, from = 'top', lands = 'over', only }, { fold: cloth }) => {
    const { width, height } = boxOf(withoutPiping(cloth).plies);
    const most = from === 'left' || from === 'right' ? width : height;
    if (!(at > 0 && at < most)) {
      const message =
        at > 0
          ? 'The fold line lies beyond the other side of the work.'
          : 'The fold line lies at the edge: nothing is folded.';
      return fail({ code: 'misses', message, amount: Math.abs(at > 0 ? at - most : at) });
    }
    const plies = only && new Set(cloth.plies.flatMap((ply) => (only.includes(ply.piece) ? ply.id : [])));
    return boxesStand(cloth, foldAlong(cloth, { line: lineFrom(cloth, from, at), lands, ...(plies && { plies }) }));
  },
});

/** The line across a work, so far from a side of the box round it; what moves lies right of it. */
export function lineFrom(work: Work, side: (typeof sides)[number], by: number): Line {
  const { x, y, width, height } = boxOf(withoutPiping(work).plies);
  switch (side) {
    case 'bottom':
      return { at: { x, y: y + by }, angle: 0 };
    case 'left':
      return { at: { x: x + by, y }, angle: 270 };
    case 'right':
      return { at: { x: x + width - by, y }, angle: 90 };
    case 'top':
      return { at: { x, y: y + height - by }, angle: 180 };
  }
}
