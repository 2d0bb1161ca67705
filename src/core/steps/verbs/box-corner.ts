import { allowancesAt, boxCorner as box, isCorner } from '../../cloth/box.ts';
import { choice, edges, length, optional, work } from '../fields.ts';
import { openEdges, openingsOf } from '../../cloth/openings.ts';
import { applyEach } from '../../cloth/group.ts';
import { fail, quote, SAME } from '../../measure/index.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';

export const boxCorner = verb({
  name: 'box corner',
  fields: {
    'box corner': work('Boxes corners: { box corner: bag, at: [bottom left], square: 1 }.'),
    at: edges('the corners: bottom left, [bottom left, bottom right].'),
    square: length('the side of the square that is boxed off.'),
    from: optional(choice(['seam', 'raw edge'], 'what the square is measured from; seam if left out.')),
    seam: optional(length('where the seams run. Left out, where they were sewn, or the measure called seam.')),
  },
  cuts: true,
  handling: 4,
  title: ({ 'box corner': bag }) => `Box the corners of ${the(bag)}`,
  tools: () => ['machine', 'ruler', 'pins'],
  apply: ({ at, square, from = 'seam', seam }, { 'box corner': bag }, setting) =>
    applyEach(bag, at, (now, name) => {
      const corner = name.trim().replace(/\s+/gu, ' ').toLowerCase();
      if (!isCorner(corner)) {
        const message = `${quote(name)} is no corner. Write bottom left, bottom right, top left or top right.`;
        return fail({ code: 'unknown-edge', message, edge: name });
      }
      const end = corner.startsWith('top') ? 'top' : 'bottom';
      if (openEdges(openingsOf(bag)).some(({ name: open }) => open === `${end} opening`)) {
        const message = `The ${end} is open: a corner is boxed where the side seam meets a closed end.`;
        return fail({ code: 'opening', message, edge: name, fix: 'Name the corners at the closed end.' });
      }
      // Turned, a bag has its allowances inside.
      const isTurned = bag.done.some(({ did }) => did === 'turn');
      const allowance = allowancesAt(bag, corner, isTurned ? 0 : (seam ?? setting.seam));
      const other = [allowance.side, allowance.end].find(
        (there) => seam !== undefined && there > SAME && Math.abs(there - seam) > SAME,
      );
      if (other !== undefined) {
        const message = `The seams beside the ${name} corner do not lie so far inside.`;
        return fail({ code: 'shapes-differ', message, edge: name, amount: Math.abs(other - seam!) });
      }
      return box(now, { corner, square, from, allowance });
    }),
});
