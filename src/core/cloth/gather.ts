import { cutRunAt } from './fold.ts';
import { sewn } from './stitch.ts';
import { pathsInside } from './paths-inside.ts';
import { asOneStep } from './group.ts';
import { direction, plus, times } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { findEdge, lineInside } from './edge.ts';
import { followedBy, transformPoint } from '../geometry/transform.ts';
import { leftOf } from '../geometry/index.ts';
import { movedMark, movedRun } from './move.ts';
import { nextNumber } from './work.ts';
import { offsets, ON, split } from './ring.ts';
import { withPlies } from './combine.ts';
import type { EdgeReference, WorkEdge } from './edge.ts';
import type { ClothFault } from './fault.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Ply, Run, Sewn, Stitch, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

export type Gather = {
  readonly edge: EdgeReference;
  /** The length that the edge is drawn up to, in mm. */
  readonly to: number;
  /** How far inside the edge the rows of stitches run, in mm; two rows, 6 mm apart (Sew magazine). */
  readonly rows?: readonly number[];
  /** How deep the cloth beside the edge is drawn up in the picture, in mm: deeper than the rows and the seam there. */
  readonly depth?: number;
};

/** More cloth than this is not eased but gathered; a tenth is common practice, no source. */
const EASE = 1.1;
/** Sheers are gathered to a third (decorating notes on fullness); more than a fifth is a slip of the pen. */
const FULLEST = 5;

/** What the line is called below which the cloth keeps its size. */
export const GATHERS = 'gathers';

/** The second row of gathers lies 12 mm in; half as much again is drawn up with it. */
const DEPTH = 18;

/**
 * Draws an edge up to a length. The edge becomes shorter and the cloth beside it fuller by the same share, so that area
 * times fullness stays; in the flat picture that is a strip along the edge, below which the rest keeps its size. What
 * was laid or sewn on further in stays as it is.
 *
 * Faults: those of finding the edge; `not-finite`; `not-shorter`; `too-full`; `blocked` when something lies there that
 * does not end at the edge.
 *
 * @example
 * gather(frill, { edge: 'top', to: 200 }).value.plies.at(-1).fullness // => 2 for a frill of 400 mm
 */
export const gather = (work: Work, how: Gather): Sewn => drawUp(work, { rows: [6, 12], ...how }, 'gather', FULLEST);

/**
 * Eases an edge to a slightly shorter one, without folds. Faults: as for gathers; more than a tenth is `too-full`.
 *
 * @example
 * ease(sleeve, { edge: 'cap', to: 300 })
 */
export const ease = (work: Work, how: Gather): Sewn => drawUp(work, { rows: [], ...how }, 'ease', EASE);

