/** The shelf of materials, in mm and one edition. */
import { type Diagnostic, defaultGrid, inEdition, parseLength, quote, plainName } from '../measure/index.ts';
import { readEditions } from './raw-value.ts';
import type { Edition, Grid } from '../measure/index.ts';
import type { Material } from './pattern.ts';
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
  findings: Diagnostic[],
  grid: Grid = defaultGrid,
): Material {
  const reader = { home: edition, names: [], findings };
  const width = entry.width && readEditions({ in: entry.width.in, mm: entry.width.mm }, [name, 'width'], reader);
  const across = entry.across && readEditions({ in: entry.across.in, mm: entry.across.mm }, [name, 'across'], reader);
  const stops = entry.stops && readEditions({ in: entry.stops.in, mm: entry.stops.mm }, [name, 'stops'], reader);
  const price = entry.price && readPrice(name, entry.price, edition, findings);
  const straightening = entry.straightening && readEditions(entry.straightening, [name, 'straightening'], reader);
  const ends = entry.ends && readEditions(entry.ends, [name, 'ends'], reader);
  const each = entry.sold?.each;
  const length = typeof each === 'object' ? readEditions(each, [name, 'sold', 'each'], reader) : undefined;
  const pack = typeof each === 'number' ? each : length && inEdition(length.stated, edition, grid);
  return {
    name,
    label: entry.label ?? name,
    kind: entry.kind,
    nap: entry.nap ?? 'none',
    ...(entry.thickness && { thickness: entry.thickness.mm }),
    ...(width && { width: inEdition(width.stated, edition, grid) }),
    ...(entry.heat && { heat: entry.heat.celsius }),
    ...(entry.lining && { lining: true as const }),
    ...(entry.hardware && { hardware: entry.hardware }),
    ...(across && { across: inEdition(across.stated, edition, grid) }),
    ...(stops && { stops: inEdition(stops.stated, edition, grid) }),
    ...(entry.teeth && { teeth: entry.teeth }),
    ...(entry.needle && { needle: entry.needle }),
    ...(entry.holes === 'stay' && { holes: entry.holes }),
    ...(entry.frays === false && { frays: false as const }),
    ...(entry.fuses && { fuses: entry.fuses.celsius }),
    ...(entry.fuses?.seconds !== undefined && { presses: entry.fuses.seconds }),
    ...(entry.fuses?.cools !== undefined && { cools: entry.fuses.cools }),
    ...(entry.sold && { sold: { by: entry.sold.by, ...(pack !== undefined && { each: pack }) } }),
    ...(entry.shrinks && {
      shrinks: entry.shrinks.percent,
      shrinksAcross: entry.shrinks.across ?? entry.shrinks.percent,
    }),
    ...(ends && { ends: inEdition(ends.stated, edition, grid) }),
    ...(straightening && { straightening: inEdition(straightening.stated, edition, grid) }),
    ...(price && { price }),
    ...(entry.note !== undefined && { note: entry.note }),
  };
}

const counted = ['spool', 'pack', 'piece'] as const;

/** A price; a fault in what it buys is added to `findings`, and then there is no price. */
function readPrice(
  name: string,
  { amount, currency, per }: NonNullable<MaterialsFile[string]['price']>,
  edition: Edition,
  findings: Diagnostic[],
): Material['price'] {
  const refuse = (message: string, fix: string): undefined => {
    findings.push({ severity: 'error', place: [name, 'price', 'per'], code: 'price-per', message, fix });
  };
  const word = counted.find((one) => one === per.trim().toLowerCase());
  const length = word ? undefined : parseLength(per, edition);
  const fix = 'Write a length such as 1 m or 1/2 yd, or one of spool, pack, piece.';
  // A bare 1 would be one inch or one millimetre, which is never meant.
  const isBare = /^[\d\s.,/]+$/.test(per);
  if (length && (!length.ok || isBare))
    return refuse(`A price is for a length or a count, not for ${quote(per)}.`, fix);
  if (length && length.value <= 0) return refuse('A price is for some length, not for none.', fix);
  const shared = { amount, ...(currency !== undefined && { currency }), words: per.trim() };
  return { ...shared, per: word ?? (length as { value: number }).value };
}

/** It saves time alone: a shelf is not changed once it is read, and an equal one reads the same. */
const shelves = new WeakMap<Materials, Map<string, Material>>();

/** A material of the shelf by its name, in mm and one edition; undefined where the shelf has none of that name. */
export function materialOf(shelf: Materials, use: string, edition: Edition, grid: Grid): Material | undefined {
  let shelved = shelves.get(shelf);
  if (!shelved) shelves.set(shelf, (shelved = new Map<string, Material>()));
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
export function checkMaterials(file: MaterialsFile): Diagnostic[] {
  const findings: Diagnostic[] = [];
  for (const [name, entry] of Object.entries(file)) readMaterial(name, entry, 'inch', findings);
  return findings;
}
