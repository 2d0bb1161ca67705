/** Reads the fields of a step as their own description says, and works them out. */
import { type Diagnostic, type Place, closest, listed, quote, plainName } from '../../measure/index.ts';
import { readNumber, readValue } from '../raw-value.ts';
import type { Cell, Field, Fields } from '../../steps/index.ts';
import { unknownFeature } from '../check-written.ts';
import type { CompiledChoice } from '../features.ts';
import type { Raw, Reader, RawValue } from '../raw-value.ts';
import type { Amounts } from '../amounts.ts';
import type { StepFile } from '../schema.ts';

/** What a field says: a value as it stands, a length that each edition works out, or a group of them by name. */
export type FieldValue =
  | { kind: 'plain'; value: string | number | boolean | readonly string[] }
  | { kind: 'grid'; value: readonly (readonly Cell[])[] }
  | { kind: 'length'; rawValue: RawValue }
  | { kind: 'count'; rawValue: RawValue }
  | { kind: 'group'; of: ReadonlyMap<string, FieldValue> };

/** A name, where the step says it. */
export type Named = { name: string; place: Place };

/** The names that steps can use beside those of works. */
export type Known = { features: readonly string[]; choices: readonly CompiledChoice[]; roles: readonly string[] };

export type Report = (finding: Omit<Diagnostic, 'severity'>) => void;

type Reading = { known: Known; report: Report; reader: Reader };

/** What the fields of a step say, and for those that name works, edges or pieces, each name with its place. */
export type ReadFields = { said: Map<string, FieldValue>; named: Map<string, Named[]> };

/** Reads those of the fields that are there. What does not suit a field is reported, and left out. */
export function readFields(raw: StepFile, fields: Fields, place: Place, reading: Reading): ReadFields {
  const [said, named] = [new Map<string, FieldValue>(), new Map<string, Named[]>()];
  for (const [name, field] of Object.entries(fields)) {
    const value = raw[name];
    if (value === undefined) continue;
    const where = [...place, name];
    const found = readField(field, value, where, reading);
    if (found === 'other') {
      const message = `${quote(name)} is ${belongs(field)} here, not ${shown(value)}.`;
      reading.report({ place: where, code: 'other-kind', message });
    } else if (found) {
      if (found.kind === 'plain' && Array.isArray(found.value))
        reportMany(name, field, found.value, fields, place, reading);
      said.set(name, found);
      if (found.kind === 'plain' && isNaming(field)) named.set(name, namesIn(value, where));
      if (found.kind === 'grid') named.set(name, cellsIn(value, where).flat());
    }
  }
  return { said, named };
}

/** More than a verb takes: the rest would be read as if it were not there. What lies between two works has a field of its own. */
function reportMany(
  name: string,
  field: Field,
  said: readonly string[],
  fields: Fields,
  place: Place,
  { report }: Reading,
): void {
  const most = 'most' in field ? field.most : undefined;
  const extra = most === undefined ? undefined : said[most];
  if (extra === undefined) return;
  const what = `${most} ${field.kind === 'works' ? 'works' : 'edges'}`;
  const message = `${quote(name)} takes ${what}, and ${quote(extra)} is one more.`;
  const caught = field.kind === 'works' && 'between' in fields;
  const between = caught ? `, or “between: ${extra}” if it is caught in the seam of the others` : '';
  const fix = `Write a step of its own for it${between}.`;
  report({ place: [...place, name, most!], start: 0, end: extra.length, code: 'too-many', message, fix });
}

/** A text of a step as it stands in the file. */
export function textIn(raw: StepFile, field: string): string | undefined {
  const value = raw[field];
  return typeof value === 'string' ? value : undefined;
}

/** More of one work in a row than anybody sews. */
const MOST_ALIKE = 100;

/** `4 of unit turned left`: how many, of what, and how they lie. */
const CELL = /^\s*(?:(\d+) of )?(.*?)(?: turned (left|right|round))?\s*$/u;

