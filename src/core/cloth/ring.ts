import type { Transform } from '../geometry/transform.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { PlyEdge, PlyOutline } from './work.ts';
import { direction, dot, minus } from '../geometry/point.ts';
import { transformPoint, isReflected } from '../geometry/transform.ts';

/*
 * Straight-edged rings, cut in two and moved about. This is where folding spends its time, so that it has its own
 * code beside geometry's cut, which also knows arcs.
 */

/** Nearer to a line than this, in mm, is on it. Far below what anyone can fold, far above what sums lose. */
export const ON = 1e-4;
/** Rings below this area, in mm², are slips of the arithmetic. */
export const SCRAP = 1e-4;

/** Twice the area of a ring, in mm². */
export function twiceArea(ring: PlyOutline): number {
  let sum = 0;
  const origin = ring[0]?.from;
  if (!origin) return 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const a = ring[i]!.from;
    const b = ring[i + 1]!.from;
    sum += (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x);
  }
  return sum;
}

export const areaOf = (ring: PlyOutline): number => twiceArea(ring) / 2;

/** The ring where it comes to lie. Turned over, it is walked the other way, so that it stays counter-clockwise. */
export function moved(ring: PlyOutline, transform: Transform): PlyOutline {
  if (!isReflected(transform)) return ring.map((edge) => ({ ...edge, from: transformPoint(transform, edge.from) }));
  const n = ring.length;
  return ring.map((_, i) => ({ ...ring[n - 1 - i]!, from: transformPoint(transform, ring[(n - i) % n]!.from) }));
}

/** Whether a point lies inside a ring, or on its edge. */
export function covers(ring: PlyOutline, { x, y }: Point): boolean {
  let inside = false;
  for (let i = 0, n = ring.length; i < n; i++) {
    const a = ring[i]!.from;
    const b = ring[(i + 1) % n]!.from;
    const size = Math.abs(b.x - a.x) + Math.abs(b.y - a.y);
    const off = (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
    if (Math.abs(off) <= 1e-9 * size * (1 + size)) {
      const along = (b.x - a.x) * (x - a.x) + (b.y - a.y) * (y - a.y);
      if (along >= 0 && along <= (b.x - a.x) ** 2 + (b.y - a.y) ** 2) return true;
    }
    if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) inside = !inside;
  }
  return inside;
}

/** How far a point is from the nearest edge of a ring, in mm. */
export function awayFrom(ring: PlyOutline, p: Point): number {
  let least = Infinity;
  for (let i = 0, n = ring.length; i < n; i++) {
    const [a, b] = [ring[i]!.from, ring[(i + 1) % n]!.from];
    const way = minus(b, a);
    const size = dot(way, way);
    const t = size === 0 ? 0 : Math.min(1, Math.max(0, dot(way, minus(p, a)) / size));
    least = Math.min(least, Math.hypot(p.x - a.x - way.x * t, p.y - a.y - way.y * t));
  }
  return least;
}

/** How far left of a line each corner of a ring lies. */
export function offsets(ring: PlyOutline, { at, angle }: Line): number[] {
  const { x: cos, y: sin } = direction(angle);
  return ring.map(({ from }) => cos * (from.y - at.y) - sin * (from.x - at.x));
}

/** Whether nothing of a ring lies left of a line. */
export function beginsAt(ring: PlyOutline, { at, angle }: Line): boolean {
  const { x: cos, y: sin } = direction(angle);
  for (const { from } of ring) if (cos * (from.y - at.y) - sin * (from.x - at.x) > ON) return false;
  return true;
}

/** Whether nothing of a ring lies right of a line; `offsets` without the list, for the many that a fold misses. */
export function endsAt(ring: PlyOutline, { at, angle }: Line): boolean {
  const { x: cos, y: sin } = direction(angle);
  for (const { from } of ring) if (cos * (from.y - at.y) - sin * (from.x - at.x) < -ON) return false;
  return true;
}

