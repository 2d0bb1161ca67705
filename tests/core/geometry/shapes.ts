import fc from 'fast-check';
import { polygon } from '../../../src/core/geometry/index.ts';
import type { Outline, Point } from '../../../src/core/geometry/index.ts';

const cross = (o: Point, a: Point, b: Point): number => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);

const segmentsCross = (a: Point, b: Point, c: Point, d: Point): boolean =>
  cross(a, b, c) * cross(a, b, d) <= 0 && cross(c, d, a) * cross(c, d, b) <= 0;

/**
 * Takes the crossings out of a closed way by turning round the stretch between two sides that cross (2-opt). Each turn
 * makes the way shorter, so it ends. Undefined when points lie so in line that it does not come out simple.
 */
export function untangled(points: readonly Point[]): Point[] | undefined {
  const ring = [...points];
  const n = ring.length;
  for (let round = 0; round < 200; round++) {
    let crossed = false;
    for (let i = 0; i < n && !crossed; i++) {
      for (let j = i + 2; j < n && !crossed; j++) {
        if (i === 0 && j === n - 1) continue;
        if (!segmentsCross(ring[i]!, ring[i + 1]!, ring[j]!, ring[(j + 1) % n]!)) continue;
        ring.splice(i + 1, j - i, ...ring.slice(i + 1, j + 1).reverse());
        crossed = true;
      }
    }
    if (!crossed) return ring;
  }
  return undefined;
}

/** Random simple polygons, often concave, inside a square of 200 mm; no corner or edge is tiny. */
export const simplePolygon = (corners = { min: 3, max: 9 }): fc.Arbitrary<Outline> =>
  fc
    .array(fc.record({ x: fc.integer({ min: 0, max: 200 }), y: fc.integer({ min: 0, max: 200 }) }), {
      minLength: corners.min,
      maxLength: corners.max,
    })
    .map((points) => untangled(points))
    .filter((ring): ring is Point[] => ring !== undefined && ring.every((at, i) => clear(at, ring, i)))
    .map((ring) => polygon(ring));

/** No zero-length edge, and no corner where an edge turns back within 2.6 degrees of its neighbour. */
function clear(at: Point, ring: readonly Point[], i: number): boolean {
  const before = ring[(i + ring.length - 1) % ring.length]!;
  const after = ring[(i + 1) % ring.length]!;
  const [p, q] = [
    { x: at.x - before.x, y: at.y - before.y },
    { x: after.x - at.x, y: after.y - at.y },
  ];
  const [lengthP, lengthQ] = [Math.hypot(p.x, p.y), Math.hypot(q.x, q.y)];
  return lengthP > 1 && lengthQ > 1 && (p.x * q.x + p.y * q.y) / (lengthP * lengthQ) > -0.999;
}

/** The value of a result that is expected to be one. */
export function value<T>(result: { ok: true; value: T } | { ok: false; fault: { message: string } }): T {
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
}
