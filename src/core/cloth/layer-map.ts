import { overlayOf, patchesBy } from './faces.ts';
import { stackThickness } from './layers.ts';
import type { Patch } from './faces.ts';
import type { Ply, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';
import type { ThicknessOf } from './layers.ts';

/** A connected part of the work that the same plies cover everywhere. */
export type Region = Patch & {
  /** The plies that cover it, bottom to top. */
  readonly plies: readonly Ply[];
};

/**
 * How many layers lie where: every region of the work with its plies. Regions do not overlap and together they are the
 * whole work.
 *
 * @example
 * layerMap(folded).map(({ plies, area }) => [plies.length, area]) // => [[1, 2000], [2, 2000]]
 */
export function layerMap(work: Work): Region[] {
  const overlay = overlayOf(work.plies);
  return patchesBy(overlay, (covers) => covers).map(({ patch, covers }) => ({
    ...patch,
    plies: covers.map((level) => work.plies[level]!),
  }));
}

/**
 * The region where the work is thickest, and how thick it is there in mm; undefined for no work.
 *
 * @example
 * thickest(layerMap(hemmed), () => 0.3)?.thickness // => 0.9
 */
export function thickest(
  regions: readonly Region[],
  thicknessOf: ThicknessOf,
): { region: Region; thickness: number } | undefined {
  let best: { region: Region; thickness: number } | undefined;
  for (const region of regions) {
    const thick = stackThickness(region.plies, thicknessOf);
    if (!best || thick > best.thickness) best = { region, thickness: thick };
  }
  return best;
}

/** Lines across a patch on which its middle is looked for. */
const LINES = 9;

/**
 * A point well inside a patch, for its label, and how far in mm the nearest edge is.
 *
 * @example
 * middleOf(layerMap(cut({ piece: 'flap', material: 'linen', outline: rectangle(80, 60) }).value)[0]) // => { at: { x: 40, y: 30 }, room: 30 }
 */
export function middleOf({ rings }: Patch): { at: Point; room: number } {
  const sides = rings.flatMap((ring) => ring.map((from, i) => [from, ring[(i + 1) % ring.length]!] as const));
  const heights = sides.map(([{ y }]) => y);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  let best = { at: sides[0]![0], room: -1 };
  for (let i = 0; i < LINES; i++) {
    const y = low + ((high - low) * (i + 0.5)) / LINES;
    const meets = sides
      .filter(([a, b]) => a.y > y !== b.y > y)
      .map(([a, b]) => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y))
      .sort((a, b) => a - b);
    for (let k = 0; k + 1 < meets.length; k += 2) {
      const at = { x: (meets[k]! + meets[k + 1]!) / 2, y };
      const room = Math.min(...sides.map(([a, b]) => away(at, a, b)));
      if (room > best.room + 1e-9) best = { at, room };
    }
  }
  return best;
}

function away(p: Point, a: Point, b: Point): number {
  const [x, y] = [b.x - a.x, b.y - a.y];
  const size = x * x + y * y;
  const along = size === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / size));
  return Math.hypot(p.x - a.x - x * along, p.y - a.y - y * along);
}