/**
 * Cuts a ring along a line. The new edges take after `fresh`; an edge that lies on the line already stays as it is.
 */
export function split(
  ring: PlyOutline,
  line: Line,
  fresh: Omit<PlyEdge, 'from'>,
): { left: PlyOutline[]; right: PlyOutline[] } {
  if (endsAt(ring, line)) return { left: [ring], right: [] };
  if (beginsAt(ring, line)) return { left: [], right: [ring] };
  const corners = withCrossings(ring, offsets(ring, line));
  return { left: half(corners, line, 1, fresh), right: half(corners, line, -1, fresh) };
}

/** What `split` gives on one side: 1 for the left, -1 for the right. */
export function splitOff(ring: PlyOutline, line: Line, fresh: Omit<PlyEdge, 'from'>, side: 1 | -1): PlyOutline[] {
  if (endsAt(ring, line)) return side === 1 ? [ring] : [];
  if (beginsAt(ring, line)) return side === 1 ? [] : [ring];
  return half(withCrossings(ring, offsets(ring, line)), line, side, fresh);
}

/** A corner of a ring, the edge that begins there, and on which side of the line it lies; 0 on it. */
type Corner = { edge: PlyEdge; side: -1 | 0 | 1 };

function withCrossings(ring: PlyOutline, off: number[]): Corner[] {
  const corners: Corner[] = [];
  const sideOf = (o: number) => (o > ON ? 1 : o < -ON ? -1 : 0);
  for (let i = 0, n = ring.length; i < n; i++) {
    const here = off[i]!;
    const there = off[(i + 1) % n]!;
    const edge = ring[i]!;
    corners.push({ edge, side: sideOf(here) });
    if (sideOf(here) * sideOf(there) >= 0) continue;
    const to = ring[(i + 1) % n]!.from;
    const t = here / (here - there);
    const from = { x: edge.from.x + (to.x - edge.from.x) * t, y: edge.from.y + (to.y - edge.from.y) * t };
    corners.push({ edge: { ...edge, from }, side: 0 });
  }
  return corners;
}

/** A way along the ring that leaves the line, stays on one side of it, and comes back to it. */
type Way = { edges: PlyEdge[]; end: Point; leaves: number; comes: number };

/**
 * The rings on one side. Just off the line, cloth covers separate stretches; each begins where one way comes back and
 * ends where another leaves. Both put in order along the line, the first belongs to the first, and so on.
 */
function half(corners: Corner[], line: Line, side: 1 | -1, fresh: Omit<PlyEdge, 'from'>): PlyOutline[] {
  const ways = waysOn(corners, line, side);
  const lying = edgesOnLine(corners, line, side);
  const [only] = ways;
  // Most rings are cut into one on each side.
  if (only && ways.length === 1) {
    const ring = [...only.edges, ...alongLine(only, only, lying, side, fresh)];
    return areaOf(ring) > SCRAP ? [ring] : [];
  }
  const leaving = [...ways].sort((a, b) => (a.leaves - b.leaves) * side);
  const coming = [...ways].sort((a, b) => (a.comes - b.comes) * side);
  const next = new Map(coming.map((way, i) => [way, leaving[i]!]));
  const left = new Set(ways);
  const rings: PlyOutline[] = [];
  for (const first of ways) {
    if (!left.has(first)) continue;
    const ring: PlyEdge[] = [];
    for (let way = first; left.delete(way); way = next.get(way)!) {
      ring.push(...way.edges, ...alongLine(way, next.get(way)!, lying, side, fresh));
    }
    if (areaOf(ring) > SCRAP) rings.push(ring);
  }
  return rings;
}

