/** What a learner takes in or leaves out: options, each a yes or no, and choices, each one of several. */
import { literal } from '../formula/index.ts';
import { plainName } from '../measure/index.ts';
import { distinct, unknownThing } from './remarks.ts';
import { readNumber, readValue } from './raw-value.ts';
import type { CompiledMeasure, CompiledRole } from './compile.ts';
import type { Place } from '../measure/index.ts';
import type { ProjectFile } from './schema.ts';
import type { Raw, RawValue, Reader } from './raw-value.ts';

/** An option, or one of a choice. `name` is what steps call it, no two alike. */
export type CompiledFeature = {
  name: string;
  label: string;
  default: boolean;
  note: string | undefined;
  /** The choice that it is one of, and its name there. */
  of: { choice: string; one: string } | undefined;
  adds: ReadonlySet<string>;
  drops: ReadonlySet<string>;
  measures: ReadonlyMap<string, RawValue>;
  /** Roles that another material plays with it. */
  materials: ReadonlyMap<string, Pick<CompiledRole, 'use' | 'place'> & { label: string | undefined }>;
};

/** One of several; `of` by the name of each, in the file’s order. */
export type CompiledChoice = {
  name: string;
  label: string;
  note: string | undefined;
  default: string;
  of: ReadonlyMap<string, CompiledFeature>;
};

type RawFeature = {
  label?: string | undefined;
  note?: string | undefined;
  adds?: string[] | undefined;
  drops?: string[] | undefined;
  measures?: Record<string, Raw> | undefined;
  materials?: Record<string, string | { use: string; label?: string | undefined }> | undefined;
};

/** What a feature may change: names as the file has them. */
type Things = {
  measures: ReadonlyMap<string, CompiledMeasure>;
  pieces: readonly string[];
  roles: readonly string[];
  reader: Reader;
};

const find = (name: string, among: Iterable<string>): string | undefined => {
  for (const one of among) if (plainName(one) === plainName(name)) return one;
  return undefined;
};

/** Reads options and choices. What steps name must be one thing: an option and one of a choice never share a name. */
export function readFeatures(
  file: ProjectFile,
  measures: ReadonlyMap<string, CompiledMeasure>,
  pieces: readonly string[],
  roles: readonly string[],
  reader: Reader,
): { features: Map<string, CompiledFeature>; choices: Map<string, CompiledChoice> } {
  const { findings } = reader;
  const things = { measures, pieces, roles, reader };
  const features = new Map<string, CompiledFeature>();
  const choices = new Map<string, CompiledChoice>();
  for (const name of distinct(Object.keys(file.options ?? {}), ['options'], 'option', findings)) {
    const raw = file.options![name]!;
    features.set(name, { ...readFeature(name, raw, ['options', name], things), default: raw.default ?? false });
  }
  const shared = namesOfSeveral(file);
  for (const name of distinct(Object.keys(file.choices ?? {}), ['choices'], 'choice', findings)) {
    const raw = file.choices![name]!;
    const place: Place = ['choices', name];
    if (find(name, features.keys()) !== undefined) continue;
    const names = distinct(Object.keys(raw['one of']), [...place, 'one of'], 'one', findings);
    if (names.length === 0) continue;
    const asked = raw.default === undefined ? undefined : find(raw.default, names);
    const chosen = asked ?? names[0]!;
    const of = new Map<string, CompiledFeature>();
    for (const one of names) {
      // Two choices may both have a “plain”; steps then call each by its choice, too.
      const called = shared.has(plainName(one)) ? `${name} ${one}` : one;
      const read = readFeature(called, raw['one of'][one] ?? {}, [...place, 'one of', one], things);
      const label = raw['one of'][one]?.label ?? literal(one);
      const feature = { ...read, label, default: one === chosen, of: { choice: name, one } };
      of.set(one, feature);
      features.set(called, feature);
    }
    choices.set(name, { name, label: raw.label ?? literal(name), note: raw.note, default: chosen, of });
  }
  return { features, choices };
}

/** The names of options and of ones of choices that more than one has. */
function namesOfSeveral({ options, choices }: ProjectFile): Set<string> {
  const all = [
    ...Object.keys(options ?? {}),
    ...Object.values(choices ?? {}).flatMap((choice) => Object.keys(choice['one of'])),
  ].map(plainName);
  return new Set(all.filter((name, i) => all.indexOf(name) !== i));
}

