import { boxCorner as box } from '../../cloth/box.ts';
import { choice, edges, length, optional, work } from '../fields.ts';
import { applyEach } from '../../cloth/group.ts';
import { seam as seamField } from '../seams.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import type { BoxCorner } from '../../cloth/box.ts';

export const boxCorner = verb({
  name: 'box corner',
  fields: {
    'box corner': work('Boxes corners: { box corner: bag, at: [bottom left], square: 1 }.'),
    at: edges('the corners: bottom left, [bottom left, bottom right].'),
    square: length('the side of the square that is boxed off.'),
    from: optional(choice(['seam', 'raw edge'], 'what the square is measured from; seam if left out.')),
    seam: seamField,
  },
  cuts: true,
  handling: 4,
  title: ({ 'box corner': bag }) => `Box the corners of ${the(bag)}`,
  tools: () => ['machine', 'ruler', 'pins'],
  apply: ({ at, square, from = 'seam', seam }, { 'box corner': bag }, setting) => {
    // Turned, a bag has its allowances inside.
    const isTurned = bag.done.some(({ did }) => did === 'turn');
    const allowance = isTurned ? 0 : (seam ?? setting.seam);
    return applyEach(bag, at, (now, corner) =>
      box(now, { corner: corner as BoxCorner['corner'], square, from, allowance }),
    );
  },
});
