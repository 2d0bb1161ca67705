/**
 * Reads a project file once: every length parsed, every formula taken apart, every name looked up. What is found wrong
 * on the way does not depend on edition, values or options, and is kept with it.
 */
import {
  closest,
  defaultGrid,
  formatLength,
  inEdition,
  listed,
  quote,
  plainName,
  singleBlanks,
  markOf,
} from '../measure/index.ts';
import { noteOffGrid, reportBorrowedNames } from './remarks.ts';
import { MOST_POCKETS } from './pleats.ts';
import { partName, partsOf } from './names.ts';
import { readHold, type CompiledHold } from './holds.ts';
import { readPiece, type CompiledPiece } from './shapes.ts';
import { readEditions, readNumber, readPlain, readSum, readValue } from './raw-value.ts';
import type { Diagnostic, Place, Edition, Grid, Stated } from '../measure/index.ts';
import type { DerivedFormula } from './derived-formulas.ts';
import type { Adjustable } from './pattern.ts';
import type { Part } from './names.ts';
import type { ProjectFile } from './schema.ts';
import type { ReadSteps } from './steps/read.ts';
import type { Raw, Reader, Scalar, RawValue } from './raw-value.ts';

export type CompiledMeasure = {
  name: string;
  label: string;
  note: string | undefined;
  place: Place;
  kind: 'length' | 'count' | 'formula';
  rawValue: RawValue | undefined;
  /** What a learner may choose, in each edition. */
  range: Record<Edition, Omit<Adjustable, 'lesson' | 'kind'>> | undefined;
};

export type CompiledOption = {
  name: string;
  label: string;
  default: boolean;
  note: string | undefined;
  adds: ReadonlySet<string>;
  drops: ReadonlySet<string>;
  measures: ReadonlyMap<string, RawValue>;
};

export type CompiledRole = {
  role: string;
  label: string;
  use: string;
  place: Place;
  count: RawValue | undefined;
  /** What the project says of it, whatever the material. */
  lining: boolean | undefined;
  note: string | undefined;
};

export type Compiled = {
  file: ProjectFile;
  home: Edition;
  grid: Grid;
  /** By name as written; formulas give names back the same way. */
  measures: ReadonlyMap<string, CompiledMeasure>;
  pieces: ReadonlyMap<string, CompiledPiece>;
  roles: ReadonlyMap<string, CompiledRole>;
  options: ReadonlyMap<string, CompiledOption>;
  holds: readonly CompiledHold[];
  cutting: { gap: RawValue | undefined; edge: RawValue | undefined };
  machine: { lifts: RawValue | undefined; source: string } | undefined;
  finished: { of: string; width: RawValue | undefined; height: RawValue | undefined } | undefined;
  /** The names that pieces give, each with its piece and part. */
  parts: ReadonlyMap<string, { piece: string; part: Part }>;
  /** The names that the file’s formulas may use. */
  names: readonly string[];
  /** The formulas of the sizes that pieces give, by part name, as far as they have been asked for. */
  derived: Map<string, DerivedFormula | undefined>;
  /** The steps, once they have been asked for. */
  steps?: ReadSteps;
  findings: readonly Diagnostic[];
};

/** It saves time alone: a file is not changed once it is read, and an equal one compiles to the same. */
const known = new WeakMap<ProjectFile, Compiled>();

/** The compiled form of a file; the same object is compiled once. */
export function compiled(file: ProjectFile): Compiled {
  let found = known.get(file);
  if (!found) known.set(file, (found = compile(file)));
  return found;
}

