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

/** How many layers lie on each other, and how many of them are interfacing, fused to the others. */
export const countLayers = (plies: readonly Ply[]): { layers: number; fused: number } => ({
  layers: plies.length,
  fused: plies.filter(({ fusedTo }) => fusedTo !== undefined).length,
});

/**
 * Layers in words: all that lies there counts, and interfacing is told.
 *
 * @example
 * layersInWords({ layers: 14, fused: 6 }) // => '14 layers, 6 of them interfacing'
 */
export function layersInWords({ layers, fused }: { layers: number; fused: number }): string {
  const count = `${layers} ${layers === 1 ? 'layer' : 'layers'}`;
  return fused === 0 ? count : `${count}, ${fused} of them interfacing`;
}

/**
 * The thickness of plies lying on each other, in mm. Gathered cloth counts as often as it is full. Nothing is taken off
 * for what pressing or a presser foot squeezes together.
 *
 * @example
 * stackThickness(layersAt(folded, { x: 10, y: 10 }), () => 0.3) // => 0.6
 */
export const stackThickness = (plies: readonly Ply[], thicknessOf: ThicknessOf): number =>
  plies.reduce((sum, { material, fullness }) => sum + thicknessOf(material) * fullness, 0);
