import { arcOf, circlesMeet, lineMeetsCircle, linesMeet, sideLength, tangent } from './arc.ts';
import { NEAR } from './crossing.ts';
import { cross, distance, dot, minus, plus, times, unit } from './point.ts';
import type { Moved } from './allowance.ts';
import type { Point } from './point.ts';
import type { Side } from './outline.ts';

/**
 * How the cut line goes round an outer corner.
 * - mitred: both lines are carried on until they meet. When the point would reach farther from the corner than
 *   `limit` times the larger allowance (4 if left out), the corner is blunted.
 * - blunted: cut straight across, square to the point, one (the larger) allowance away from the corner.
 * - rounded: an arc about the corner with the larger allowance as radius.
 */
export type Corner = { shape: 'mitred'; limit?: number } | { shape: 'blunted' } | { shape: 'rounded' };

/**
 * What happens between two moved sides: where the first ends, new sides, where the second starts. `trimmed` when they
 * overlap and are cut back to where they meet.
 */
export type Join = { end: Point; edges: Side[]; start: Point; trimmed?: boolean };

/** How far a mitre may reach, in allowances, when nobody says. */
const LIMIT = 4;
/** A corner flatter than this, as the sine of its turn, counts as running on in one line. */
const STRAIGHT = 1e-7;

/** Joins two moved sides at the corner of the outline they came from. */
export function joinCorner(before: Moved, after: Moved, name: string, corner: Corner): Join {
  const [end, start] = [before.side.to, after.side.from];
  if (distance(end, start) < NEAR) return { end, edges: [], start: end };
  const turn = cross(tangent(before.from, 'end'), tangent(after.from, 'start'));
  const step: Join = { end, edges: [{ name, from: end, to: start, bulge: 0 }], start };
  if (Math.abs(turn) < STRAIGHT) return step;
  const turned = before.turned || after.turned;
  const tip = turned ? undefined : nearestMeeting(before.side, after.side, after.from.from);
  if (tip) return joinAt(tip, before, after, name, corner) ?? step;

  // Curves that never meet are carried on along their tangents.
  const straight = [tangentBefore(before), tangentAfter(after)] as const;
  const meeting = nearestMeeting(straight[0].side, straight[1].side, after.from.from);
  const join = meeting && joinAt(meeting, ...straight, name, corner);
  if (!join || join.trimmed) return { ...step, trimmed: true };
  const run = (from: Point, to: Point): Side[] => (distance(from, to) < NEAR ? [] : [{ name, from, to, bulge: 0 }]);
  return { end, edges: [...run(end, join.end), ...join.edges, ...run(join.start, start)], start };
}

const tangentBefore = (moved: Moved): Moved => {
  const { to } = moved.side;
  return { ...moved, side: { ...moved.side, from: minus(to, tangent(moved.from, 'end')), bulge: 0 } };
};
const tangentAfter = (moved: Moved): Moved => {
  const { from } = moved.side;
  return { ...moved, side: { ...moved.side, to: plus(from, tangent(moved.from, 'start')), bulge: 0 } };
};

/** The join of two sides whose lines meet at `tip`; undefined where the cut line had better step. */
function joinAt(tip: Point, before: Moved, after: Moved, name: string, corner: Corner): Join | undefined {
  const at = after.from.from;
  const larger = Math.max(Math.abs(before.by), Math.abs(after.by));
  const past = pastEnd(before.side, tip);
  const ahead = -pastEnd(backwards(after.side), tip);
  const mitre: Join = { end: tip, edges: [], start: tip };
  if (past >= -NEAR && ahead <= NEAR) {
    const reach = distance(at, tip);
    if (corner.shape === 'mitred' && reach <= (corner.limit ?? LIMIT) * larger + NEAR) return mitre;
    return corner.shape === 'rounded'
      ? roundedJoin(before, after, at, name, larger)
      : bluntedJoin(before, after, at, name, tip, larger);
  }
  // Lines that meet within both sides are trimmed there. Where one would be eaten by more than an allowance, because
  // it nearly runs on in the other's line, the cut line steps instead.
  const trimmed = past <= NEAR && ahead >= -NEAR;
  return trimmed || Math.max(-past, ahead) <= larger ? { ...mitre, trimmed } : undefined;
}

function bluntedJoin(before: Moved, after: Moved, at: Point, name: string, tip: Point, larger: number): Join {
  const toward = unit(minus(tip, at));
  const across = { x: -toward.y, y: toward.x };
  const middle = plus(at, times(toward, larger));
  const end = meetLine(before.side, middle, across, tip) ?? before.side.to;
  const start = meetLine(after.side, middle, across, tip) ?? after.side.from;
  return { end, edges: distance(end, start) > NEAR ? [{ name, from: end, to: start, bulge: 0 }] : [], start };
}

function roundedJoin(before: Moved, after: Moved, at: Point, name: string, larger: number): Join {
  const end = Math.abs(before.by) === larger ? before.side.to : meetCircle(before.side, at, larger);
  const start = Math.abs(after.by) === larger ? after.side.from : meetCircle(after.side, at, larger);
  const [a, b] = [minus(end, at), minus(start, at)];
  const sweep = Math.atan2(cross(a, b), dot(a, b));
  return { end, edges: [{ name, from: end, to: start, bulge: Math.tan(sweep / 4) }], start };
}

/** Where the line or circle of a side meets a straight line, the meeting nearest to `near`. */
function meetLine(side: Side, at: Point, way: Point, near: Point): Point | undefined {
  if (side.bulge === 0) return linesMeet(side.from, minus(side.to, side.from), at, way);
  const { centre, radius } = arcOf(side);
  return nearest(lineMeetsCircle(at, way, centre, radius), near);
}

function meetCircle(side: Side, at: Point, radius: number): Point {
  const arc = side.bulge === 0 ? undefined : arcOf(side);
  const points = arc
    ? circlesMeet(arc.centre, arc.radius, at, radius)
    : lineMeetsCircle(side.from, minus(side.to, side.from), at, radius);
  const beyond = points.filter((point) => pastEnd(side, point) > 0 || pastEnd(backwards(side), point) > 0);
  return nearest(beyond, at) ?? side.to;
}

/** Where the lines or circles of two sides meet, the meeting nearest to the corner. */
function nearestMeeting(before: Side, after: Side, corner: Point): Point | undefined {
  if (before.bulge === 0) return meetLine(after, before.from, minus(before.to, before.from), corner);
  if (after.bulge === 0) return meetLine(before, after.from, minus(after.to, after.from), corner);
  const [a, b] = [arcOf(before), arcOf(after)];
  return nearest(circlesMeet(a.centre, a.radius, b.centre, b.radius), corner);
}

function nearest(points: Point[], to: Point): Point | undefined {
  return points.reduce<Point | undefined>(
    (best, point) => (best && distance(best, to) <= distance(point, to) ? best : point),
    undefined,
  );
}

/** How far past the end of a side a point of its line or circle lies, along the way; negative before the end. */
function pastEnd(side: Side, point: Point): number {
  if (side.bulge === 0) return dot(unit(minus(side.to, side.from)), minus(point, side.to));
  const { centre } = arcOf(side);
  const [a, b] = [minus(side.to, centre), minus(point, centre)];
  const turn = Math.atan2(cross(a, b), dot(a, b)) * Math.sign(side.bulge);
  return (turn * sideLength(side)) / (4 * Math.atan(Math.abs(side.bulge)));
}

const backwards = (side: Side): Side => ({ ...side, from: side.to, to: side.from, bulge: -side.bulge });
