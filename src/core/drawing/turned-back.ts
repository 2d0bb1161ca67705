import { boxOf } from '../cloth/size.ts';
import { covers } from '../cloth/ring.ts';
import { fold, runLeftOf } from '../cloth/fold.ts';
import { outlineNow } from '../cloth/outline-now.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Ply, Work } from '../cloth/work.ts';
import type { SeenFrom } from '../cloth/visible.ts';

/** How much of the shorter side of what lies on top its corner takes along either edge. */
const SHARE = 0.3;

/** As little as this, in mm², is nothing. */
const LEFT_OUT = 0.1;

/** The four corners, that at the upper right of the drawing first. */
const CORNERS = [
  { x: 1, y: 1 },
  { x: -1, y: 1 },
  { x: 1, y: -1 },
  { x: -1, y: -1 },
];

/**
 * A work with a corner of some plies folded back, for the drawing alone: it shows which face they lie on, and what is
 * below. Rows end where the corner is folded, as if it had not been sewn yet. The work as it is where nothing lies
 * below a corner, where other plies lie nearer to the eye, or a fold or hardware would be torn.
 *
 * @param upper the plies that lie on the others, by number
 * @param side from where the work is seen; the corner is folded towards the eye
 */
export function turnedBack(work: Work, upper: ReadonlySet<number>, side: SeenFrom): Work {
  const front = side === 'front';
  const towardsTheEye = front ? work.plies : work.plies.toReversed();
  const from = towardsTheEye.findIndex(({ id }) => upper.has(id));
  const [below, above] = [towardsTheEye.slice(0, from), towardsTheEye.slice(from)];
  if (below.length === 0 || !above.every(({ id }) => upper.has(id))) return work;
  const { width, height } = boxOf(above);
  const deep = (SHARE * Math.min(width, height)) / Math.SQRT2;
  for (const { x, y } of CORNERS) {
    const outwards = { x: (front ? x : -x) * Math.SQRT1_2, y: y * Math.SQRT1_2 };
    const folded = folding(work, { above, below, outwards, deep, lands: front ? 'over' : 'under' });
    if (folded) return folded;
  }
  return work;
}

type Corner = {
  readonly above: readonly Ply[];
  readonly below: readonly Ply[];
  /** The way from the middle of the work to the corner, of length 1. */
  readonly outwards: Point;
  /** How far the line to fold along lies from the corner, in mm. */
  readonly deep: number;
  readonly lands: 'over' | 'under';
};

function folding(work: Work, { above, below, outwards, deep, lands }: Corner): Work | undefined {
  const along = (p: Point) => p.x * outwards.x + p.y * outwards.y;
  const points = above.flatMap(({ outline }) => outline.map(({ from }) => from));
  const tip = points.reduce((best, p) => (along(p) > along(best) ? p : best));
  const back = (by: number): Point => ({ x: tip.x - outwards.x * by, y: tip.y - outwards.y * by });
  // Cloth on the left of the line stays.
  const line: Line = { at: back(deep), angle: (Math.atan2(outwards.x, -outwards.y) * 180) / Math.PI };
  if (!below.some(({ outline }) => covers(outline, back(deep * 0.5)))) return undefined;
  // What is too narrow for its corner shows nothing when it is folded back.
  if (!above.some(({ outline }) => covers(outline, back(deep * 1.8)))) return undefined;
  if (work.marks.some(({ at }) => along(tip) - along(at) < 2.4 * deep)) return undefined;
  const ids = new Set(above.map(({ id }) => id));
  const loose = { ...work, stitches: [], marks: [] };
  const folded = fold(loose, { line, lands, plies: ids });
  // What stands out beyond all that lies below would be missing from the outline of the work.
  if (!folded.ok || Math.abs(areaOf(folded.value) - areaOf(work)) > LEFT_OUT) return undefined;
  const stitches = work.stitches.map((stitch) => ({
    ...stitch,
    runs: stitch.runs.flatMap((run) => (run.plies.some((id) => ids.has(id)) ? runLeftOf(run, line) : [run])),
  }));
  return { ...folded.value, stitches, marks: work.marks, done: work.done };
}

const areaOf = (work: Work): number => outlineNow(work).reduce((sum, { area }) => sum + area, 0);
