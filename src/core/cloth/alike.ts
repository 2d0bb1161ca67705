import { SAME } from '../measure/index.ts';
import type { Point } from '../geometry/index.ts';
import type { Work } from './work.ts';

/**
 * Whether two works lie alike: each ply of one piece, cloth, face and outline, with the same rows and marks. Each is
 * measured from a place of its own, in mm from the left.
 *
 * @example isAlike(napkin, hemmed) // => false
 */
export function isAlike(a: Work, b: Work, from = 0, to = 0): boolean {
  const same = (p: readonly Point[], q: readonly Point[]) =>
    p.length === q.length &&
    p.every(({ x, y }) => q.some((other) => Math.hypot(x - from - other.x + to, y - other.y) < SAME));
  const ends = ({ stitches }: Work) => stitches.flatMap(({ runs }) => runs.flatMap((run) => [run.from, run.to]));
  return (
    a.plies.length === b.plies.length &&
    a.plies.every((ply, i) => {
      const other = b.plies[i]!;
      const isOne = (['piece', 'material', 'face'] as const).every((key) => ply[key] === other[key]);
      const corners = ({ outline }: typeof ply) => outline.map((edge) => edge.from);
      return isOne && same(corners(ply), corners(other));
    }) &&
    same(ends(a), ends(b)) &&
    same(
      a.marks.map(({ at }) => at),
      b.marks.map(({ at }) => at),
    )
  );
}
