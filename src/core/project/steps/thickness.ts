/** How thick the layers of a work are. */
import { layerMap, middleOf, thickest } from '../../cloth/layer-map.ts';
import type { Material, Pattern } from '../pattern.ts';
import type { Thickest } from '../step.ts';
import type { Ply, Work } from '../../cloth/index.ts';

/** The material of a ply, where the shelf knows it. */
export const materialIn = (pattern: Pattern, ply: Ply): Material | undefined =>
  pattern.materials[ply.material]?.material;

/** What plies lying on one another come to, in mm; gathered cloth counts as often as it is gathered. */
export const thicknessOf = (pattern: Pattern, plies: readonly Ply[]): number =>
  plies.reduce((sum, ply) => sum + (materialIn(pattern, ply)?.thickness ?? 0) * ply.fullness, 0);

/** The thickest place of a work and its most layers, worked out when they are first asked for. */
export function stackOf(pattern: Pattern, work: Work): () => { layers: number; thickest: Thickest } {
  let known: { layers: number; thickest: Thickest } | undefined;
  return () => (known ??= readStack(pattern, work));
}

function readStack(pattern: Pattern, work: Work): { layers: number; thickest: Thickest } {
  const regions = layerMap(work);
  const layers = Math.max(0, ...regions.map((region) => region.plies.length));
  const of = (material: string) => pattern.materials[material]?.material?.thickness ?? 0;
  const found = thickest(regions, of);
  if (!found) return { layers, thickest: { mm: 0, layers: 0, at: { x: 0, y: 0 } } };
  const { region, thickness } = found;
  return { layers, thickest: { mm: thickness, layers: region.plies.length, at: middleOf(region).at } };
}

/** The materials in a work, each once. */
export function materialsIn(pattern: Pattern, work: Work): Material[] {
  return [...new Set(work.plies.flatMap((ply) => materialIn(pattern, ply) ?? []))];
}
