import { between, cross, distance, dot, minus, plus, times, unit } from './point.ts';
import { area } from './readings.ts';
import { doubleArea, reversed } from './outline.ts';
import type { Edge, Outline } from './outline.ts';
import type { Point } from './point.ts';

/** How an edge runs to the next point: out of the straight line by so many mm, as an arc of a radius, or through points. */
export type Way = { readonly rise: number } | { readonly radius: number } | { readonly through: readonly Point[] };

/** A point of an outline, the name of the edge from it to the next, and how that runs; straight if left out. */
export type DrawnPoint = { readonly at: Point; readonly name: string; readonly way?: Way | undefined };

/**
 * A circle about the origin, begun at its lowest point.
 *
 * @param diameter mm
 * @example
 * bounds(circle(10, 'edge')) // => { x: -5, y: -5, width: 10, height: 10 }
 */
export function circle(diameter: number, name: string): Outline {
  const r = diameter / 2;
  const quarter = Math.tan(Math.PI / 8);
  const corners = [
    { x: 0, y: -r },
    { x: r, y: 0 },
    { x: 0, y: r },
    { x: -r, y: 0 },
  ];
  return corners.map((from) => ({ name, from, bulge: quarter }));
}

/**
 * A half circle that lies on its straight edge.
 *
 * @param diameter mm, the length of the straight edge
 * @example
 * bounds(halfCircle(10, 'bottom', 'curve')) // => { x: -5, y: 0, width: 10, height: 5 }
 */
export function halfCircle(diameter: number, straight: string, curve: string): Outline {
  const r = diameter / 2;
  const quarter = Math.tan(Math.PI / 8);
  return [
    { name: straight, from: { x: -r, y: 0 }, bulge: 0 },
    { name: curve, from: { x: r, y: 0 }, bulge: quarter },
    { name: curve, from: { x: 0, y: r }, bulge: quarter },
  ];
}

/**
 * The bulge of an arc over a chord that rises so far above its middle: twice the rise over the chord. Positive both.
 *
 * @example bulgeOfRise(10, 5) // => 1, a half circle
 */
const bulgeOfRise = (chord: number, rise: number): number => (2 * rise) / chord;

/** The bulge of the shorter arc of a radius over a chord; NaN where the chord is longer than the circle is wide. */
const bulgeOfRadius = (chord: number, radius: number): number => Math.tan(Math.asin(chord / (2 * radius)) / 2);

/**
 * An outline through points with edges that may be curved. A positive rise or radius bulges outward, a negative one
 * inward, whichever way round the points are listed. What is too small or too flat to be an arc comes out as NaN or
 * above 1 in `bulge`, and is for the caller to refuse.
 *
 * @example
 * area(curvedOutline([{ at: { x: 0, y: 0 }, name: 'straight' }, { at: { x: 10, y: 0 }, name: 'curve', way: { rise: 5 } }]))
 * // => half a circle of 10 mm
 */
export function curvedOutline(points: readonly DrawnPoint[]): Outline {
  const round = points.flatMap(({ at, way }) => [at, ...(way && 'through' in way ? way.through : [])]);
  const isBackwards = doubleArea(round) < 0;
  const ring = points.flatMap(({ at, name, way }, i): Edge[] => {
    const { at: to } = points[(i + 1) % points.length]!;
    if (!way) return [{ name, from: at, bulge: 0 }];
    if ('through' in way) return smoothThrough([at, ...way.through, to]).map((edge) => ({ ...edge, name }));
    const size = 'rise' in way ? way.rise : way.radius;
    const chord = distance(at, to);
    const bulge = 'rise' in way ? bulgeOfRise(chord, Math.abs(size)) : bulgeOfRadius(chord, Math.abs(size));
    return [{ name, from: at, bulge: size < 0 === isBackwards ? bulge : -bulge }];
  });
  // An arc may go so far in that it turns the ring round: the finished one is asked.
  return area(ring) < 0 ? reversed(ring) : ring;
}

/**
 * A smooth curve through points, as arcs that run into one another: at each point it runs as the circle through that
 * point and its neighbours does, and two arcs go from each point to the next. Points on a circle or on a line give that
 * circle or line. The last point ends the curve and begins no edge.
 *
 * Source: a curve of arcs with common tangents (biarcs), K. M. Bolton, Biarc curves, Computer-Aided Design 7 (1975); from
 * memory.
 */
export function smoothThrough(points: readonly Point[]): Omit<Edge, 'name'>[] {
  const last = points.length - 1;
  const ways = points.map((_, i) => {
    const k = Math.min(Math.max(i, 1), last - 1);
    return tangentAt([points[k - 1]!, points[k]!, points[k + 1]!], i - k);
  });
  return points.slice(0, -1).flatMap((from, i) => {
    const to = points[i + 1]!;
    const [begins, ends] = [ways[i]!, ways[i + 1]!];
    const middle = meeting(from, begins, to, ends);
    const bulgeFrom = (a: Point, way: Point, b: Point) => {
      const chord = minus(b, a);
      const bulge = Math.tan(Math.atan2(cross(way, chord), dot(way, chord)) / 2);
      return Math.abs(bulge) < FLAT ? 0 : bulge;
    };
    // Walked from its end, the second arc begins against its last way, and bulges to the other side.
    return [
      { from, bulge: bulgeFrom(from, begins, middle) },
      { from: middle, bulge: -bulgeFrom(to, times(ends, -1), middle) || 0 },
    ];
  });
}

/** An arc flatter than this is a straight edge. */
const FLAT = 1e-9;

/** How the circle through three points runs at the first (-1), the middle (0) or the last of them (1). */
function tangentAt([a, b, c]: readonly [Point, Point, Point], which: number): Point {
  const [first, second] = [unit(minus(b, a)), unit(minus(c, b))];
  // A chord runs as its circle does at its middle: the ways at its ends are as much to either side of it.
  const turn = Math.atan2(cross(minus(b, a), minus(c, a)), dot(minus(b, a), minus(c, a)));
  const other = Math.atan2(cross(minus(c, a), minus(c, b)), dot(minus(c, a), minus(c, b)));
  if (which < 0) return turned(first, -other);
  return which > 0 ? turned(second, turn) : turned(first, other);
}

const turned = ({ x, y }: Point, by: number): Point => ({
  x: x * Math.cos(by) - y * Math.sin(by),
  y: x * Math.sin(by) + y * Math.cos(by),
});

/** Where two arcs that begin and end in given ways run into one another, equally far along both ways. */
function meeting(from: Point, begins: Point, to: Point, ends: Point): Point {
  const way = minus(to, from);
  const both = plus(begins, ends);
  const [along, size] = [dot(way, both), dot(way, way)];
  const open = 2 * (1 - dot(begins, ends));
  // Ways that are the same meet half way, however far along them; straight across the chord, as two half circles.
  if (open < 1e-12) return between(from, to, 0.5);
  const far = (-along + Math.sqrt(along * along + open * size)) / open;
  return times(plus(plus(from, times(begins, far)), minus(to, times(ends, far))), 0.5);
}
