import { atEdges, the } from '../words.ts';
import { edges, length, optional, work } from '../fields.ts';
import { fail } from '../../measure/index.ts';
import { pipe as sewPiping } from '../../cloth/pipe.ts';
import { verb } from '../verb.ts';

/** How far the ends of a strip overlap where piping goes all round, in mm. Common practice, no source. */
const OVERLAP = { inch: 25.4, metric: 25 };

export const pipe = verb({
  name: 'pipe',
  fields: {
    pipe: work(
      'Folds a strip round a cord and bastes it along raw edges, the cord inside, so that the seam round them catches it: ' +
        '{ pipe: front, with: strip, cord: cord, at: all }.',
    ),
    with: work(
      'the strip. It is as wide as its cord is round and two allowances; along a curve it is cut on the bias.',
    ),
    cord: work('the cord, at least as long as the stitch line that it goes along.'),
    at: edges(
      'the edges that are piped, or all. The stitch line of a piece has a name in formulas: front stitch line.',
    ),
    seam: optional(
      length(
        'from the raw edges to the row beside the cord, and so the seam to come. Left out, the measure called seam.',
      ),
    ),
    overlap: optional(
      length('where it goes all round: how far the ends of the strip overlap. Left out, 1 in or 25 mm.'),
    ),
  },
  cuts: true,
  foot: 'zip',
  handling: 8,
  title: ({ pipe: cloth, with: strip, cord, at }) =>
    `Fold ${the(strip)} round ${the(cord)}, and baste it to ${the(cloth)}${at[0] === 'all' ? ' all round' : atEdges(at)}, raw edges together`,
  measured: ({ overlap }) =>
    overlap === undefined ? [] : [{ says: 'The ends of the strip overlap by ….', length: overlap }],
  tools: () => ['machine', 'pins', 'scissors'],
  apply: (
    { with: name, at, seam, overlap },
    { pipe: cloth, with: strip, cord },
    { edition, seam: usual, nthOf, onBias },
  ) => {
    if (overlap !== undefined && overlap <= 0) {
      return fail({
        code: 'too-deep',
        message: 'The ends of the strip would not overlap.',
        field: 'overlap',
        fix: 'Make “overlap” larger.',
      });
    }
    return sewPiping(cloth, strip, cord, {
      at,
      seam: seam ?? usual,
      overlap: overlap ?? OVERLAP[edition],
      called: { work: name, nth: nthOf(name) },
      isBias: onBias(strip.plies[0]?.piece ?? name),
    });
  },
});
