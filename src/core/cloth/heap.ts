import { overlayOf, patchesBy } from './faces.ts';
import { section } from './section.ts';
import type { Line } from '../geometry/index.ts';
import type { Mark, Ply, Work } from './work.ts';
import type { Patch } from './faces.ts';

/** One material in the heap. */
export type HeapMaterial = {
  readonly material: string;
  readonly pieces: readonly string[];
  readonly plies: readonly Ply[];
  /** Where at least one layer of it lies. */
  readonly patches: readonly Patch[];
  /** Of these patches, in mm². */
  readonly area: number;
};

/** What lies in the heap when the iron comes: the materials, lowest first, and the hardware. */
export type Heap = {
  readonly materials: readonly HeapMaterial[];
  readonly hardware: readonly Mark[];
};

/**
 * Which materials lie in the heap and where, seen or hidden.
 *
 * @example
 * heap(stiffened).materials.map((one) => one.material) // => ['linen', 'woven fusible interfacing']
 */
export function heap(work: Work): Heap {
  const overlay = overlayOf(work.plies);
  const materials = [...byMaterial(work.plies)].map(([material, plies]): HeapMaterial => {
    const has = (covers: readonly number[]) => covers.some((level) => work.plies[level]!.material === material);
    const patches = patchesBy(overlay, (covers) => has(covers) || undefined).map(({ patch }) => patch);
    const pieces = [...new Set(plies.map((ply) => ply.piece))];
    return { material, pieces, plies, patches, area: patches.reduce((sum, patch) => sum + patch.area, 0) };
  });
  return { materials, hardware: work.marks.filter((mark) => mark.kind === 'hardware') };
}

/**
 * The plies of each material along a line, as when a fold is pressed with the edge of the iron.
 *
 * @example
 * [...heapAlong(stiffened, foldLine).keys()] // => ['linen']
 */
export const heapAlong = (work: Work, line: Line): Map<string, Ply[]> =>
  byMaterial(new Set(section(work, line, () => 0).layers.map(({ ply }) => ply)));

function byMaterial(plies: Iterable<Ply>): Map<string, Ply[]> {
  const found = new Map<string, Ply[]>();
  for (const ply of plies) found.set(ply.material, [...(found.get(ply.material) ?? []), ply]);
  return found;
}
