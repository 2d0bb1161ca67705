import { all, the } from '../words.ts';
import { choice, edges, group, length, optional, text, work } from '../fields.ts';
import { edgeOn, edgesOn } from '../../cloth/sides.ts';
import { fail } from '../../measure/index.ts';
import { frenchParts, seam as seamField } from '../seams.ts';
import { sewUp as sewFolded, sewUpFrench } from '../../cloth/sew-up.ts';
import { verb } from '../verb.ts';

export const sewUp = verb({
  name: 'sew up',
  fields: {
    'sew up': work(
      'Sews a folded work together at its own edges: a bag of one piece, { sew up: bag, at: [left, right] }, or a tube, ' +
        '{ sew up: band, at: left }. What is neither sewn nor folded stays open.',
    ),
    at: edges('the edges that are sewn, each where its two layers end together.'),
    seam: seamField,
    as: optional(
      choice(
        ['french seam'],
        'sewn twice, so that the raw edges are enclosed: first wrong sides together, as it lies, then right sides together. It ' +
          'lies wrong side out afterwards.',
      ),
    ),
    gap: optional(
      group(
        {
          edge: text('The edge it is left in.'),
          length: length('How long it is.'),
          begins: optional(
            length('From the seam at the left or lower end of the edge to the gap. In the middle if left out.'),
          ),
        },
        'the opening to turn the work through.',
      ),
    ),
  },
  handling: 2,
  title: ({ 'sew up': cloth, at, as, gap }) =>
    `Sew up ${the(cloth)} at ${all(at)}${as ? ' with French seams' : ''}${gap ? `, but for a gap at ${the(gap.edge)}` : ''}`,
  measured: ({ gap }) => (gap ? [{ says: `Leave a gap of … at ${the(gap.edge)}.`, length: gap.length }] : []),
  tools: ({ as }) => (as ? ['machine', 'pins', 'iron', 'scissors'] : ['machine', 'pins']),
  apply: ({ at, seam, as, gap }, { 'sew up': cloth }, setting) => {
    const found = edgesOn(cloth, at);
    if (!found.ok) return found;
    const gapEdge = gap && edgeOn(cloth, gap.edge);
    if (gapEdge && !gapEdge.ok) return gapEdge;
    if (as) {
      if (!gap) return sewUpFrench(cloth, found.value, frenchParts(seam ?? setting.seam));
      const message = 'No gap is left in a French seam: its raw edges would show there.';
      return fail({ code: 'no-gap', message, field: 'gap', fix: 'Leave “gap” out.' });
    }
    return sewFolded(cloth, {
      edges: found.value,
      allowance: seam ?? setting.seam,
      ...(gap && gapEdge && { gap: { ...gap, edge: gapEdge.value } }),
    });
  },
});