/** What stands in rows, each with its place. */
function writtenCells(value: unknown, place: Place) {
  if (!Array.isArray(value)) return [];
  return value.map((row: unknown, i) =>
    (Array.isArray(row) ? row : [row]).map(String).map((text, k) => {
      const [, many = '1', name = '', turned] = CELL.exec(text) ?? [];
      const cell: Cell = { name, ...(turned !== undefined && { turned: turned as NonNullable<Cell['turned']> }) };
      return { text, cell, many: Number(many), place: Array.isArray(row) ? [...place, i, k] : [...place, i] };
    }),
  );
}

/** Whether rows ask for so many of one work as nobody sews, or for none. Each is reported. */
function reportCounts(value: unknown, place: Place, report: Reading['report']): boolean {
  const wrong = writtenCells(value, place)
    .flat()
    .filter(({ many }) => many === 0 || many > MOST_ALIKE);
  for (const { text, cell, many, place: at } of wrong) {
    const message =
      many === 0 ? `None of ${quote(cell.name)} is no work.` : `At most ${MOST_ALIKE} of one work lie in a row.`;
    const fix = many === 0 ? 'Leave it out, or say how many.' : 'Check the number, or sew rows of fewer first.';
    report({ place: at, start: 0, end: text.length, code: many === 0 ? 'none' : 'too-many', message, fix });
  }
  return wrong.length > 0;
}

/** The works of rows, each with its place: `4 of unit` is four of them, `unit turned left` one that lies turned. */
const cellsIn = (value: unknown, place: Place): (Named & Cell)[][] =>
  writtenCells(value, place).map((row) =>
    row.flatMap(({ cell, many, place: at }) => Array.from({ length: many }, () => ({ ...cell, place: at }))),
  );

const isNaming = ({ kind }: Field): boolean => ['work', 'works', 'edges', 'names'].includes(kind);

const namesIn = (value: unknown, place: Place): Named[] =>
  Array.isArray(value)
    ? value.map((name, k) => ({ name: String(name), place: [...place, k] }))
    : [{ name: String(value), place }];

/** A name may be a number, as YAML reads it. */
export const isName = (value: unknown): value is string | number =>
  typeof value === 'string' || typeof value === 'number';

const isRaw = (value: unknown): value is Raw =>
  isName(value) || (typeof value === 'object' && value !== null && !Array.isArray(value));

/** What a value says; undefined where its fault was reported, and `other` where it is of another kind. */
function readField(field: Field, value: unknown, place: Place, reading: Reading): FieldValue | 'other' | undefined {
  const { report, known } = reading;
  switch (field.kind) {
    case 'work':
    case 'text': {
      if (!isName(value)) return 'other';
      if (field.kind === 'text' && field.only && !field.only.test(String(value))) {
        const message = `${field.not ?? 'This does not go here:'} ${quote(String(value))}.`;
        report({ place, start: 0, end: String(value).length, code: field.code ?? 'unclear', message });
      }
      return { kind: 'plain', value: String(value) };
    }
    case 'material':
      if (!isName(value)) return 'other';
      reportUnknown('material', String(value), place, known.roles, report);
      return { kind: 'plain', value: String(value) };
    case 'options': {
      const many: unknown[] = Array.isArray(value) ? value : [value];
      if (!many.every(isName)) return 'other';
      for (const one of namesIn(value, place)) {
        if (known.features.some((name) => plainName(name) === plainName(one.name))) continue;
        const { severity: _, ...finding } = unknownFeature(one.name, known.features, known.choices, one.place);
        report(finding);
      }
      return { kind: 'plain', value: many.map(String) };
    }
    case 'works':
    case 'names':
    case 'edges': {
      const many: unknown[] = Array.isArray(value) ? value : [value];
      return many.every(isName) ? { kind: 'plain', value: many.map(String) } : 'other';
    }
    case 'choice':
      return typeof value === 'string' && field.words.includes(value) ? { kind: 'plain', value } : 'other';
    case 'yes':
      return typeof value === 'boolean' ? { kind: 'plain', value } : 'other';
    case 'whole':
    case 'number':
      return typeof value === 'number' ? { kind: 'plain', value } : 'other';
    case 'count': {
      if (!isName(value)) return 'other';
      const rawValue = readNumber(value, place, reading.reader);
      return rawValue && { kind: 'count', rawValue };
    }
    case 'grid': {
      if (reportCounts(value, place, reading.report)) return undefined;
      const rows = cellsIn(value, place);
      if (rows.length === 0 || rows.some((row) => row.length === 0)) return 'other';
      return { kind: 'grid', value: rows.map((row) => row.map(({ place: _, ...cell }) => cell)) };
    }
    case 'length':
      return isRaw(value) ? lengthIn(value, place, reading) : 'other';
    case 'size':
      return pairIn(['width', 'height'], value, place, reading);
    case 'point':
      return pairIn(['x', 'y'], value, place, reading);
    case 'group': {
      if (typeof value !== 'object' || value === null) return 'other';
      const { said } = readFields(value as StepFile, field.fields, place, reading);
      return { kind: 'group', of: said };
    }
  }
}

