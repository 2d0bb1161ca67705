/** Piping as it lies in a work: which of it no seam has caught yet, and how it comes out of the seam that does. */
import { areaOf, ON, stretches } from './ring.ts';
import { cross, distance, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { followedBy, reflection } from '../geometry/transform.ts';
import { leftOf, lineThrough, sides } from '../geometry/index.ts';
import { SAME } from '../measure/index.ts';
import type { ClothFault } from './fault.ts';
import type { Outline, Point, Side } from '../geometry/index.ts';
import type { Ply, Run, Work } from './work.ts';
import type { StitchRing } from './sew-round.ts';

/** The work as it lies without its piping, which stands out beyond its seams. */
export const withoutPiping = <T extends Pick<Work, 'plies'>>(work: T): T =>
  work.plies.some(({ piping }) => piping) ? { ...work, plies: work.plies.filter(({ piping }) => !piping) } : work;

/** Piping that is only basted, its raw edges in no seam yet, by number; its cord with it. */
export function pipingLoose(plies: readonly Ply[]): number[] {
  const piping = plies.filter((ply) => ply.piping);
  const nameOf = ({ laid = [] }: Ply) => laid.map(({ work, nth }) => `${nth} ${work}`);
  const isRaw = ({ outline }: Ply) => outline.some(({ held, fold }) => held === undefined && fold === undefined);
  const loose = new Set(piping.filter(isRaw).flatMap(nameOf));
  return piping.flatMap((ply) => (nameOf(ply).some((name) => loose.has(name)) ? [ply.id] : []));
}

/** Why something cannot be done to piping that no seam has caught yet. */
export function pipingWaits({ plies }: Pick<Work, 'plies'>): ClothFault | undefined {
  const [first] = pipingLoose(plies);
  if (first === undefined) return undefined;
  const { piece } = plies.find(({ id }) => id === first)!;
  const message = `The piping is only basted, and this step would not catch it as a seam round two works does.`;
  return { code: 'held', message, piece, fix: 'Catch it with “sew round” first, or bind the edge with “bind”.' };
}

/** How far beside the stitches a cord lies, in mm: the needle goes close to it, not through it. */
export const BESIDE = 0.1;

/** What the edge is called at which piping ends, and runs off beside a corner. */
export const END = 'end';

/** The edges of a stitch line, without those too short to have a direction. */
export const stitchSides = (ring: Outline): Side[] => sides(ring).filter(({ from, to }) => distance(from, to) > ON);

export const wayAlong = ({ from, to }: Side): Point => unit(minus(to, from));

/** At a corner of the stitch line: 1 mm into the work, measured square to both its edges. */
export function miter(before: Side, after: Side): Point {
  const [a, b] = [wayAlong(before), wayAlong(after)].map(({ x, y }) => ({ x: -y, y: x })) as [Point, Point];
  return times(plus(a, b), 1 / Math.max(1 + dot(a, b), 0.05));
}

/**
 * Why a seam does not catch the piping that lies in it: its row must run where the piping was basted, or the cord would be
 * sewn over, or the basting seen.
 */
export function pipingOff({ plies, stitches }: Work, { ring, allowances }: StitchRing): ClothFault | undefined {
  const ids = new Set(pipingLoose(plies));
  const piping = plies.find(({ id }) => ids.has(id));
  if (!piping) return undefined;
  const sewn = sides(ring).filter((_, i) => allowances[i]! > 0);
  const isOn = ({ from, to }: Run) => sewn.some((side) => liesAlong(side, from) && liesAlong(side, to));
  const rows = stitches.filter(
    ({ kind, runs }) => kind === 'baste' && runs.some((run) => run.plies.some((id) => ids.has(id))),
  );
  if (rows.every(({ runs }) => runs.every((run) => !run.plies.some((id) => ids.has(id)) || isOn(run))))
    return undefined;
  const message = 'The seam does not run where the piping was basted: it would go over the cord, or leave it loose.';
  const fix = 'Pipe with the seam that is sewn here, and only edges that are sewn.';
  return { code: 'misses', message, piece: piping.piece, fix };
}

/** The nearest point on the line of an edge. */
const footOn = (side: Side, p: Point): Point =>
  plus(side.from, times(wayAlong(side), dot(wayAlong(side), minus(p, side.from))));

const liesAlong = ({ from, to }: Side, p: Point): boolean => {
  const along = dot(wayAlong({ from, to } as Side), minus(p, from));
  return Math.abs(leftOf(lineThrough(from, to), p)) < 2 * SAME && along > -SAME && along < distance(from, to) + SAME;
};

/** How far a point is from an edge, not beyond its ends. */
const toEdge = (side: Side, p: Point): number =>
  liesAlong(side, footOn(side, p)) ? off(side, p) : Math.min(distance(p, side.from), distance(p, side.to));

const off = ({ from, to }: Side, p: Point): number => Math.abs(leftOf(lineThrough(from, to), p));

/**
 * Piping as it comes out of a seam that is turned: what lay inside the stitches stands out beyond them, and its allowance
 * goes in. Undefined where it does not lie along the stitch line.
 */
export function pipingOut(ply: Ply, ring: Outline): Ply | undefined {
  const edges = stitchSides(ring);
  const n = edges.length;
  const corners = edges.map((after, i) => ({ at: after.from, along: miter(edges[(i + n - 1) % n]!, after) }));
  const through = edges.filter((edge) => {
    const size = distance(edge.from, edge.to);
    const along = wayAlong(edge);
    const beside = (p: Point) => plus(p, { x: -along.y * 2 * BESIDE, y: along.x * 2 * BESIDE });
    return stretches(ply.outline, beside(edge.from), beside(edge.to)).some(
      ([a, b]) => Math.min(b, size) - Math.max(a, 0) > 4 * BESIDE,
    );
  });
  const count = ply.outline.length;
  const points: Point[] = [];
  for (const [i, { from, name }] of ply.outline.entries()) {
    const corner = corners
      .filter(({ at, along }) => Math.abs(cross(unit(along), minus(from, at))) < SAME)
      .reduce<(typeof corners)[number] | undefined>(
        (best, one) => (best && distance(best.at, from) <= distance(one.at, from) ? best : one),
        undefined,
      );
    const isEnd = name === END || ply.outline[(i + count - 1) % count]!.name === END;
    const [edge] = through.toSorted((a, b) => toEdge(a, from) - toEdge(b, from));
    // The end of the cord is turned about the edge that it lies along, and stands out no further than that.
    const runsOff = isEnd && edge && leftOf(lineThrough(edge.from, edge.to), from) > 0;
    const about = runsOff || !corner ? edge && footOn(edge, from) : corner.at;
    if (!about) return undefined;
    points.push(minus(times(about, 2), from));
  }
  const middle = times(
    ply.outline.reduce((sum, { from }) => plus(sum, from), { x: 0, y: 0 }),
    1 / ply.outline.length,
  );
  const nearest = edges.reduce((best, one) => (toEdge(one, middle) < toEdge(best, middle) ? one : best));
  // Mirrored about the stitches, the ring is walked the other way.
  const outline = points.map((_, i) => ({ ...ply.outline[count - 1 - i]!, from: points[(count - i) % count]! }));
  const [before, after] = [areaOf(ply.outline), areaOf(outline)];
  if (!(after > 0)) return undefined;
  return {
    ...ply,
    outline,
    face: ply.face === 'right' ? 'wrong' : 'right',
    fullness: (ply.fullness * before) / after,
    transform: followedBy(ply.transform, reflection(lineThrough(nearest.from, nearest.to))),
  };
}
