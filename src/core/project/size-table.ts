/** One choice over several measures: what each size makes of them. What an author got wrong in it, check-written.ts says. */
import { inEdition, plainName, singleBlanks } from '../measure/index.ts';
import { noteOffGrid } from './remarks.ts';
import { readNumber, readValue } from './raw-value.ts';
import type { Edition, Grid } from '../measure/index.ts';
import type { ProjectFile } from './schema.ts';
import type { RawValue, Reader } from './raw-value.ts';

/** `values`: by measure and then by size, as written in the file. */
export type CompiledSizes = {
  label: string;
  note: string | undefined;
  default: string;
  names: readonly string[];
  values: ReadonlyMap<string, ReadonlyMap<string, RawValue>>;
};

type RawMeasure = ProjectFile['measures'][string];

/** The measures that a size table names, as they are compared: they need no value of their own. */
export const sizedMeasures = (file: ProjectFile): ReadonlySet<string> =>
  new Set(Object.values(file.sizes?.of ?? {}).flatMap((size) => Object.keys(size).map(plainName)));

/** A measure that counts something or is a plain number, and so is the same in both editions. */
export const isPlain = (raw: RawMeasure): boolean =>
  typeof raw === 'object' && (raw.count !== undefined || raw.number !== undefined);

/** A measure that follows from others, which no size gives. */
export const isFormula = (raw: RawMeasure, reader: Reader): boolean =>
  typeof raw === 'object' ? raw.is !== undefined : readValue(raw, [], { ...reader, findings: [] })?.kind === 'formula';

/**
 * Reads the size table. A value that is a formula is left out: what follows from a formula follows in every size.
 *
 * @param measures by the names that the file gives them
 */
export function readSizes(
  file: ProjectFile,
  measures: readonly string[],
  grid: Grid,
  reader: Reader,
): CompiledSizes | undefined {
  if (!file.sizes) return undefined;
  const { of, label = 'Size', note } = file.sizes;
  const names = Object.keys(of);
  if (names.length === 0) return undefined;
  const values = new Map<string, Map<string, RawValue>>();
  for (const size of names) {
    for (const [name, raw] of Object.entries(of[size]!)) {
      const measure = measures.find((one) => plainName(one) === plainName(name));
      if (measure === undefined || isFormula(file.measures[measure]!, reader)) continue;
      const place = ['sizes', 'of', size, name];
      const asNumber = isPlain(file.measures[measure]!) && typeof raw !== 'object';
      const read = asNumber ? readNumber(raw, place, reader) : readValue(raw, place, reader);
      if (!read || statedIn(read, 'inch', grid) === undefined) continue;
      if (!asNumber) noteOffGrid(read, grid, reader);
      const key = singleBlanks(measure);
      (values.get(key) ?? values.set(key, new Map()).get(key)!).set(size, read);
    }
  }
  return { label, note, default: defaultSize(file, names, values, grid, reader), names, values };
}

/** What a written value comes to in an edition: mm, or the number. */
export function statedIn(rawValue: RawValue, edition: Edition, grid: Grid): number | undefined {
  if (rawValue.kind === 'length') return inEdition(rawValue.stated, edition, grid);
  const { tree } = rawValue.formula;
  return tree.kind === 'number' ? tree.value : undefined;
}

/** The size a lesson is written for: the one that the file names, or that its measures agree with, or the first. */
function defaultSize(
  file: ProjectFile,
  names: readonly string[],
  values: CompiledSizes['values'],
  grid: Grid,
  reader: Reader,
): string {
  const asked = file.sizes!.default;
  const named = asked === undefined ? undefined : names.find((one) => plainName(one) === plainName(String(asked)));
  const own = ownValues(file, values, reader);
  const agrees = (size: string) =>
    own.every(([name, value]) => !differs(value, values.get(name)?.get(size), reader, grid));
  return named ?? (own.length > 0 ? names.find(agrees) : undefined) ?? names[0]!;
}

/** Whether a measure says something else than a size gives it. */
export function differs(own: RawValue, given: RawValue | undefined, { home }: Reader, grid: Grid): boolean {
  const [said, is] = [own, given].map((one) => one && statedIn(one, home, grid));
  return said !== undefined && is !== undefined && Math.abs(said - is) > 1e-6;
}

/** The measures of the size table that have a value of their own, too. */
export function ownValues(file: ProjectFile, values: CompiledSizes['values'], reader: Reader): [string, RawValue][] {
  return Object.entries(file.measures).flatMap(([name, raw]): [string, RawValue][] => {
    const key = singleBlanks(name);
    const value = values.has(key) ? ownValue(raw, { ...reader, findings: [] }) : undefined;
    return value ? [[key, value]] : [];
  });
}

function ownValue(raw: RawMeasure, quiet: Reader): RawValue | undefined {
  if (typeof raw !== 'object') return readValue(raw, [], quiet);
  const number = raw.count ?? raw.number;
  if (number !== undefined) return readNumber(number, [], quiet);
  const { in: inch, mm } = raw;
  return inch === undefined && mm === undefined ? undefined : readValue({ in: inch, mm, editions: '-' }, [], quiet);
}