function lengthIn(raw: Raw, place: Place, { reader }: Reading): FieldValue | undefined {
  const rawValue = readValue(raw, place, reader);
  return rawValue && { kind: 'length', rawValue };
}

function pairIn(
  names: readonly [string, string],
  value: unknown,
  place: Place,
  reading: Reading,
): FieldValue | 'other' {
  if (!Array.isArray(value) || value.length !== 2 || !value.every(isRaw)) return 'other';
  const of = new Map<string, FieldValue>();
  names.forEach((name, k) => {
    const said = lengthIn(value[k] as Raw, [...place, k], reading);
    if (said) of.set(name, said);
  });
  return { kind: 'group', of };
}

/** What belongs in a field, as a sentence can say it. */
function belongs(field: Field): string {
  switch (field.kind) {
    case 'work':
      return 'the name of a work';
    case 'works':
      return 'a list of works';
    case 'material':
      return 'the name of a material';
    case 'options':
      return 'the name of an option or a list of them';
    case 'edges':
      return 'an edge or a list of edges';
    case 'names':
      return 'a name or a list of names';
    case 'text':
      return 'a text';
    case 'choice':
      return listed(field.words, 'or');
    case 'yes':
      return 'true or false';
    case 'grid':
      return 'a list of rows, each a list of works,';
    case 'count':
    case 'whole':
    case 'number':
      return 'a number';
    case 'length':
      return 'a length';
    case 'size':
      return 'a width and a height';
    case 'point':
      return 'two lengths, from the left and from the bottom edge,';
    case 'group':
      return 'a group of named values';
  }
}

const shown = (value: unknown): string =>
  isName(value) ? quote(String(value)) : Array.isArray(value) ? 'a list' : 'a group of named values';

function reportUnknown(what: string, name: string, place: Place, known: readonly string[], report: Report): void {
  if (known.some((one) => plainName(one) === plainName(name))) return;
  const meant = closest(name, known);
  const message = `There is no ${what} called ${quote(name)}.`;
  const where = { place, start: 0, end: name.length };
  report({ ...where, code: 'unknown-name', message, ...(meant && { fix: `Do you mean ${quote(meant)}?` }) });
}

/** What the fields say in one edition, lengths in mm; undefined if a length cannot be worked out, which is reported. */
export function valuesOf(
  said: ReadonlyMap<string, FieldValue>,
  amounts: Amounts,
): Readonly<Record<string, unknown>> | undefined {
  const values: Record<string, unknown> = {};
  let sound = true;
  for (const [name, one] of said) {
    const value =
      one.kind === 'plain' || one.kind === 'grid'
        ? one.value
        : one.kind === 'count'
          ? amounts.count(one.rawValue)
          : one.kind === 'length'
            ? lengthOf(one.rawValue, amounts)
            : valuesOf(one.of, amounts);
    if (value === undefined) sound = false;
    values[name] = value;
  }
  return sound ? values : undefined;
}

/** A place may be measured from an edge by a plain nought. */
function lengthOf(rawValue: RawValue, amounts: Amounts): number | undefined {
  const found = amounts.quantity(rawValue);
  return found?.value === 0 && found.dimension === 0 ? 0 : found && amounts.length(rawValue);
}
