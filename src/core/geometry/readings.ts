import { arcOf, shareOfArc, sideLength } from './arc.ts';
import { cross, distance, minus } from './point.ts';
import { doubleArea, sides } from './outline.ts';
import type { Point } from './point.ts';
import type { Outline, Side } from './outline.ts';

/** An upright box round something, in mm: its lower left corner and its size. */
export type Box = { x: number; y: number; width: number; height: number };

/**
 * The area inside an outline in mm².
 *
 * @example
 * area(rectangle(20, 10)) // => 200
 * area(polygon([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 0, y: 3 }])) // => 6
 */
export function area(outline: Outline): number {
  let doubled = doubleArea(outline.map((edge) => edge.from));
  for (const side of outline.some(({ bulge }) => bulge !== 0) ? sides(outline) : []) {
    if (side.bulge === 0) continue;
    // Between chord and arc lies a circular segment: r² (sweep - sin sweep) / 2.
    const { radius, sweep } = arcOf(side);
    doubled += radius * radius * (sweep - Math.sin(sweep));
  }
  return doubled / 2;
}

/**
 * The length round an outline, or of the edges with one name, in mm, measured along arcs.
 *
 * @example
 * length(rectangle(20, 10)) // => 60
 * length(rectangle(20, 10), 'top') // => 20
 */
export function length(outline: Outline, edge?: string): number {
  return sides(outline)
    .filter((side) => edge === undefined || side.name === edge)
    .reduce((sum, side) => sum + sideLength(side), 0);
}

/**
 * The upright box round an outline.
 *
 * @example
 * bounds(rectangle(20, 10, { x: 5, y: 5 })) // => { x: 5, y: 5, width: 20, height: 10 }
 * bounds([]) // => { x: 0, y: 0, width: 0, height: 0 }
 */
export function bounds(outline: Outline): Box {
  const first = outline[0];
  if (!first) return { x: 0, y: 0, width: 0, height: 0 };
  let [left, bottom, right, top] = [first.from.x, first.from.y, first.from.x, first.from.y];
  const reach = ({ x, y }: Point): void => {
    left = Math.min(left, x);
    bottom = Math.min(bottom, y);
    right = Math.max(right, x);
    top = Math.max(top, y);
  };
  for (const edge of outline) reach(edge.from);
  for (const side of sides(outline)) if (side.bulge !== 0) outermost(side).forEach(reach);
  return { x: left, y: bottom, width: right - left, height: top - bottom };
}

/** The points of an arc that lie farthest right, up, left and down on its circle, as far as the arc reaches them. */
function outermost(side: Side): Point[] {
  const arc = arcOf(side);
  const { centre, radius } = arc;
  return [
    { x: centre.x + radius, y: centre.y },
    { x: centre.x, y: centre.y + radius },
    { x: centre.x - radius, y: centre.y },
    { x: centre.x, y: centre.y - radius },
  ].filter((point) => {
    const share = shareOfArc(arc, point);
    return share > 0 && share < 1;
  });
}

/**
 * Whether a point lies inside an outline or on its edge.
 *
 * @example
 * contains(rectangle(20, 10), { x: 5, y: 5 }) // => true
 * contains(rectangle(20, 10), { x: 25, y: 5 }) // => false
 */
export function contains(outline: Outline, point: Point): boolean {
  let inside = false;
  for (const side of sides(outline)) {
    if (distanceToSide(side, point) < 1e-7) return true;
    if (rayCrosses(side, point)) inside = !inside;
    // Each arc adds or takes away the segment between its chord and itself.
    if (side.bulge !== 0 && inSegment(side, point)) inside = !inside;
  }
  return inside;
}

/** Whether the ray from a point to the right crosses the chord of a side. */
function rayCrosses({ from, to }: Side, { x, y }: Point): boolean {
  if (from.y > y === to.y > y) return false;
  return x < from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y);
}

/** Whether a point lies between an arc and its chord. */
function inSegment(side: Side, point: Point): boolean {
  const { centre, radius } = arcOf(side);
  if (distance(centre, point) > radius) return false;
  return cross(minus(side.to, side.from), minus(point, side.from)) * side.bulge < 0;
}

/** How far a point lies from the nearest place of a side, in mm. */
export function distanceToSide(side: Side, point: Point): number {
  const ends = Math.min(distance(side.from, point), distance(side.to, point));
  if (side.bulge !== 0) {
    const arc = arcOf(side);
    const share = shareOfArc(arc, point);
    return share >= 0 && share <= 1 ? Math.abs(distance(arc.centre, point) - arc.radius) : ends;
  }
  const way = minus(side.to, side.from);
  const size = Math.hypot(way.x, way.y);
  const along = size === 0 ? 0 : (way.x * (point.x - side.from.x) + way.y * (point.y - side.from.y)) / (size * size);
  return along > 0 && along < 1 ? Math.abs(cross(way, minus(point, side.from))) / size : ends;
}

/**
 * The outline as a ring of points; arcs are replaced by chords that leave them by at most `tolerance` mm.
 *
 * @example
 * sample(rectangle(20, 10), 0.02).length // => 4
 */
export function sample(outline: Outline, tolerance: number): Point[] {
  return straightened(outline, tolerance).map((edge) => edge.from);
}

/** The outline with each arc replaced by chords of the same name that leave it by at most `tolerance` mm. */
export function straightened(outline: Outline, tolerance: number): Outline {
  if (outline.every((edge) => edge.bulge === 0)) return outline;
  return sides(outline).flatMap((side) => {
    if (side.bulge === 0) return [{ name: side.name, from: side.from, bulge: 0 }];
    const { centre, radius, start, sweep } = arcOf(side);
    // A chord over the angle a leaves its arc by r (1 - cos (a / 2)).
    const widest = 2 * Math.acos(Math.max(-1, 1 - Math.min(tolerance, radius) / radius));
    const count = Math.max(1, Math.ceil(Math.abs(sweep) / widest - 1e-9));
    return Array.from({ length: count }, (_, i) => {
      const angle = start + (sweep * i) / count;
      const from =
        i === 0 ? side.from : { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
      return { name: side.name, from, bulge: 0 };
    });
  });
}
