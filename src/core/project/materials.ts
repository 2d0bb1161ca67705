/** The shelf of materials, in mm and one edition. */
import { defaultGrid, inEdition } from '../measure/index.ts';
import { plainName } from './names.ts';
import { readEditions } from './written.ts';
import type { Edition, Grid } from '../measure/index.ts';
import type { Finding, Material } from './pattern.ts';
import type { MaterialsFile } from './schema.ts';

/** Materials by name, as read from content/materials.yaml. */
export type Materials = MaterialsFile;

/**
 * One entry of materials.yaml in mm and one edition. Faults in its lengths are added to `findings`.
 *
 * @example readMaterial('felt', { kind: 'cloth', thickness: { mm: 1, source: 'measured' } }, 'inch', []).thickness // => 1
 */
export function readMaterial(
  name: string,
  entry: MaterialsFile[string],
  edition: Edition,
  findings: Finding[],
  grid: Grid = defaultGrid,
): Material {
  const reader = { home: edition, names: [], findings };
  const width = entry.width && readEditions({ in: entry.width.in, mm: entry.width.mm }, [name, 'width'], reader);
  const each = entry.sold?.each;
  const length = typeof each === 'object' ? readEditions(each, [name, 'sold', 'each'], reader) : undefined;
  const counted = typeof each === 'number' ? each : length && inEdition(length.stated, edition, grid);
  return {
    name,
    label: entry.label ?? name,
    kind: entry.kind,
    nap: entry.nap ?? 'none',
    ...(entry.thickness && { thickness: entry.thickness.mm }),
    ...(width && { width: inEdition(width.stated, edition, grid) }),
    ...(entry.heat && { heat: entry.heat.celsius }),
    ...(entry.holes === 'stay' && { holes: entry.holes }),
    ...(entry.fuses && { fuses: entry.fuses.celsius }),
    ...(entry.sold && { sold: { by: entry.sold.by, ...(counted !== undefined && { each: counted }) } }),
    ...(entry.price && { price: entry.price }),
    ...(entry.note !== undefined && { note: entry.note }),
  };
}

const shelves = new WeakMap<Materials, Map<string, Material>>();

/** A material of the shelf by its name, in mm and one edition; undefined where the shelf has none of that name. */
export function materialOf(shelf: Materials, use: string, edition: Edition, grid: Grid): Material | undefined {
  let shelved = shelves.get(shelf);
  if (!shelved) shelves.set(shelf, (shelved = new Map()));
  const key = JSON.stringify([use, edition, grid.inch, grid.metric]);
  let material = shelved.get(key);
  if (!material) {
    const name = Object.keys(shelf).find((one) => plainName(one) === plainName(use));
    if (name === undefined) return undefined;
    // Faults inside materials.yaml are that file's own; checkMaterials reports them.
    shelved.set(key, (material = readMaterial(name, shelf[name]!, edition, [], grid)));
  }
  return material;
}

/** Everything wrong in a materials file, with places in it: lengths that cannot be read. */
export function checkMaterials(file: MaterialsFile): Finding[] {
  const findings: Finding[] = [];
  for (const [name, entry] of Object.entries(file)) readMaterial(name, entry, 'inch', findings);
  return findings;
}