function waysOn(corners: Corner[], line: Line, side: 1 | -1): Way[] {
  const n = corners.length;
  const along = direction(line.angle);
  const at = ({ from }: PlyEdge) => along.x * (from.x - line.at.x) + along.y * (from.y - line.at.y);
  const ways: Way[] = [];
  for (let i = 0; i < n; i++) {
    if (corners[i]!.side !== 0 || corners[(i + 1) % n]!.side !== side) continue;
    const edges = [corners[i]!.edge];
    let k = i + 1;
    while (corners[k % n]!.side === side) edges.push(corners[k++ % n]!.edge);
    const end = corners[k % n]!.edge;
    ways.push({ edges, end: end.from, leaves: at(corners[i]!.edge), comes: at(end) });
  }
  return ways;
}

type Lying = { edge: PlyEdge; from: number; to: number; end: Point };

/** The edges on the line that have their cloth on this side. */
function edgesOnLine(corners: Corner[], line: Line, side: 1 | -1): Lying[] {
  const along = direction(line.angle);
  const at = (p: Point) => along.x * (p.x - line.at.x) + along.y * (p.y - line.at.y);
  const found: Lying[] = [];
  for (let i = 0; i < corners.length; i++) {
    const here = corners[i]!;
    const there = corners[(i + 1) % corners.length]!;
    if (here.side !== 0 || there.side !== 0) continue;
    const from = at(here.edge.from);
    const to = at(there.edge.from);
    if ((to - from) * side > 0) found.push({ edge: here.edge, from, to, end: there.edge.from });
  }
  return found.length > 1 ? found.sort((a, b) => (a.from - b.from) * side) : found;
}

/** The edges that close a ring along the line, from where one way comes back to where the next leaves. */
function alongLine(way: Way, next: Way, lying: Lying[], side: 1 | -1, fresh: Omit<PlyEdge, 'from'>): PlyEdge[] {
  const edges: PlyEdge[] = [];
  let [reached, point] = [way.comes, way.end];
  for (const old of lying) {
    if ((old.from - reached) * side < -ON || (next.leaves - old.to) * side < -ON) continue;
    if ((old.from - reached) * side > ON) edges.push({ ...fresh, from: point });
    edges.push({ ...old.edge, from: (old.from - reached) * side > ON ? old.edge.from : point });
    [reached, point] = [old.to, old.end];
  }
  if ((next.leaves - reached) * side > ON) edges.push({ ...fresh, from: point });
  return edges;
}

const NOWHERE: readonly (readonly [number, number])[] = [];

/** Where a line through two points runs inside a ring: stretches as distances from the first point, in order. */
export function stretches(ring: PlyOutline, from: Point, to: Point): readonly (readonly [number, number])[] {
  const [wide, high] = [to.x - from.x, to.y - from.y];
  const size = Math.sqrt(wide * wide + high * high);
  const [ux, uy] = [wide / size, high / size];
  let count = 0;
  let first = 0;
  let second = 0;
  let more: number[] | undefined;
  let a = ring.at(-1)!.from;
  let p = ux * (a.y - from.y) - uy * (a.x - from.x);
  for (const { from: b } of ring) {
    const q = ux * (b.y - from.y) - uy * (b.x - from.x);
    // An end on the line counts as just left of it: each crossing is counted once, an edge on the line not at all.
    if (p >= -ON !== q >= -ON) {
      const t = Math.min(1, Math.max(0, p / (p - q)));
      const cut = ux * (a.x + (b.x - a.x) * t - from.x) + uy * (a.y + (b.y - a.y) * t - from.y);
      count++;
      if (count === 1) first = cut;
      else if (count === 2) second = cut;
      else (more ??= [first, second]).push(cut);
    }
    a = b;
    p = q;
  }
  // Most rings lie beside the line, and most others are crossed once.
  if (count < 2) return NOWHERE;
  if (!more) return Math.abs(second - first) > ON ? [first < second ? [first, second] : [second, first]] : NOWHERE;
  const cuts = more.sort((one, other) => one - other);
  const pairs: [number, number][] = [];
  for (let i = 0; i + 1 < cuts.length; i += 2) if (cuts[i + 1]! - cuts[i]! > ON) pairs.push([cuts[i]!, cuts[i + 1]!]);
  return pairs;
}