function drawUp(work: Work, how: Gather, did: 'gather' | 'ease', most: number): Sewn {
  const { edge: asked, to, rows = [], depth = DEPTH } = how;
  const edge = findEdge(work, asked);
  if (!edge.ok) return edge;
  const { length, line, name } = edge.value;
  if (!Number.isFinite(to + depth) || to <= 0 || depth <= 0 || !rows.every(Number.isFinite)) {
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
  // Half of a narrow frill is left as wide as it was.
  const across = Math.max(...work.plies.flatMap((ply) => offsets(ply.outline, line)));
  const foot = lineInside(edge.value, Math.min(depth, across / 2));
  const middle = { x: (edge.value.from.x + edge.value.to.x) / 2, y: (edge.value.from.y + edge.value.to.y) / 2 };
  const drawn = drawnAt(work, edge.value, foot, narrowing(line.angle, middle, to / length), to / length);
  if (!drawn.ok) return drawn;
  let now = drawn.value;
  const short = { ...edge.value, from: alongTo(edge.value, middle, to, -1), to: alongTo(edge.value, middle, to, 1) };
  for (const inside of rows) {
    for (const way of pathsInside(now, [short], inside)) now = sewn(now, 'gather', way);
  }
  const stitches = now.stitches.slice(work.stitches.length).map(({ id }) => id);
  // The rows hold the cloth where it goes on below what is drawn up.
  const [held] = stitches;
  const known = new Set(work.plies.flatMap((ply) => ply.outline.flatMap((one) => one.held ?? [])));
  now = withPlies(now, (ply) => ({
    ...ply,
    outline: ply.outline.map((one) =>
      one.name === GATHERS && held !== undefined && !known.has(one.held!) ? { ...one, held } : one,
    ),
  }));
  return ok(asOneStep(work.done, now, { did, stitches, drawnUp: { edge: name, from: length, to } }));
}

const alongTo = ({ line }: WorkEdge, middle: Point, length: number, sign: 1 | -1): Point =>
  plus(middle, times(direction(line.angle), (sign * length) / 2));

/** Everything drawn together along a way, about a point. */
function narrowing(degrees: number, about: Point, share: number): Transform {
  const { x: u, y: v } = direction(degrees);
  const k = share - 1;
  const [a, b, d] = [1 + k * u * u, k * u * v, 1 + k * v * v];
  return { a, b, c: b, d, e: about.x - a * about.x - b * about.y, f: about.y - b * about.x - d * about.y };
}

/** The work with the strip between an edge and its foot drawn together; of each ply that ends at the edge a part. */
function drawnAt(
  work: Work,
  edge: WorkEdge,
  foot: Line,
  transform: Transform,
  share: number,
): Result<Work, ClothFault> {
  let number = nextNumber(work);
  const held = number + 2 * work.plies.length;
  const parts = new Map<number, number>();
  const drawn = new Set<number>();
  const reaches = new Set(work.plies.filter((ply) => reachesEdge(ply, edge)).map(({ id }) => id));
  // Interfacing that ends below the edge is drawn up with the cloth it is fused to.
  const goes = ({ id, fusedTo }: Ply) => reaches.has(id) || (fusedTo !== undefined && reaches.has(fusedTo));
  const plies: Ply[] = [];
  for (const ply of work.plies) {
    const { left, right } = split(ply.outline, foot, { name: GATHERS, bulge: 0, held });
    if (right.length === 0) {
      plies.push(ply);
      continue;
    }
    if (!goes(ply)) {
      const message = `${ply.piece} lies where the cloth is drawn up, and does not end at that edge.`;
      return fail({ code: 'blocked', message, piece: ply.piece });
    }
    const stays = left.map((outline, i): Ply => ({ ...ply, outline, id: i === 0 ? ply.id : number++ }));
    const goesIn = right.map((outline, i): Ply => {
      const id = stays.length === 0 && i === 0 ? ply.id : number++;
      parts.set(ply.id, id);
      drawn.add(id);
      const ring = outline.map((one) => ({ ...one, from: transformPoint(transform, one.from) }));
      const laid = ply.laid && {
        laid: ply.laid.map((one) => ({ ...one, transform: followedBy(one.transform, transform) })),
      };
      return {
        ...ply,
        outline: ring,
        id,
        transform: followedBy(ply.transform, transform),
        fullness: ply.fullness / share,
        ...laid,
      };
    });
    plies.push(...stays, ...goesIn);
  }
  const fused = plies.map((ply) => {
    const to = ply.fusedTo === undefined ? undefined : parts.get(ply.fusedTo);
    return to !== undefined && drawn.has(ply.id) ? { ...ply, fusedTo: to } : ply;
  });
  const isIn = (p: Point) => leftOf(foot, p) < -ON;
  const now = (ids: readonly number[]) => ids.map((id) => parts.get(id) ?? id);
  const stitches: Stitch[] = [];
  for (const stitch of work.stitches) {
    const runs: Run[] = [];
    for (const run of stitch.runs.flatMap((one) => cutRunAt(one, foot))) {
      const inside = isIn({ x: (run.from.x + run.to.x) / 2, y: (run.from.y + run.to.y) / 2 });
      runs.push(inside ? { ...movedRun(run, transform), plies: now(run.plies) } : run);
    }
    stitches.push({ ...stitch, runs, round: undefined });
  }
  const marks = work.marks.map((mark) =>
    isIn(mark.at) ? { ...movedMark(mark, transform), plies: now(mark.plies) } : mark,
  );
  return ok({ ...work, plies: fused, stitches, marks });
}

/** Whether a ply ends at an edge. */
function reachesEdge({ outline }: Ply, { line }: WorkEdge): boolean {
  return outline.some(({ from }) => Math.abs(leftOf(line, from)) <= SAME);
}
