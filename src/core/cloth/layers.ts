import { covers } from './ring.ts';
import type { Ply, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** How thick one layer of a material is, in mm. */
export type ThicknessOf = (material: string) => number;

/**
 * The plies that cover a point, bottom to top. On an edge, the plies on both sides count.
 *
 * @example
 * layersAt(folded, { x: 10, y: 10 }).map((ply) => ply.face) // => ['right', 'wrong']
 */
export const layersAt = (work: Work, at: Point): Ply[] => work.plies.filter((ply) => covers(ply.outline, at));

/**
 * The thickness of plies lying on each other, in mm. Gathered cloth counts as often as it is full. Nothing is taken off
 * for what pressing or a presser foot squeezes together.
 *
 * @example
 * stackThickness(layersAt(folded, { x: 10, y: 10 }), () => 0.3) // => 0.6
 */
export const stackThickness = (plies: readonly Ply[], thicknessOf: ThicknessOf): number =>
  plies.reduce((sum, { material, fullness }) => sum + thicknessOf(material) * fullness, 0);
