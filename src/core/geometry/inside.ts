import { cross, minus } from './point.ts';
import { bounds, sample } from './readings.ts';
import type { Outline } from './outline.ts';
import type { Point } from './point.ts';

/** At so many heights a rectangle is tried, and so many lines across it at least must lie inside. */
const [HEIGHTS, LINES] = [101, 9];
/** How far chords leave arcs, and lines keep from the ends of a shape, in mm. */
const [CHORD, NEAR] = [0.002, 1e-6];

/**
 * The width of the widest upright rectangle of a height that lies inside an outline, in mm; 0 where none does. It is tried
 * at a hundred heights and at the ends of every notch, so that of a curved shape it may be a hair too little. Lines beside
 * each corner that points inward find every notch and neck, so that it is never too much.
 *
 * @example
 * widestInside(circle(50, 'edge'), 30) // => 40
 */
export function widestInside(outline: Outline, height: number): number {
  const { y: low, height: room } = bounds(outline);
  if (height > room) return 0;
  const ring = sample(outline, CHORD);
  const necks = necksOf(ring);
  const starts = Array.from({ length: HEIGHTS }, (_, i) => low + ((room - height) * i) / (HEIGHTS - 1));
  for (const { y, isEnd } of necks)
    if (isEnd) starts.push(...[y, y - height].filter((from) => from > low && from + height < low + room));
  let widest = 0;
  for (const from of starts) {
    const even = Array.from({ length: LINES }, (_, k) => from + (height * k) / (LINES - 1));
    // At its own ends a rectangle may touch: the lines there lie within it.
    const kept = even.with(0, from + NEAR).with(-1, from + height - NEAR);
    const beside = necks.flatMap(({ y }) => [y - NEAR, y + NEAR]).filter((y) => y > from && y < from + height);
    let free: [number, number][] = [[-Infinity, Infinity]];
    for (const at of [...kept, ...beside]) {
      const across = inside(ring, at);
      free = free.flatMap(([a, b]) =>
        across.flatMap(([c, d]): [number, number][] =>
          Math.max(a, c) < Math.min(b, d) ? [[Math.max(a, c), Math.min(b, d)]] : [],
        ),
      );
    }
    widest = Math.max(widest, ...free.map(([a, b]) => b - a));
  }
  return widest;
}

/** The heights of a ring’s corners that point inward, and whether a notch ends there. */
function necksOf(ring: readonly Point[]): { y: number; isEnd: boolean }[] {
  return ring.flatMap((at, i) => {
    const [before, after] = [ring[(i + ring.length - 1) % ring.length]!, ring[(i + 1) % ring.length]!];
    const isEnd = (before.y - at.y) * (after.y - at.y) >= 0;
    return cross(minus(at, before), minus(after, at)) < 0 ? [{ y: at.y, isEnd }] : [];
  });
}

/** Where a level line lies inside a ring, from left to right. */
function inside(ring: readonly Point[], y: number): [number, number][] {
  const cuts = ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return a.y > y === b.y > y ? [] : [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)];
  });
  cuts.sort((a, b) => a - b);
  return cuts.flatMap((from, i): [number, number][] => (i % 2 === 0 ? [[from, cuts[i + 1]!]] : []));
}