function readFeature(name: string, raw: RawFeature, place: Place, things: Things): CompiledFeature {
  const { measures, pieces, roles, reader } = things;
  const all = [...pieces, ...roles];
  const named = (key: 'adds' | 'drops') => {
    const found = new Set<string>();
    for (const [i, thing] of (raw[key] ?? []).entries()) {
      const one = find(thing, all);
      if (one !== undefined) found.add(one);
      else reader.findings.push(unknownThing('piece or material', thing, all, [...place, key, i]));
    }
    return found;
  };
  const changes = new Map<string, RawValue>();
  for (const [measure, value] of Object.entries(raw.measures ?? {})) {
    const at: Place = [...place, 'measures', measure];
    const one = find(measure, measures.keys());
    if (one === undefined) {
      reader.findings.push(unknownThing('measure', measure, [...measures.keys()], at));
      continue;
    }
    const { kind } = measures.get(one)!;
    const isPlain = (kind === 'count' || kind === 'number') && typeof value !== 'object';
    const rawValue = isPlain ? readNumber(value, at, reader) : readValue(value, at, reader);
    if (rawValue) changes.set(one, rawValue);
  }
  const swaps = new Map<string, { use: string; label: string | undefined; place: Place }>();
  for (const [role, by] of Object.entries(raw.materials ?? {})) {
    const at: Place = [...place, 'materials', role];
    const one = find(role, roles);
    if (one === undefined) reader.findings.push(unknownThing('material', role, roles, at));
    else if (typeof by === 'string') swaps.set(one, { use: by, label: undefined, place: at });
    else swaps.set(one, { ...by, label: by.label, place: [...at, 'use'] });
  }
  return {
    name,
    label: raw.label ?? literal(name),
    default: false,
    note: raw.note,
    of: undefined,
    adds: named('adds'),
    drops: named('drops'),
    measures: changes,
    materials: swaps,
  };
}

/** What a piece, a material or a step hangs on. */
export type Condition = { when: readonly string[]; unless: readonly string[] };
export type Conditions = { pieces: ReadonlyMap<string, Condition>; materials: ReadonlyMap<string, Condition> };

/** Reads with which features pieces and materials are there. */
export function readConditions(file: ProjectFile): Conditions {
  const read = (group: 'pieces' | 'materials') =>
    new Map(
      Object.entries<unknown>(file[group] ?? {}).flatMap(([name, raw]): [string, Condition][] => {
        const { when, unless } = typeof raw === 'object' ? (raw as Record<string, string | string[] | undefined>) : {};
        const isFree = when === undefined && unless === undefined;
        return isFree ? [] : [[name, { when: [when ?? []].flat(), unless: [unless ?? []].flat() }]];
      }),
    );
  return { pieces: read('pieces'), materials: read('materials') };
}

/** All that “when” may name: options, and each of a choice by itself or with its choice before it. */
export function calledNames(features: ReadonlyMap<string, CompiledFeature>): string[] {
  const names = [...features.values()].flatMap(({ name, of }) => [name, ...(of ? [`${of.choice} ${of.one}`] : [])]);
  return [...new Set(names)];
}

/**
 * What keeps something from being there: the first name of its condition that does not hold. Of several ones of one choice
 * under `when`, one is enough, since no two of them are ever chosen together.
 */
export function hindrance(
  { when, unless }: Condition,
  features: ReadonlyMap<string, CompiledFeature>,
  on: ReadonlySet<string>,
): string | undefined {
  const featureOf = (name: string) =>
    [...features.values()].find(
      (one) =>
        plainName(one.name) === plainName(name) ||
        (one.of && plainName(`${one.of.choice} ${one.of.one}`) === plainName(name)),
    );
  const isOn = (name: string) => on.has(featureOf(name)?.name ?? name);
  const choiceOf = (name: string) => featureOf(name)?.of?.choice;
  const missing = when.find((name) => {
    const choice = choiceOf(name);
    const alike = choice === undefined ? [name] : when.filter((other) => choiceOf(other) === choice);
    return !alike.some(isOn);
  });
  return missing ?? unless.find(isOn);
}
