import { asOneStep } from '../../cloth/group.ts';
import { count, length, optional, text, work } from '../fields.ts';
import { edgeOn } from '../../cloth/sides.ts';
import { fail, ok, SAME } from '../../measure/index.ts';
import { the } from '../words.ts';
import { tuck as sewTuck } from '../../cloth/pleat.ts';
import { verb } from '../verb.ts';

export const tuck = verb({
  name: 'tuck',
  fields: {
    tuck: work(
      'Folds a tuck and sews it, { tuck: yoke, at: 3, from: top, depth: 1/4 }, or several side by side: ' +
        '{ tuck: yoke, at: 3, depth: 1/4, tucks: 5, every: 1 }.',
    ),
    at: length('the distance of its fold from the edge; of several, that of the first.'),
    depth: length('from its fold to its stitches.'),
    from: optional(text('the edge that at is measured from; top if left out.')),
    tucks: optional(count('how many, each farther from the edge than the one before; one if left out.')),
    every: optional(length('from fold to fold on the flat cloth, more than twice the depth.')),
  },
  ironsFirst: true,
  handling: 2,
  title: ({ tuck: cloth, tucks = 1 }) => `Sew ${tucks === 1 ? 'a tuck' : `${tucks} tucks`} in ${the(cloth)}`,
  measured: ({ every }) =>
    every === undefined ? [] : [{ says: 'Their folds lie … from one another on the flat cloth.', length: every }],
  tools: () => ['machine', 'ruler', 'pen', 'pins'],
  apply: ({ at, depth, from = 'top', tucks = 1, every }, { tuck: cloth }) => {
    if (tucks > 1 !== (every !== undefined)) {
      const [field, message, fix] =
        tucks > 1
          ? ['tucks', 'How far these tucks lie from one another is not said.', 'Say it with “every”.']
          : ['every', 'One tuck lies from no other.', 'Say how many with “tucks”, or leave “every” out.'];
      return fail({ code: 'two-places', message: message, field: field, fix: fix });
    }
    if (every !== undefined && every < 2 * depth + SAME) {
      const message =
        'Each tuck takes …, and they lie only … from one another: nothing would be left between their stitches.';
      return fail({
        code: 'too-deep',
        message,
        field: 'every',
        lengths: [2 * depth, every],
        fix: 'Make “every” larger.',
      });
    }
    let now = cloth;
    for (let k = 0; k < tucks; k++) {
      const edge = edgeOn(now, from);
      if (!edge.ok) return edge;
      // Those before have taken up their cloth between the edge and this one.
      const sewn = sewTuck(now, { from: edge.value, at: at + k * ((every ?? 0) - 2 * depth), depth });
      if (!sewn.ok) return sewn;
      now = sewn.value;
    }
    const stitches = now.stitches.slice(cloth.stitches.length).map(({ id }) => id);
    return ok(asOneStep(cloth.done, now, { did: 'tuck', stitches }));
  },
});
