import { all, atEdges, the, withBetween } from '../words.ts';
import { fail, ok } from '../../measure/index.ts';
import { edgeOn, edgesOn } from '../../cloth/sides.ts';
import { edges, group, length, names, optional, text, works } from '../fields.ts';
import { lay } from '../../cloth/lay.ts';
import { seam as seamField } from '../seams.ts';
import { sewRound as sewPair } from '../../cloth/sew-round.ts';
import { verb } from '../verb.ts';
import type { Work } from '../../cloth/index.ts';

export const sewRound = verb({
  name: 'sew round',
  fields: {
    'sew round': works('Sews two works of one shape together all round, right sides together, but for a gap.', {
      least: 2,
      most: 2,
    }),
    between: optional(
      works('what is caught between the two, such as a flap. It lies on the first one; at says with which edge.'),
    ),
    at: optional(
      edges('with which edge what is caught between lies; its own edge, if that is another, comes second.', {
        most: 2,
      }),
    ),
    seam: seamField,
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
    open: optional(names('edges that are not sewn at all.')),
  },
  handling: 3,
  title: ({ 'sew round': pair, between, at, gap, open = [] }) => {
    const caught = between && between.length > 0 ? `${withBetween(between)}${atEdges(at)}` : '';
    if (open.length > 0) return `Sew ${all(pair)} together${caught}, leaving ${all(open)} open`;
    return `Sew ${all(pair)} together all round${caught}${gap ? `, but for a gap at ${the(gap.edge)}` : ''}`;
  },
  measured: ({ gap }) => {
    if (!gap) return [];
    const end = { top: 'left', bottom: 'left', left: 'bottom', right: 'bottom' }[gap.edge] ?? 'left or lower end';
    const from =
      gap.begins === undefined ? [] : [{ says: `It begins … from the seam at the ${end}.`, length: gap.begins }];
    return [{ says: `Leave a gap of … at ${the(gap.edge)}.`, length: gap.length }, ...from];
  },
  tools: () => ['machine', 'pins'],
  apply: (step, { 'sew round': [lower, upper], between = [] }, { seam: usual, nthOf }) => {
    const { at = [], seam, gap, open = [], between: names = [] } = step;
    const caught: Work[] = [];
    if (between.length > 0 && at.length === 0) {
      const message = `With which edge ${all(names)} is caught is not said.`;
      return fail({ code: 'no-edge', message });
    }
    for (const [i, loop] of between.entries()) {
      const [on, own] = [edgeOn(lower!, at[0]!), edgeOn(loop, at[1] ?? at[0]!)];
      if (!on.ok) return on;
      if (!own.ok) return own;
      const laid = lay(lower!, loop, {
        edges: [on.value, own.value],
        called: { work: names[i]!, nth: nthOf(names[i]!) },
      });
      if (!laid.ok) return laid;
      caught.push(withoutFirst(laid.value, lower!));
    }
    const left = open.length > 0 ? edgesOn(lower!, open) : ok([]);
    if (!left.ok) return left;
    const gapEdge = gap && edgeOn(lower!, gap.edge);
    if (gapEdge && !gapEdge.ok) return gapEdge;
    return sewPair(lower!, upper!, {
      allowance: seam ?? usual,
      open: left.value,
      ...(gap && gapEdge && { gap: { ...gap, edge: gapEdge.value } }),
      ...(caught.length > 0 && { caught }),
    });
  },
});

/** What was laid on a work, by itself and where it lies, with the book of its own steps. */
const withoutFirst = (both: Work, first: Work): Work => ({
  plies: both.plies.slice(first.plies.length),
  stitches: both.stitches.slice(first.stitches.length),
  marks: both.marks.slice(first.marks.length),
  done: both.done.slice(first.done.length, -1),
});
