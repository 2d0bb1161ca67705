import { arcOf, circlesMeet, lineMeetsCircle, linesMeet, shareOfArc } from './arc.ts';
import { cross, distance, dot, minus } from './point.ts';
import type { Point } from './point.ts';
import type { Side } from './outline.ts';

/** Two places nearer than this, in mm, are one place. */
export const NEAR = 1e-7;

/**
 * Where two sides touch or cross, as points on both. Sides that lie on one another meet at the ends of their common
 * stretch.
 */
export function meetings(a: Side, b: Side): Point[] {
  if (!boxesMeet(a, b)) return [];
  const points = [...carriersMeet(a, b), a.from, a.to, b.from, b.to];
  return points.filter((point) => isOn(a, point) && isOn(b, point));
}

function carriersMeet(a: Side, b: Side): Point[] {
  if (a.bulge === 0 && b.bulge === 0) {
    const point = linesMeet(a.from, minus(a.to, a.from), b.from, minus(b.to, b.from));
    return point ? [point] : [];
  }
  if (a.bulge === 0) {
    const { centre, radius } = arcOf(b);
    return lineMeetsCircle(a.from, minus(a.to, a.from), centre, radius);
  }
  if (b.bulge === 0) return carriersMeet(b, a);
  const [first, second] = [arcOf(a), arcOf(b)];
  return circlesMeet(first.centre, first.radius, second.centre, second.radius);
}

/** What share of the way along a side a point of its line or circle lies. */
export function shareOf(side: Side, point: Point): number {
  if (side.bulge !== 0) return shareOfArc(arcOf(side), point);
  const way = minus(side.to, side.from);
  return dot(way, minus(point, side.from)) / dot(way, way);
}

/** Whether a point lies on a side, ends included. */
function isOn(side: Side, point: Point): boolean {
  if (distance(point, side.from) < NEAR || distance(point, side.to) < NEAR) return true;
  const share = shareOf(side, point);
  if (share < 0 || share > 1) return false;
  if (side.bulge !== 0) {
    const arc = arcOf(side);
    return Math.abs(distance(point, arc.centre) - arc.radius) < NEAR;
  }
  const way = minus(side.to, side.from);
  return Math.abs(cross(way, minus(point, side.from))) < NEAR * Math.hypot(way.x, way.y);
}

/** A quick no: whether the boxes round two sides touch. */
function boxesMeet(a: Side, b: Side): boolean {
  const [p, q] = [boxOf(a), boxOf(b)];
  return p.left <= q.right + NEAR && q.left <= p.right + NEAR && p.low <= q.high + NEAR && q.low <= p.high + NEAR;
}

function boxOf({ from, to, bulge }: Side): { left: number; right: number; low: number; high: number } {
  // An arc of at most half a turn stays within half its chord times its bulge of the chord; a larger one within twice.
  const out = bulge === 0 ? 0 : distance(from, to) * Math.max(0.5, Math.abs(bulge));
  return {
    left: Math.min(from.x, to.x) - out,
    right: Math.max(from.x, to.x) + out,
    low: Math.min(from.y, to.y) - out,
    high: Math.max(from.y, to.y) + out,
  };
}
