import { areaOf, SCRAP, split } from './ring.ts';
import { cross, distance, dot, minus } from '../geometry/point.ts';
import { intersection } from '../geometry/index.ts';
import { united } from './united.ts';
import type { Line, Outline, Point } from '../geometry/index.ts';
import type { PlyEdge, PlyOutline } from './work.ts';

/** How far a ring from the clipping library may lie off the edges it came from, in mm. */
const OFF = 1e-3;

/**
 * Cuts a part out of a ring: what lies right of the first line and left of all the others. The edges along the first
 * line take after `fresh`, those along the others are called `clip`.
 */
export function carve(
  ring: PlyOutline,
  line: Line,
  within: readonly Line[],
  fresh: Omit<PlyEdge, 'from'>,
): { left: PlyOutline[]; right: PlyOutline[] } {
  const halves = split(ring, line, fresh);
  let [inside, outside]: PlyOutline[][] = [halves.right, []];
  for (const bound of within) {
    const cut = inside!.map((one) => split(one, bound, { name: 'clip', bulge: 0 }));
    inside = cut.flatMap(({ left }) => left);
    outside = [...outside!, ...cut.flatMap(({ right }) => right)];
  }
  if (outside!.length === 0) return halves;
  if (inside!.length === 0) return { left: [ring], right: [] };
  // What was cut off beside the part is one with what stays.
  return { left: united([...halves.left, ...outside!]), right: inside! };
}

/** The part of a ring inside another outline. Edges that are not the ring's own are called `name`. */
export function within(ring: PlyOutline, outline: Outline, name: string): PlyOutline[] {
  return renamed(intersection([ring], [outline]), [ring], name);
}

/** The edges of a ring walked the other way, as they border what lies outside it. */
export function backwards(ring: PlyOutline): PlyEdge[] {
  return ring.map((edge, i) => ({ ...edge, from: ring[(i + 1) % ring.length]!.from })).reverse();
}

/** Rings of the clipping library with the names and the hold of the edges they came from. */
export function renamed(
  rings: readonly Outline[],
  sources: readonly (readonly PlyEdge[])[],
  name = 'clip',
): PlyOutline[] {
  const sides = sources.flatMap((source) =>
    source.map((edge, i) => ({ edge, from: edge.from, to: source[(i + 1) % source.length]!.from })),
  );
  const named = rings.map(withoutSpikes).map((ring) =>
    ring.map((corner, i): PlyEdge => {
      const to = ring[(i + 1) % ring.length]!.from;
      const side = sides.find((one) => runsAlong(corner.from, to, one.from, one.to));
      return side ? { ...side.edge, from: corner.from } : { name, from: corner.from, bulge: 0 };
    }),
  );
  // The library gives a bite that touches the edge only in a corner, or nearly, as a ring of its own.
  return named.some((ring) => areaOf(ring) < 0) ? united(named) : named.filter((ring) => areaOf(ring) > SCRAP);
}

/** A ring without ways that go out and straight back, which the clipping library leaves beside an edge. */
function withoutSpikes(ring: Outline): Outline {
  const left = [...ring];
  for (let i = 0; left.length > 2 && i < left.length;) {
    const [a, b, c] = [left.at(i - 1)!.from, left[i]!.from, left[(i + 1) % left.length]!.from];
    const [there, on] = [minus(b, a), minus(c, b)];
    const turnsBack = dot(there, on) < 0 && Math.abs(cross(there, on)) < OFF * Math.max(distance(a, b), distance(b, c));
    if (!turnsBack && distance(b, c) > 0) i++;
    else {
      left.splice(i, 1);
      i = Math.max(0, i - 1);
    }
  }
  return left.length > 2 ? left : [];
}

/** Whether the way from `a` to `b` runs along a part of the way from `p` to `q`. */
function runsAlong(a: Point, b: Point, p: Point, q: Point): boolean {
  const way = minus(q, p);
  const size = distance(p, q);
  if (size < OFF) return false;
  const off = (point: Point) => Math.abs(cross(way, minus(point, p))) / size;
  const along = (point: Point) => dot(way, minus(point, p)) / size;
  if (off(a) > OFF || off(b) > OFF || along(b) <= along(a)) return false;
  return along(a) > -OFF && along(b) < size + OFF;
}
