/** Where on a work something lies that is to meet a mark once the work is folded shut. */
import { covers } from '../../cloth/ring.ts';
import { distance } from '../../geometry/point.ts';
import { followedBy, inverse, transformPoint } from '../../geometry/transform.ts';
import { layersAt } from '../../cloth/index.ts';
import { SAME } from '../../measure/index.ts';
import type { Mark, Work } from '../../cloth/index.ts';
import type { Point } from '../../geometry/index.ts';

/**
 * The point that the last fold brings to lie on a mark: of all that comes to lie there then, what is nearest to it in the
 * stack. Undefined where nothing comes to lie on it.
 *
 * @param work as it lies now, with the mark
 * @param later as it lies after each of the later steps
 */
export function meetsAt(work: Work, mark: Mark, later: Iterable<Work>): Point | undefined {
  let [known, met] = [placesOn(work, work, mark), undefined as Point | undefined];
  for (const then of later) {
    const there = then.marks.find(({ step }) => step === mark.step);
    if (!there) return met;
    const places = placesOn(work, then, there);
    met = places.find((one) => !known.some((before) => distance(before, one) < SAME)) ?? met;
    known = places;
  }
  return met;
}

/** The points of a work, as it lies now, that lie at a mark later: from those nearest to it in the stack to those farthest. */
function placesOn(now: Work, later: Work, mark: Mark): Point[] {
  const layers = layersAt(later, mark.at);
  const own = layers.flatMap(({ id }, level) => (mark.plies.includes(id) ? [level] : []));
  const away = (level: number) => Math.min(...own.map((one) => Math.abs(one - level)));
  return layers
    .map((ply, level) => ({ ply, off: away(level) }))
    .toSorted((a, b) => a.off - b.off)
    .flatMap(({ ply }) =>
      now.plies.flatMap((before) => {
        if (before.piece !== ply.piece || (before.copy ?? 0) !== (ply.copy ?? 0)) return [];
        const at = transformPoint(followedBy(inverse(ply.transform), before.transform), mark.at);
        return covers(before.outline, at) ? [at] : [];
      }),
    );
}