function compile(file: ProjectFile): Compiled {
  const findings: Diagnostic[] = [];
  const home = file.units ?? 'inch';
  const grid: Grid = {
    inch: file.grid?.in === undefined ? defaultGrid.inch : (Number(file.grid.in.slice(2)) as Grid['inch']),
    metric: file.grid?.mm ?? defaultGrid.metric,
  };
  const pieceNames = distinct(Object.keys(file.pieces), 'pieces', 'piece', findings);
  const measureNames = distinct(Object.keys(file.measures), 'measures', 'measure', findings);
  const parts = new Map<string, { piece: string; part: Part }>();
  for (const piece of pieceNames) {
    for (const part of partsOf(file.pieces[piece]!.pleats ? MOST_POCKETS : 0)) {
      parts.set(partName(singleBlanks(piece), part), { piece, part });
    }
  }
  reportBorrowedNames(measureNames, parts, findings);

  const measureKeys = measureNames.map(singleBlanks);
  const names = [...measureKeys, ...mentioned(parts.keys(), file)];
  const reader: Reader = { home, names, findings };
  const measures = new Map<string, CompiledMeasure>();
  for (const name of measureNames)
    measures.set(singleBlanks(name), readMeasure(name, file.measures[name]!, grid, reader));
  const pieces = new Map<string, CompiledPiece>();
  for (const name of pieceNames) pieces.set(name, readPiece(name, file, reader));
  const roles = readRoles(file, reader);
  const options = readOptions(file, measures, pieceNames, [...roles.keys()], reader);
  const holds = (file.holds ?? [])
    .map((_, i) => readHold(i, file, pieces, reader))
    .filter((hold) => hold !== undefined);
  const { gap, edge } = file.cutting ?? {};
  const cutting = {
    gap: gap === undefined ? undefined : readValue(gap, ['cutting', 'gap'], reader),
    edge: edge === undefined ? undefined : readValue(edge, ['cutting', 'edge'], reader),
  };
  const machine = file.machine && {
    lifts: readValue(file.machine.lifts, ['machine', 'lifts'], reader),
    source: file.machine.source ?? 'project file',
  };
  const finished = file.finished && {
    of: file.finished.of,
    width: readValue(file.finished.width, ['finished', 'width'], reader),
    height: readValue(file.finished.height, ['finished', 'height'], reader),
  };

  return {
    file,
    home,
    grid,
    measures,
    pieces,
    roles,
    options,
    holds,
    cutting,
    machine,
    finished,
    parts,
    names,
    derived: new Map(),
    findings,
  };
}

/**
 * Of the names that pieces give, the sizes, and those folds and pockets that the file speaks of. A pleated piece could
 * have dozens; looking through them all for each word of each formula would take longer than the rest of the reading.
 */
function mentioned(names: Iterable<string>, file: ProjectFile): string[] {
  const spoken = new Set(
    JSON.stringify(file)
      .match(/(?:fold|pocket)\s+\d+/gu)
      ?.map(singleBlanks),
  );
  return [...names].filter((name) => {
    const numbered = /(?:fold|pocket) \d+(?= depth$| top$|$)/u.exec(name);
    return !numbered || spoken.has(numbered[0]);
  });
}

/** Keeps the first of names that differ by capitals and blanks alone, and reports the others. */
function distinct(names: string[], where: string, what: string, findings: Diagnostic[]): string[] {
  const first = new Map<string, string>();
  for (const name of names) {
    const plain = plainName(name);
    const before = first.get(plain);
    if (plain === '') {
      findings.push({ severity: 'error', place: [where, name], code: 'no-name', message: `This ${what} has no name.` });
    } else if (before !== undefined) {
      const message = `There are two ${what}s called ${quote(before.trim())}. The second is left out.`;
      findings.push({
        severity: 'error',
        place: [where, name],
        code: 'name-twice',
        message,
        fix: 'Give one of them another name.',
      });
    } else first.set(plain, name);
  }
  return [...first.values()];
}

function readMeasure(name: string, raw: ProjectFile['measures'][string], grid: Grid, reader: Reader): CompiledMeasure {
  const place: Place = ['measures', name];
  if (typeof raw !== 'object') {
    const rawValue = readValue(raw, place, reader);
    noteOffGrid(rawValue, grid, reader);
    const kind = rawValue?.kind === 'formula' ? 'formula' : 'length';
    return {
      name: singleBlanks(name),
      label: singleBlanks(name),
      note: undefined,
      place,
      kind,
      rawValue,
      range: undefined,
    };
  }
  const ways = [
    raw.in !== undefined || raw.mm !== undefined ? 'in and mm' : undefined,
    raw.is !== undefined ? 'is' : undefined,
    raw.count !== undefined ? 'count' : undefined,
  ].filter((way) => way !== undefined);
  if (ways.length !== 1) {
    const message =
      ways.length === 0
        ? `${quote(name)} has no value.`
        : `${quote(name)} gets its value twice: by ${listed(ways.map(quote))}.`;
    const fix = ways.length === 0 ? 'State in or mm or both, or a formula under is, or a count.' : 'Keep one of them.';
    reader.findings.push({
      severity: 'error',
      place,
      code: ways.length === 0 ? 'no-value' : 'value-twice',
      message,
      fix,
    });
  }
  const shared = { name: singleBlanks(name), label: raw.label ?? singleBlanks(name), note: raw.note, place };
  if (raw.count !== undefined) {
    const rawValue = readNumber(raw.count, [...place, 'count'], reader);
    const range = raw.between === undefined ? undefined : readCountRange(raw, place, reader);
    return { ...shared, kind: 'count', rawValue, range };
  }
  if (raw.is !== undefined) {
    if (raw.between !== undefined) {
      const message = `${quote(name)} follows from its formula, so a learner cannot choose it.`;
      const fix = 'Take out between, or state a value in place of the formula.';
      reader.findings.push({
        severity: 'error',
        place: [...place, 'between'],
        code: 'range-of-formula',
        message,
        fix,
      });
    }
    return { ...shared, kind: 'formula', rawValue: readSum(raw.is, [...place, 'is'], reader), range: undefined };
  }
  if (ways.length === 0) return { ...shared, kind: 'length', rawValue: undefined, range: undefined };
  const rawValue = readValue({ in: raw.in, mm: raw.mm, editions: raw.editions }, place, reader);
  noteOffGrid(rawValue, grid, reader);
  const range = raw.between === undefined || !rawValue ? undefined : readRange(raw, rawValue, grid, place, reader);
  return { ...shared, kind: 'length', rawValue, range };
}

