/**
 * Reads a project file once: every length parsed, every formula taken apart, every name looked up. What is found wrong
 * on the way does not depend on edition, values or options, and is kept with it.
 */
import { literal } from '../formula/index.ts';
import {
  defaultGrid,
  formatLength,
  formatNumber,
  inEdition,
  listed,
  quote,
  plainName,
  singleBlanks,
  markOf,
} from '../measure/index.ts';
import { distinct, noteOffGrid, reportBorrowedNames } from './remarks.ts';
import { isOnStep, readPlainNumber } from './chosen.ts';
import { partName, partsOf } from './names.ts';
import {
  readConditions,
  readFeatures,
  type CompiledChoice,
  type CompiledFeature,
  type Conditions,
} from './features.ts';
import { readSizes, sizedMeasures, statedIn, type CompiledSizes } from './size-table.ts';
import { readFinished, type CompiledFinished } from './finished.ts';
import { readHold, type CompiledHold } from './holds.ts';
import { measuredEdges, pleatParts, readPiece, type CompiledPiece } from './shapes.ts';
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
  kind: 'length' | 'count' | 'number' | 'formula';
  rawValue: RawValue | undefined;
  /** What each size makes of it, where it is in the size table. */
  bySize: ReadonlyMap<string, RawValue> | undefined;
  /** What a learner may choose, in each edition. */
  range: Record<Edition, Omit<Adjustable, 'lesson' | 'kind'>> | undefined;
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
  /** The options, each a plain yes or no, and every one of every choice, by the names that steps call them. */
  features: ReadonlyMap<string, CompiledFeature>;
  choices: ReadonlyMap<string, CompiledChoice>;
  sizes: CompiledSizes | undefined;
  /** With which features pieces and materials are there. */
  conditions: Conditions;
  holds: readonly CompiledHold[];
  cutting: { gap: RawValue | undefined; edge: RawValue | undefined };
  machine: { lifts: RawValue | undefined; source: string } | undefined;
  finished: CompiledFinished | undefined;
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
  const pieceNames = distinct(Object.keys(file.pieces), ['pieces'], 'piece', findings);
  const measureNames = distinct(Object.keys(file.measures), ['measures'], 'measure', findings);
  const parts = new Map<string, { piece: string; part: Part }>();
  for (const piece of pieceNames) {
    for (const part of partsOf(pleatParts(file.pieces[piece]!), measuredEdges(piece, file))) {
      const name = partName(singleBlanks(piece), part);
      const before = parts.get(name);
      // The two lines of an edge clash together: one of them is enough to say so.
      if (before && before.piece !== piece && part.what !== 'cut line')
        findings.push(sharedName(name, before, { piece, part }, file));
      parts.set(name, { piece, part });
    }
  }
  reportBorrowedNames(measureNames, parts, findings);

  const measureKeys = measureNames.map(singleBlanks);
  const names = [...measureKeys, ...mentioned(parts.keys(), file)];
  const reader: Reader = { home, names, findings };
  const sizes = readSizes(file, measureNames, grid, reader);
  const sized = sizedMeasures(file);
  const measures = new Map<string, CompiledMeasure>();
  for (const name of measureNames) {
    const bySize = sizes?.values.get(singleBlanks(name));
    const isSized = sized.has(plainName(name));
    measures.set(singleBlanks(name), {
      ...readMeasure(name, file.measures[name]!, grid, reader, bySize, isSized),
      bySize,
    });
  }
  const pieces = new Map<string, CompiledPiece>();
  for (const name of pieceNames) pieces.set(name, readPiece(name, file, reader));
  const roles = readRoles(file, reader);
  const { features, choices } = readFeatures(file, measures, pieceNames, [...roles.keys()], reader);
  const conditions = readConditions(file);
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
  const finished = file.finished && readFinished(file.finished, reader);

  return {
    file,
    home,
    grid,
    measures,
    pieces,
    roles,
    features,
    choices,
    sizes,
    conditions,
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

/** Two pieces that give one name, as `front` does with an edge `pocket`, and `front pocket` all round. */
function sharedName(
  name: string,
  first: { piece: string; part: Part },
  second: { piece: string; part: Part },
  file: ProjectFile,
): Diagnostic {
  const [owner, other] = 'edge' in second.part ? [second, first] : [first, second];
  const isEdge = 'edge' in owner.part;
  const place: Place = ['pieces', owner.piece];
  if (isEdge && file.pieces[owner.piece]!.outline !== undefined) place.push('outline');
  const what = isEdge ? 'the length of an edge' : 'a number';
  const message = `${quote(name)} would be ${what} of ${quote(owner.piece.trim())} and of ${quote(other.piece.trim())}.`;
  const fix = `Call ${isEdge ? 'the edge or the piece' : 'one of the pieces'} something else.`;
  return { severity: 'error', place, code: 'name-twice', message, fix };
}

function readMeasure(
  name: string,
  raw: ProjectFile['measures'][string],
  grid: Grid,
  reader: Reader,
  bySize: ReadonlyMap<string, RawValue> | undefined,
  isSized: boolean,
): Omit<CompiledMeasure, 'bySize'> {
  const place: Place = ['measures', name];
  if (typeof raw !== 'object') {
    const rawValue = readValue(raw, place, reader);
    noteOffGrid(rawValue, grid, reader);
    const kind = rawValue?.kind === 'formula' ? 'formula' : 'length';
    return {
      name: singleBlanks(name),
      label: literal(singleBlanks(name)),
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
    raw.number !== undefined ? 'number' : undefined,
  ].filter((way) => way !== undefined);
  if (ways.length > 1 || (ways.length === 0 && !isSized)) {
    const message =
      ways.length === 0
        ? `${quote(name)} has no value.`
        : `${quote(name)} gets its value twice: by ${listed(ways.map(quote))}.`;
    const fix =
      ways.length === 0 ? 'State in or mm or both, a formula under is, a count or a number.' : 'Keep one of them.';
    reader.findings.push({
      severity: 'error',
      place,
      code: ways.length === 0 ? 'no-value' : 'value-twice',
      message,
      fix,
    });
  }
  const shared = { name: singleBlanks(name), label: raw.label ?? literal(singleBlanks(name)), note: raw.note, place };
  if (raw.count !== undefined) {
    const rawValue = readNumber(raw.count, [...place, 'count'], reader);
    const range = raw.between === undefined ? undefined : readCountRange(raw, place, reader, bySize);
    return { ...shared, kind: 'count', rawValue, range };
  }
  if (raw.number !== undefined) {
    const rawValue = readNumber(raw.number, [...place, 'number'], reader);
    const range = raw.between === undefined ? undefined : readNumberRange(raw, place, reader, bySize);
    return { ...shared, kind: 'number', rawValue, range };
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
  const rawValue =
    ways.length === 0 ? undefined : readValue({ in: raw.in, mm: raw.mm, editions: raw.editions }, place, reader);
  noteOffGrid(rawValue, grid, reader);
  const lessons = [...(bySize?.values() ?? (rawValue ? [rawValue] : []))];
  const range =
    raw.between === undefined || lessons.length === 0 ? undefined : readRange(raw, lessons, grid, place, reader);
  return { ...shared, kind: 'length', rawValue, range };
}

type RawMeasure = Extract<ProjectFile['measures'][string], object>;
type RawPair = [Scalar, Scalar];

/** `lessons`: what the lesson has, in each of its sizes. */
function readRange(
  raw: RawMeasure,
  lessons: readonly RawValue[],
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
    const wished = step ? inEdition(step, edition, grid) : mark;
    const own = lessons.map((one) => statedIn(one, edition, grid) ?? min);
    // A slider that starts at the least must be able to stand at the lesson's own value.
    const missed = own.find((lesson) => !isOnStep(lesson, { min, step: wished }));
    const reaches = missed === undefined;
    if (!reaches && edition === home && step) {
      const [least, value] = [min, missed].map((mm) => formatLength(mm, edition, { grid }));
      const message = `Steps from ${least} never come to the lesson’s ${value}. The slider goes mark by mark instead.`;
      findings.push({ severity: 'note', place: [...place, 'step'], code: 'step-misses', message });
    }
    for (const [i, lesson] of own.entries())
      warnOutside(lesson, [min, max], (mm) => formatLength(mm, edition, { grid }), lessons[i], at, findings);
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

function readCountRange(
  raw: RawMeasure,
  place: Place,
  reader: Reader,
  bySize: CompiledMeasure['bySize'],
): CompiledMeasure['range'] {
  const ends = Array.isArray(raw.between) ? raw.between.map(Number) : [];
  const [min, max] = ends;
  if (min === undefined || max === undefined || !ends.every((end) => Number.isInteger(end)) || min >= max) {
    const message = 'A count goes from one whole number to a larger one: [4, 6].';
    reader.findings.push({ severity: 'error', place: [...place, 'between'], code: 'range-empty', message });
    return undefined;
  }
  const at = [...place, 'between'];
  if (!bySize) warnOutside(Number(raw.count), [min, max], String, undefined, at, reader.findings);
  for (const own of bySize?.values() ?? [])
    warnOutside(plainNumber(own.text) ?? min, [min, max], String, own, at, reader.findings);
  const range = { min, max, step: 1 };
  return { inch: range, metric: range };
}

function readNumberRange(
  raw: RawMeasure,
  place: Place,
  reader: Reader,
  bySize: CompiledMeasure['bySize'],
): CompiledMeasure['range'] {
  const refuse = (at: string, code: string, message: string) =>
    void reader.findings.push({ severity: 'error', place: [...place, at], code, message });
  const [min, max] = Array.isArray(raw.between) ? raw.between.map(plainNumber) : [];
  if (min === undefined || max === undefined || min < 0 || min >= max) {
    return refuse('between', 'range-empty', 'A number goes from one plain number to a larger one: [1.2, 2.5].');
  }
  const step = raw.step === undefined ? 0.1 : typeof raw.step === 'object' ? undefined : plainNumber(raw.step);
  if (step === undefined || step <= 0) {
    return refuse('step', 'no-step', 'The step of a plain number is a plain number above zero, such as 0.1.');
  }
  const lesson = plainNumber(raw.number!);
  if (lesson === undefined) {
    return refuse('between', 'range-of-formula', 'A learner can choose a number that is written out, such as 1.5.');
  }
  const say = (value: number) => formatNumber(value);
  const lessons = bySize ? [...bySize.values()].map(({ text }) => plainNumber(text) ?? min) : [lesson];
  const missed = [max, ...lessons].find((value) => !isOnStep(value, { min, step }));
  if (missed !== undefined) {
    return refuse('step', 'step-misses', `Steps of ${say(step)} from ${say(min)} never come to ${say(missed)}.`);
  }
  const sizes = [...(bySize?.values() ?? [])];
  for (const [i, own] of lessons.entries())
    warnOutside(own, [min, max], say, sizes[i], [...place, 'between'], reader.findings);
  const range = { min, max, step };
  return { inch: range, metric: range };
}

/** The lesson's own value should be one that its slider can show; a size that it cannot show could never be chosen. */
function warnOutside(
  lesson: number,
  [min, max]: readonly [number, number],
  say: (value: number) => string,
  rawValue: RawValue | undefined,
  place: Place,
  findings: Diagnostic[],
): void {
  if (!(lesson < min - 1e-6 || lesson > max + 1e-6)) return;
  if (rawValue?.place[0] === 'sizes') {
    const [, , size] = rawValue.place;
    const message = `Size ${quote(String(size))} has ${say(lesson)}, which lies outside ${say(min)} to ${say(max)}.`;
    const fix = 'Widen the range of the measure, or correct the size.';
    findings.push({ severity: 'error', place: rawValue.place, code: 'size-out-of-range', message, fix });
    return;
  }
  const message = `The lesson’s own ${say(lesson)} lies outside ${say(min)} to ${say(max)}.`;
  findings.push({ severity: 'warning', place, code: 'lesson-out-of-range', message, fix: 'Widen the range.' });
}

const plainNumber = (raw: Scalar): number | undefined => readPlainNumber(String(raw));

function readRoles(file: ProjectFile, reader: Reader): Map<string, CompiledRole> {
  const roles = new Map<string, CompiledRole>();
  for (const role of distinct(Object.keys(file.materials ?? {}), ['materials'], 'material', reader.findings)) {
    const raw = file.materials![role]!;
    const place: Place = ['materials', role];
    if (typeof raw === 'string') {
      roles.set(role, {
        role,
        label: literal(role),
        use: raw,
        place,
        count: undefined,
        lining: undefined,
        note: undefined,
      });
    } else {
      const count = raw.count === undefined ? undefined : readNumber(raw.count, [...place, 'count'], reader);
      roles.set(role, {
        role,
        label: raw.label ?? literal(role),
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
