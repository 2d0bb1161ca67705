import { areaOf, SCRAP } from './ring.ts';
import { cross, distance, dot, minus, unit } from '../geometry/point.ts';
import type { PlyEdge, PlyOutline } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** Corners nearer than this, in mm, are one corner. */
const NEAR = 2e-5;

type Way = { edge: PlyEdge; from: Point; to: Point };

/**
 * Puts rings together that lie beside one another: where one walks an edge the other way than another does, both edges
 * vanish. A clockwise ring takes away from the ring round it.
 */
export function united(rings: readonly PlyOutline[]): PlyOutline[] {
  const ways = rings.flatMap((ring) =>
    ring.map((edge, i): Way => ({ edge, from: edge.from, to: ring[(i + 1) % ring.length]!.from })),
  );
  const corners = ways.map(({ from }) => from);
  const cut = ways.flatMap((way) => cutAt(way, corners));
  const left: (Way | undefined)[] = [...cut];
  for (const [i, way] of cut.entries()) {
    if (!left[i]) continue;
    const back = cut.findIndex((one, k) => k > i && left[k] && same(one.from, way.to) && same(one.to, way.from));
    if (back >= 0) left[i] = left[back] = undefined;
  }
  return chained(left.flatMap((way) => way ?? [])).filter((ring) => areaOf(ring) > SCRAP);
}

const same = (a: Point, b: Point): boolean => Math.abs(a.x - b.x) < NEAR && Math.abs(a.y - b.y) < NEAR;

/** A way cut at the corners that lie on it. */
function cutAt(way: Way, corners: readonly Point[]): Way[] {
  const along = minus(way.to, way.from);
  const size = Math.hypot(along.x, along.y);
  if (size < NEAR) return [];
  const stops = corners
    .filter((p) => !same(p, way.from) && !same(p, way.to))
    .map((p) => ({ p, t: dot(along, minus(p, way.from)) / size, off: cross(along, minus(p, way.from)) / size }))
    .filter(({ t, off }) => t > 0 && t < size && Math.abs(off) < NEAR)
    .sort((a, b) => a.t - b.t)
    .map(({ p }) => p);
  const ends = [way.from, ...stops.filter((p, i) => i === 0 || !same(p, stops[i - 1]!)), way.to];
  return ends.slice(1).map((to, i) => ({ edge: way.edge, from: ends[i]!, to }));
}

/** Rings made of ways; where several go on from a corner, the one that turns left most. */
function chained(ways: readonly Way[]): PlyOutline[] {
  const left = new Set(ways);
  const rings: PlyOutline[] = [];
  for (const first of ways) {
    if (!left.delete(first)) continue;
    const ring = [first];
    while (!same(ring.at(-1)!.to, first.from)) {
      const last = ring.at(-1)!;
      const next = [...left].filter((way) => same(way.from, last.to));
      if (next.length === 0) break;
      const sharpest = next.reduce((best, way) => (turn(last, way) > turn(last, best) ? way : best));
      left.delete(sharpest);
      ring.push(sharpest);
    }
    rings.push(simplified(ring));
  }
  return rings;
}

function turn(before: Way, after: Way): number {
  const [a, b] = [minus(before.to, before.from), minus(after.to, after.from)];
  return Math.atan2(cross(a, b), dot(a, b));
}

/** Ways that carry on the same edge in the same direction become one edge again. */
function simplified(ring: readonly Way[]): PlyEdge[] {
  const goesOn = (way: Way, before: Way) => {
    const { name, fold, held, finish } = way.edge;
    const hold = fold === before.edge.fold && held === before.edge.held && finish === before.edge.finish;
    const like = name === before.edge.name && hold;
    const [a, b] = [unit(minus(before.to, before.from)), unit(minus(way.to, way.from))];
    const straight = Math.abs(cross(a, b)) * Math.min(1, distance(way.from, way.to)) < NEAR;
    return like && straight && dot(a, b) > 0;
  };
  const kept = ring.filter((way, i) => !goesOn(way, ring[(i + ring.length - 1) % ring.length]!));
  return (kept.length > 2 ? kept : ring).map(({ edge, from }) => ({ ...edge, from }));
}
