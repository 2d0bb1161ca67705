/** The drawing of the layers, and how to find a place on it: plain values, and what a page reads off them. */
import type { Command, PathShape, Scene } from '../../../src/core/index.ts';

type Point = { x: number; y: number };

/** A place on the sheet, by its number: the rings round it, a hole's as well, in mm of the sheet. */
export type PlaceOnSheet = { n: number; rings: Point[][] };

export type DrawnLayers = { scene: Scene; places: PlaceOnSheet[] };

/** The line round a place, for the scene. */
export function roundOf({ places }: Pick<DrawnLayers, 'places'>, n: number): PathShape {
  const rings = places.find((place) => place.n === n)?.rings ?? [];
  return { kind: 'path', name: 'chosen place', role: 'raw edge', path: rings.flatMap(closed), now: true };
}

const closed = (points: readonly Point[]): Command[] => [
  ...points.map(({ x, y }, i): Command => [i === 0 ? 'M' : 'L', x, y]),
  ['Z'],
];

/** The place under a point of the sheet, in mm; undefined beside the work. */
export const placeUnder = ({ places }: Pick<DrawnLayers, 'places'>, at: Point): number | undefined =>
  places.find(({ rings }) => isIn(rings, at))?.n;

/** Whether a point lies within rings; a ring in another is a hole. */
export function isIn(rings: readonly (readonly Point[])[], { x, y }: Point): boolean {
  let inside = false;
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) inside = !inside;
    });
  }
  return inside;
}
