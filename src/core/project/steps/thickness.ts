/** How thick the layers of a work are. */
import { layerMap, middleOf, thickest } from '../../cloth/layer-map.ts';
import { countLayers, stackThickness } from '../../cloth/layers.ts';
import type { Material, Pattern } from '../pattern.ts';
import type { ThicknessOf } from '../../cloth/layers.ts';
import type { Thickest } from '../step.ts';
import type { Ply, Work } from '../../cloth/index.ts';

/** The material of a ply, where the shelf knows it. */
export const materialIn = (pattern: Pattern, ply: Ply): Material | undefined =>
  pattern.materials[ply.material]?.material;

/** A woven quilting cotton, about (from memory): for a material of which nobody says how thick it is. */
export const COTTON = 0.3;

/** How thick one layer of a role is, in mm: one answer for studies, checks and lists. */
export const thicknessIn =
  ({ materials }: Pick<Pattern, 'materials'>): ThicknessOf =>
  (role) =>
    materials[role]?.material?.thickness ?? COTTON;

/** What plies lying on one another come to, in mm; gathered cloth counts as often as it is gathered. */
export const thicknessOf = (pattern: Pattern, plies: readonly Ply[]): number =>
  stackThickness(plies, thicknessIn(pattern));

/** The most layers of a work at one place, how many of them are interfacing, and its thickest place. */
type Stack = { layers: number; fused: number; thickest: Thickest };

/** The thickest place of a work and its most layers, worked out when they are first asked for. */
export function stackOf(pattern: Pattern, work: Work): () => Stack {
  let known: Stack | undefined;
  return () => (known ??= readStack(pattern, work));
}

function readStack(pattern: Pattern, work: Work): Stack {
  const regions = layerMap(work);
  const most = regions.reduce<readonly Ply[]>(
    (plies, region) => (region.plies.length > plies.length ? region.plies : plies),
    [],
  );
  const counted = countLayers(most);
  const found = thickest(regions, thicknessIn(pattern));
  if (!found) return { ...counted, thickest: { mm: 0, layers: 0, at: { x: 0, y: 0 } } };
  const { region, thickness } = found;
  return { ...counted, thickest: { mm: thickness, layers: region.plies.length, at: middleOf(region).at } };
}

/** The materials in a work, each once. */
export function materialsIn(pattern: Pattern, work: Work): Material[] {
  const roles = new Set<string>();
  for (const { material } of work.plies) roles.add(material);
  return [...new Set([...roles].flatMap((role) => pattern.materials[role]?.material ?? []))];
}
