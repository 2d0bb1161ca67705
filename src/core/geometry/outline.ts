import type { Point } from './point.ts';

/**
 * One edge of an outline, from `from` to the next edge's `from`.
 * `bulge` is tan(sweep / 4): 0 is straight, 1 a half circle; positive turns left along the way, so that it bulges
 * outward on a counter-clockwise ring.
 */
export type Edge = { readonly name: string; readonly from: Point; readonly bulge: number };

/** A closed ring of named edges, counter-clockwise, in mm. */
export type Outline = readonly Edge[];

/** An edge with both its ends. */
export type Side = { readonly name: string; readonly from: Point; readonly to: Point; readonly bulge: number };

/** The edges of an outline, each with both its ends. */
export function sides(outline: Outline): Side[] {
  return outline.map((edge, i) => ({
    name: edge.name,
    from: edge.from,
    to: outline[(i + 1) % outline.length]!.from,
    bulge: edge.bulge,
  }));
}

/**
 * A rectangle with the edges bottom, right, top and left.
 *
 * @param width mm
 * @param height mm
 * @param at its lower left corner, the origin if left out
 * @example
 * rectangle(100, 50).map((edge) => edge.name) // => ['bottom', 'right', 'top', 'left']
 * rectangle(100, 50)[2].from // => { x: 100, y: 50 }
 */
export function rectangle(width: number, height: number, at: Point = { x: 0, y: 0 }): Outline {
  return [
    { name: 'bottom', from: at, bulge: 0 },
    { name: 'right', from: { x: at.x + width, y: at.y }, bulge: 0 },
    { name: 'top', from: { x: at.x + width, y: at.y + height }, bulge: 0 },
    { name: 'left', from: { x: at.x, y: at.y + height }, bulge: 0 },
  ];
}

/**
 * A straight-edged outline through the points. `names[i]` is the edge from `points[i]` to the next point; without
 * names the edges are called `edge 1`, `edge 2` and so on. Points given clockwise are turned round, names with them.
 *
 * @example
 * polygon([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 0, y: 3 }]).length // => 3
 * polygon([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 0, y: 3 }], ['hem', 'slope', 'side'])[1].name // => 'slope'
 */
export function polygon(points: readonly Point[], names?: readonly string[]): Outline {
  const ring = points.map((from, i) => ({ name: names?.[i] ?? `edge ${i + 1}`, from, bulge: 0 }));
  return doubleArea(points) < 0 ? reversed(ring) : ring;
}

/** Walks a ring the other way round. Arcs keep their shape, so their bulge changes sign. */
export function reversed(ring: Outline): Outline {
  return sides(ring)
    .map((side) => ({ name: side.name, from: side.to, bulge: side.bulge === 0 ? 0 : -side.bulge }))
    .reverse();
}

/** Twice the signed area of the ring of points, positive when counter-clockwise. */
export function doubleArea(points: readonly Point[]): number {
  const origin = points[0];
  if (!origin) return 0;
  let sum = 0;
  for (let i = 1; i + 1 < points.length; i++) {
    const a = points[i]!;
    const b = points[i + 1]!;
    sum += (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x);
  }
  return sum;
}

/**
 * What the corner between two edges is called: `top-right corner`. Top and bottom are named first, as people do.
 *
 * @example
 * cornerName('right', 'top') // => 'top-right corner'
 * cornerName('side', 'hem') // => 'side-hem corner'
 */
export function cornerName(before: string, after: string): string {
  const upright = after === 'top' || after === 'bottom';
  return upright && before !== 'top' && before !== 'bottom' ? `${after}-${before} corner` : `${before}-${after} corner`;
}

/** Whether an edge is what a shaped corner left: it bears the corner's name. */
export const isCornerName = (name: string): boolean => name.endsWith(' corner');

/** The names of an outline's corners: the i-th is where the i-th edge begins. */
export function cornerNames(outline: Outline): string[] {
  return outline.map((edge, i) => cornerName(outline[(i + outline.length - 1) % outline.length]!.name, edge.name));
}
