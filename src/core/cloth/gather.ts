import { acrossWork, sewn } from './stitch.ts';
import { asOneStep } from './group.ts';
import { direction } from '../geometry/point.ts';
import { fail, ok } from '../measure/index.ts';
import { findEdge, lineInside } from './edge.ts';
import { followedBy, lies } from './lie.ts';
import { movedMark, movedStitch } from './move.ts';
import type { Lie } from './lie.ts';
import type { Point } from '../geometry/index.ts';
import type { Ply, Sewn, Work } from './work.ts';

export type Gather = {
  readonly edge: string;
  /** The length that the edge is drawn up to, in mm. */
  readonly to: number;
  /** How far inside the edge the rows of stitches run, in mm; two rows, 6 mm apart (Sew magazine). */
  readonly rows?: readonly number[];
};

/** More cloth than this is not eased but gathered; a tenth is common practice, no source. */
const EASE = 1.1;
/** Sheers are gathered to a third (decorating notes on fullness); more than a fifth is a slip of the pen. */
const FULLEST = 5;

/**
 * Draws an edge up to a length. In the flat picture the whole work becomes narrower along the edge, and its cloth fuller
 * by the same share, so that area times fullness stays.
 *
 * Faults: those of finding the edge; `not-finite`; `not-shorter`; `too-full`.
 *
 * @example
 * gather(frill, { edge: 'top', to: 200 }).value.plies[0].fullness // => 2 for a frill of 400 mm
 */
export const gather = (work: Work, how: Gather): Sewn => drawUp(work, { rows: [6, 12], ...how }, 'gather', FULLEST);

/**
 * Eases an edge to a slightly shorter one, without folds. Faults: as for gathers; more than a tenth is `too-full`.
 *
 * @example
 * ease(sleeve, { edge: 'cap', to: 300 })
 */
export const ease = (work: Work, how: Gather): Sewn => drawUp(work, { rows: [], ...how }, 'ease', EASE);

function drawUp(work: Work, { edge: name, to, rows = [] }: Gather, did: 'gather' | 'ease', most: number): Sewn {
  const edge = findEdge(work, name);
  if (!edge.ok) return edge;
  const { length, line } = edge.value;
  if (!Number.isFinite(to) || to <= 0 || !rows.every(Number.isFinite)) {
    return fail({ code: 'not-finite', message: 'The length to draw the edge up to is not a length.', edge: name });
  }
  if (to > length) {
    const message = `The edge ${name} is shorter than that already.`;
    return fail({ code: 'not-shorter', message, edge: name, amount: to - length });
  }
  const fullness = length / to;
  if (fullness > most + 1e-9) {
    const message = `The edge ${name} has too much cloth to ${did} to that length.`;
    return fail({ code: 'too-full', message, edge: name, amount: length - most * to });
  }
  const middle = { x: (edge.value.from.x + edge.value.to.x) / 2, y: (edge.value.from.y + edge.value.to.y) / 2 };
  let now = narrowed(work, line.angle, middle, to / length);
  for (const inside of rows) now = sewn(now, 'gather', acrossWork(now, lineInside(edge.value, inside)));
  const stitches = now.stitches.slice(work.stitches.length).map(({ id }) => id);
  return ok(asOneStep(work.done, now, { did, stitches, drawnUp: { edge: name, from: length, to } }));
}

/** Everything drawn together along a way, about a point. */
function narrowed(work: Work, degrees: number, about: Point, share: number): Work {
  const { x: u, y: v } = direction(degrees);
  const k = share - 1;
  const [a, b, d] = [1 + k * u * u, k * u * v, 1 + k * v * v];
  const lie: Lie = { a, b, c: b, d, e: about.x - a * about.x - b * about.y, f: about.y - b * about.x - d * about.y };
  return {
    ...work,
    plies: work.plies.map((ply): Ply => ({
      ...ply,
      outline: ply.outline.map((edge) => ({ ...edge, from: lies(lie, edge.from) })),
      lie: followedBy(ply.lie, lie),
      fullness: ply.fullness / share,
    })),
    stitches: work.stitches.map((stitch) => movedStitch(stitch, lie)),
    marks: work.marks.map((mark) => movedMark(mark, lie)),
  };
}