type RawMeasure = Extract<ProjectFile['measures'][string], object>;
type RawPair = [Scalar, Scalar];

function readRange(
  raw: RawMeasure,
  rawValue: RawValue,
  grid: Grid,
  place: Place,
  reader: Reader,
): CompiledMeasure['range'] {
  const { home, findings } = reader;
  const between = raw.between!;
  const at: Place = [...place, 'between'];
  const given = Array.isArray(between)
    ? [{ edition: home, pair: between as RawPair, at }]
    : (['inch', 'metric'] as const).flatMap((edition) => {
        const key = edition === 'inch' ? 'in' : 'mm';
        const pair = between[key] as RawPair | undefined;
        return pair ? [{ edition, pair, at: [...at, key] }] : [];
      });
  const ends: Partial<Record<Edition, number>>[] = [{}, {}];
  for (const { edition, pair, at } of given) {
    for (const end of [0, 1]) {
      const value = readPlain(pair[end]!, [...at, end], edition, reader);
      if (value === undefined) return undefined;
      ends[end]![edition] = value;
    }
    if (ends[0]![edition]! >= ends[1]![edition]!) {
      const message = 'The range ends where it starts, or before.';
      findings.push({
        severity: 'error',
        place: at,
        code: 'range-empty',
        message,
        fix: 'Write the least first, then the most.',
      });
      return undefined;
    }
  }
  if (given.length === 0) {
    findings.push({ severity: 'error', place: at, code: 'no-value', message: 'The range is missing: [2, 4].' });
    return undefined;
  }
  const step = raw.step === undefined ? undefined : readStep(raw.step, [...place, 'step'], reader);
  const inBoth = (edition: Edition) => {
    const [min, max] = ends.map((end) => inEdition(end as Stated, edition, grid)) as [number, number];
    const mark = markOf(edition, grid);
    const lesson = rawValue.kind === 'length' ? inEdition(rawValue.stated, edition, grid) : min;
    const wished = step ? inEdition(step, edition, grid) : mark;
    // A slider that starts at the least must be able to stand at the lesson's own value.
    const steps = (lesson - min) / wished;
    const reaches = Math.abs(steps - Math.round(steps)) < 1e-6;
    if (!reaches && edition === home && step) {
      const [least, value] = [min, lesson].map((mm) => formatLength(mm, edition, { grid }));
      const message = `Steps from ${least} never come to the lesson’s ${value}. The slider goes mark by mark instead.`;
      findings.push({ severity: 'note', place: [...place, 'step'], code: 'step-misses', message });
    }
    if (lesson < min - 1e-6 || lesson > max + 1e-6) {
      const [value, least, most] = [lesson, min, max].map((mm) => formatLength(mm, edition, { grid }));
      const message = `The lesson’s own ${value} lies outside ${least} to ${most}.`;
      findings.push({ severity: 'warning', place: at, code: 'lesson-out-of-range', message, fix: 'Widen the range.' });
    }
    return { min, max, step: reaches ? wished : mark };
  };
  return { inch: inBoth('inch'), metric: inBoth('metric') };
}

