import { inverse, followedBy, transformPoint, translation } from '../geometry/transform.ts';
import { direction } from '../geometry/point.ts';
import { moved } from '../cloth/ring.ts';
import { movedMark, movedStitch } from '../cloth/move.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Ply, Work } from '../cloth/work.ts';

/** Cloth that stands upright is still seen as this share of its height: without any it would be no shape. */
const UPRIGHT = 0.02;

/**
 * A fold on its way, seen from above: what moves is foreshortened about the fold line, lies as it did until it stands
 * upright, and from there on shows its other face over, or under, what stays. Undefined where the last step of the
 * work was not one fold.
 *
 * @param at from 0, flat, to 1, folded
 */
export function foldInMotion(work: Work, at: number): Work | undefined {
  const undo = work.done.at(-1)?.undo;
  if (!undo || undo.after !== work.plies) return undefined;
  const turned = at >= 0.5;
  const share = Math.cos(Math.PI * at);
  const way = followedBy(
    inverse(undo.over),
    squashed(undo.over, turned ? Math.min(-UPRIGHT, share) : Math.max(UPRIGHT, share)),
  );
  const goes = ({ id }: Ply) => undo.came.get(id)?.moved ?? false;
  const plies = work.plies.map((ply): Ply => {
    if (!goes(ply)) return ply;
    const face = turned === (ply.face === 'right') ? 'right' : 'wrong';
    return { ...ply, outline: moved(ply.outline, way), face, transform: followedBy(ply.transform, way) };
  });
  if (!turned) {
    // Until it stands upright, it lies beside what stays, in the order it had.
    const order = new Map(undo.before.plies.map(({ id }, i) => [id, i]));
    const level = ({ id }: Ply) => order.get(undo.came.get(id)?.from ?? id) ?? 0;
    plies.sort((a, b) => level(a) - level(b));
  }
  const going = new Set(plies.filter(goes).map(({ id }) => id));
  return {
    ...work,
    plies,
    stitches: work.stitches.map((stitch) => {
      const there = movedStitch(stitch, way);
      return {
        ...stitch,
        runs: stitch.runs.map((run, i) => (run.plies.some((id) => going.has(id)) ? there.runs[i]! : run)),
      };
    }),
    marks: work.marks.map((mark) => (mark.plies.some((id) => going.has(id)) ? movedMark(mark, way) : mark)),
  };
}

/** Distances from the line of a turning over made `share` of what they were; less than 0 is on its other side. */
function squashed(over: Transform, share: number): Transform {
  const angle = (Math.atan2(over.b, over.a) * 90) / Math.PI;
  const { x, y } = direction(angle);
  // The foot of the origin on the line.
  const foot = { x: over.e / 2, y: over.f / 2 };
  const less = 1 - share;
  const about: Transform = { a: 1 - less * y * y, b: less * x * y, c: less * x * y, d: 1 - less * x * x, e: 0, f: 0 };
  const there = transformPoint(about, { x: -foot.x, y: -foot.y });
  return followedBy(about, translation({ x: foot.x + there.x, y: foot.y + there.y }));
}
