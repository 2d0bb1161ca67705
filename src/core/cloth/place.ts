import { followedBy, translation, rotation, reflection } from '../geometry/transform.ts';
import { boxOf } from './size.ts';
import { direction, minus, plus, times } from '../geometry/point.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Point } from '../geometry/index.ts';
import type { Ply, Work } from './work.ts';
import type { WorkEdge } from './edge.ts';

/** Which ends of two edges meet: their starts, walked with the cloth on the left, their middles, or their ends. */
export type Along = 'start' | 'middle' | 'end';

const pointOf = ({ from, to }: WorkEdge, along: Along): Point =>
  along === 'start' ? from : along === 'end' ? to : times(plus(from, to), 0.5);

/** How to lie so that one edge comes to lie on another, cloth on the same side, and so many mm inside it. */
export function onto(fixed: WorkEdge, moving: WorkEdge, inside: number, along: Along): Transform {
  const way = direction(fixed.line.angle);
  const at = plus(pointOf(fixed, along), { x: -way.y * inside, y: way.x * inside });
  const from = pointOf(moving, along);
  return followedBy(rotation(fixed.line.angle - moving.line.angle, from), translation(minus(at, from)));
}

/** How the work comes to lie when it is turned over in its place, left to right. */
export function overturning(work: Work): Transform {
  const box = boxOf(work.plies);
  return reflection({ at: { x: box.x + box.width / 2, y: 0 }, angle: 90 });
}

/** The plies of a work itself: what was laid on it, and may stand out beyond it, left out. */
export function ownPlies({ plies }: Work): readonly Ply[] {
  const own = plies.filter(({ laid }) => laid === undefined);
  return own.length > 0 ? own : plies;
}

/** The middle of the box round a work. */
export function middleOfWork({ plies }: Pick<Work, 'plies'>): Point {
  const box = boxOf(plies);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