function readStep(raw: Raw, place: Place, reader: Reader): Stated | undefined {
  // A step of the slider goes by the marks of each ruler, and is not one length in both.
  const rawValue = typeof raw === 'object' ? readEditions(raw, place, reader) : readValue(raw, place, reader);
  if (!rawValue) return undefined;
  const sensible = rawValue.kind === 'length' && Object.values(rawValue.stated).every((value) => value > 0);
  if (sensible) return rawValue.stated;
  const message = 'A step is a plain length above zero, such as 1/8.';
  reader.findings.push({ severity: 'error', place, code: 'no-step', message });
  return undefined;
}

function readCountRange(raw: RawMeasure, place: Place, reader: Reader): CompiledMeasure['range'] {
  const ends = Array.isArray(raw.between) ? raw.between.map(Number) : [];
  const [min, max] = ends;
  if (min === undefined || max === undefined || !ends.every((end) => Number.isInteger(end)) || min >= max) {
    const message = 'A count goes from one whole number to a larger one: [4, 6].';
    reader.findings.push({ severity: 'error', place: [...place, 'between'], code: 'range-empty', message });
    return undefined;
  }
  const lesson = Number(raw.count);
  if (lesson < min || lesson > max) {
    const message = `The lesson’s own ${lesson} lies outside ${min} to ${max}.`;
    reader.findings.push({
      severity: 'warning',
      place: [...place, 'between'],
      code: 'lesson-out-of-range',
      message,
      fix: 'Widen the range.',
    });
  }
  const range = { min, max, step: 1 };
  return { inch: range, metric: range };
}

function readRoles(file: ProjectFile, reader: Reader): Map<string, CompiledRole> {
  const roles = new Map<string, CompiledRole>();
  for (const role of distinct(Object.keys(file.materials ?? {}), 'materials', 'material', reader.findings)) {
    const raw = file.materials![role]!;
    const place: Place = ['materials', role];
    if (typeof raw === 'string') {
      roles.set(role, { role, label: role, use: raw, place, count: undefined, lining: undefined, note: undefined });
    } else {
      const count = raw.count === undefined ? undefined : readNumber(raw.count, [...place, 'count'], reader);
      roles.set(role, {
        role,
        label: raw.label ?? role,
        use: raw.use,
        place: [...place, 'use'],
        count,
        lining: raw.lining,
        note: raw.note,
      });
    }
  }
  return roles;
}

function readOptions(
  file: ProjectFile,
  measures: ReadonlyMap<string, CompiledMeasure>,
  pieces: readonly string[],
  roles: readonly string[],
  reader: Reader,
): Map<string, CompiledOption> {
  const options = new Map<string, CompiledOption>();
  const things = [...pieces, ...roles];
  const find = (name: string, among: readonly string[]) => among.find((one) => plainName(one) === plainName(name));
  for (const name of distinct(Object.keys(file.options ?? {}), 'options', 'option', reader.findings)) {
    const raw = file.options![name]!;
    const named = (key: 'adds' | 'drops') => {
      const found = new Set<string>();
      for (const [i, thing] of (raw[key] ?? []).entries()) {
        const one = find(thing, things);
        if (one !== undefined) found.add(one);
        else reader.findings.push(unknownThing('piece or material', thing, things, ['options', name, key, i]));
      }
      return found;
    };
    const changes = new Map<string, RawValue>();
    for (const [measure, value] of Object.entries(raw.measures ?? {})) {
      const place: Place = ['options', name, 'measures', measure];
      const one = find(measure, [...measures.keys()]);
      if (one === undefined) {
        reader.findings.push(unknownThing('measure', measure, [...measures.keys()], place));
        continue;
      }
      const isCount = measures.get(one)!.kind === 'count' && typeof value !== 'object';
      const rawValue = isCount ? readNumber(value, place, reader) : readValue(value, place, reader);
      if (rawValue) changes.set(one, rawValue);
    }
    options.set(name, {
      name,
      label: raw.label ?? name,
      default: raw.default ?? false,
      note: raw.note,
      adds: named('adds'),
      drops: named('drops'),
      measures: changes,
    });
  }
  return options;
}

/** A name that nothing has, with the nearest one that something has. */
export function unknownThing(what: string, name: string, among: readonly string[], place: Place): Diagnostic {
  const meant = closest(name, among);
  const message = `There is no ${what} called ${quote(name)}.`;
  const others = among.length > 0 && among.length <= 8 ? `There are ${listed(among.map(quote))}.` : undefined;
  const fix = meant === undefined ? others : `Do you mean ${quote(meant)}?`;
  return { severity: 'error', place, start: 0, end: name.length, code: 'unknown-name', message, ...(fix && { fix }) };
}
