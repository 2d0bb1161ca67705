/** What an author wrote of sizes, choices and the finished size, and cannot mean. Apart from reading the file, which lessons do. */
import { compiled, type Compiled } from './compile.ts';
import { calledNames, type CompiledChoice } from './features.ts';
import { formatLength, formatNumber, listed, plainName, quote, singleBlanks } from '../measure/index.ts';
import { differs, isFormula, isPlain, ownValues, statedIn, type CompiledSizes } from './size-table.ts';
import { promisedIn } from './finished.ts';
import { readNumber, readValue, type RawValue, type Reader } from './raw-value.ts';
import { unknownThing } from './remarks.ts';
import type { Diagnostic, Edition, Grid, Place } from '../measure/index.ts';
import type { Pattern } from './pattern.ts';
import type { ProjectFile } from './schema.ts';

type Refuse = (place: Place, code: string, message: string, fix?: string) => void;

const find = (name: string, among: Iterable<string>): string | undefined => {
  for (const one of among) if (plainName(one) === plainName(name)) return one;
  return undefined;
};

/** The slips in a project’s sizes, choices, conditions and finished size, each at its place in the file. */
export function checkWritten(pattern: Pattern): Diagnostic[] {
  const project = compiled(pattern.origin.file);
  const findings: Diagnostic[] = [];
  const refuse: Refuse = (place, code, message, fix) =>
    findings.push({ severity: 'error', place, code, message, ...(fix !== undefined && { fix }) });
  const reader: Reader = { home: project.home, names: project.names, findings };
  checkSizeTable(project, reader, refuse);
  checkChoices(project, findings, refuse);
  checkConditions(project, findings);
  if (project.file.finished) checkFinished(project.file.finished, pattern, refuse);
  checkDarts(project.file, refuse);
  checkShapes(project.file, refuse);
  return findings;
}

/** What a piece's way to its size has no place for. */
function checkShapes({ pieces }: ProjectFile, refuse: Refuse): void {
  for (const [name, piece] of Object.entries(pieces)) {
    if (piece['on fold'] !== undefined && piece.outline === undefined) {
      const fix = 'Give the piece its whole size, or an outline of one half.';
      refuse(['pieces', name, 'on fold'], 'fold-of-whole', 'Only an outline lies on the fold here.', fix);
    }
    const way = (['circle', 'half circle'] as const).find((one) => piece[one] !== undefined);
    if (way && piece.corners !== undefined)
      refuse(['pieces', name, 'corners'], 'corners-of-circle', `A ${way} has no corners to shape.`);
    if (!piece.mirrored) continue;
    if (piece.like === undefined) {
      const fix = 'Write “like” with the name of that piece, and take its size and its allowances out here.';
      refuse(
        ['pieces', name, 'mirrored'],
        'mirrored-of-nothing',
        'A mirror image needs the piece that it mirrors.',
        fix,
      );
    } else if (piece.inset !== undefined || piece.allowance !== undefined) {
      const message = 'A mirror image takes all from the piece it is like: its size and its allowances.';
      const fix = 'Write “like: left front, mirrored: true”, and what is smaller as a piece of its own.';
      refuse(['pieces', name, 'mirrored'], 'mirrored-of-nothing', message, fix);
    }
  }
}

/** Darts that are to be those of another piece, which has none to give. */
function checkDarts({ pieces }: ProjectFile, refuse: Refuse): void {
  for (const [name, { darts, like: asked, inset }] of Object.entries(pieces)) {
    if (darts !== 'the same') continue;
    const like = find(asked ?? '', Object.keys(pieces));
    if (like !== undefined && inset === undefined && Array.isArray(pieces[like]!.darts)) continue;
    const message =
      like === undefined
        ? 'It is like no other piece whose darts it could have.'
        : inset === undefined
          ? `${quote(like)} has no darts that are written there.`
          : `It is cut smaller than ${quote(like)}, and its darts do not lie where they lie there.`;
    const fix = 'Write its own: darts: [{ on: top, at: middle, width: 3/4, length: 3 }].';
    refuse(['pieces', name, 'darts'], 'darts-of-none', message, fix);
  }
}

function checkSizeTable(project: Compiled, reader: Reader, refuse: Refuse): void {
  const { file, grid, sizes } = project;
  if (!file.sizes) return;
  const { findings } = reader;
  const { of, default: asked } = file.sizes;
  const names = Object.keys(of);
  const measures = Object.keys(file.measures);
  if (names.length < 2) {
    const message = names.length === 0 ? 'There are no sizes here.' : `${quote(names[0]!)} is the only size.`;
    refuse(['sizes', 'of'], 'one-size', message, 'Add another size, or write the values under measures.');
  }
  if (!sizes) return;
  const plain = new Map<string, string>();
  const isWritten = new Map<string, Set<string>>();
  for (const size of names) {
    const before = plain.get(plainName(size));
    const fix = 'Give one of them another name.';
    if (before !== undefined)
      refuse(['sizes', 'of', size], 'name-twice', `There are two sizes called ${quote(before)}.`, fix);
    else plain.set(plainName(size), size);
    for (const [name, raw] of Object.entries(of[size]!)) {
      const place: Place = ['sizes', 'of', size, name];
      const measure = find(name, measures);
      if (measure === undefined) {
        const unknown = unknownThing('measure', name, measures.map(singleBlanks), place);
        findings.push({ fix: `Add it under measures: ${name}: { label: … }.`, ...unknown });
        continue;
      }
      const key = singleBlanks(measure);
      (isWritten.get(key) ?? isWritten.set(key, new Set()).get(key)!).add(size);
      checkCell(file.measures[measure]!, key, raw, place, reader, refuse);
    }
  }
  for (const [measure, written] of isWritten) {
    const lacking = names.filter((size) => !written.has(size));
    if (lacking.length === 0) continue;
    const message = `${listed(lacking.map(quote))} ${lacking.length === 1 ? 'has' : 'have'} no ${quote(measure)}, but ${listed([...written].map(quote))} ${written.size === 1 ? 'has' : 'have'} one.`;
    refuse(['sizes', 'of', lacking[0]!], 'size-lacks-measure', message, `Write ${quote(measure)} there, too.`);
  }
  reportAlike(names, sizes.values, grid, refuse);
  noteOrder(names, sizes.values, reader.home, grid, findings);
  if (asked !== undefined && find(String(asked), names) === undefined) {
    findings.push(unknownThing('size', String(asked), names, ['sizes', 'default']));
  }
  for (const [name, value] of ownValues(file, sizes.values, reader)) {
    const given = sizes.values.get(name)?.get(sizes.default);
    if (!given || !differs(value, given, reader, grid)) continue;
    const say = (rawValue: RawValue) => {
      const amount = statedIn(rawValue, reader.home, grid)!;
      return rawValue.kind === 'length' ? formatLength(amount, reader.home, { grid }) : formatNumber(amount);
    };
    const message = `${quote(name)} says ${say(value)} here, but the lesson is in size ${quote(sizes.default)}, which gives ${say(given)}.`;
    const fix = 'Leave the value out here, or name the lesson’s size: “default” under sizes.';
    const place: Place = ['measures', find(name, measures)!];
    findings.push({ severity: 'warning', place, code: 'size-hides-value', message, fix });
  }
}

type Cell = NonNullable<ProjectFile['sizes']>['of'][string][string];

/** A size gives what a ruler or a count gives. */
function checkCell(
  measure: ProjectFile['measures'][string],
  name: string,
  raw: Cell,
  place: Place,
  reader: Reader,
  refuse: Refuse,
): void {
  const quiet = { ...reader, findings: [] };
  if (isFormula(measure, reader)) {
    const message = `${quote(name)} follows from its formula, so a size cannot give it.`;
    const fix = 'Give the sizes what the formula rests on, or give it a value in place of the formula.';
    return refuse(place, 'size-of-formula', message, fix);
  }
  if (isPlain(measure)) {
    if (typeof raw === 'object') {
      const message = `${quote(name)} is a plain number, which is the same in both editions.`;
      return refuse(place, 'not-a-length', message, 'Write the number by itself: 5.');
    }
    const read = readNumber(raw, place, quiet);
    if (read?.kind !== 'formula' || read.formula.tree.kind === 'number') return;
    const message = `A size gives a plain number, not the formula ${quote(String(raw))}.`;
    return refuse(place, 'no-formula-here', message, 'Write the number: 5.');
  }
  const read = readValue(raw, place, quiet);
  if (read?.kind !== 'formula') return;
  const message = `A size gives a plain length, not the formula ${quote(read.text)}.`;
  const fix = 'Write the length of this size: 28, or { in: 28, mm: 710 }. What follows from it goes under measures.';
  refuse(place, 'no-formula-here', message, fix);
}

/** Sizes between which nobody could choose, since all they give is the same, be it in one edition alone. */
function reportAlike(names: readonly string[], values: CompiledSizes['values'], grid: Grid, refuse: Refuse): void {
  const rows = (edition: Edition) => (size: string) =>
    JSON.stringify(
      [...values.values()].map((by) => by.get(size) && statedIn(by.get(size)!, edition, grid)?.toFixed(3)),
    );
  if (values.size === 0) return;
  const told = new Set<string>();
  for (const edition of ['inch', 'metric'] as const) {
    const first = new Map<string, string>();
    const other = edition === 'inch' ? 'metric' : 'inch';
    for (const size of names) {
      const row = rows(edition)(size);
      const before = first.get(row);
      if (before === undefined) first.set(row, size);
      else if (!told.has(size)) {
        told.add(size);
        const inBoth = rows(other)(size) === rows(other)(before);
        const message = `${quote(before)} and ${quote(size)} are the same in every measure${inBoth ? '' : ` in the ${edition} edition`}.`;
        refuse(['sizes', 'of', size], 'sizes-alike', message, 'Give one of them other values, or take it out.');
      }
    }
  }
}

/** A measure that goes up from size to size but for one of them is most often a slip. */
function noteOrder(
  names: readonly string[],
  values: CompiledSizes['values'],
  home: Edition,
  grid: Grid,
  findings: Diagnostic[],
): void {
  if (names.length < 3) return;
  for (const [measure, by] of values) {
    const row = names.map((size) => by.get(size) && statedIn(by.get(size)!, home, grid));
    if (row.some((value) => value === undefined)) continue;
    const all = row as number[];
    const breaks = (sign: number) => all.flatMap((value, i) => (i > 0 && sign * (value - all[i - 1]!) < 0 ? [i] : []));
    const [falls, rises] = [breaks(1), breaks(-1)];
    const odd = rises.length > falls.length ? falls : falls.length > rises.length ? rises : [];
    if (odd.length !== 1) continue;
    const [before, size] = [names[odd[0]! - 1]!, names[odd[0]!]!];
    const message = `${quote(measure)} goes ${odd === falls ? 'up' : 'down'} from size to size, but not from ${quote(before)} to ${quote(size)}.`;
    findings.push({
      severity: 'note',
      place: ['sizes', 'of', size, measure],
      code: 'sizes-out-of-order',
      message,
      fix: 'Check the two values.',
    });
  }
}

function checkChoices({ file, features, choices, measures }: Compiled, findings: Diagnostic[], refuse: Refuse): void {
  for (const [name, raw] of Object.entries(file.choices ?? {})) {
    const place: Place = ['choices', name];
    const names = Object.keys(raw['one of']);
    if (find(name, Object.keys(file.options ?? {})) !== undefined) {
      refuse(place, 'name-twice', `${quote(name)} is an option, too.`, 'Give one of them another name.');
    }
    if (names.length < 2) {
      const message = `${quote(name)} has ${names.length === 0 ? 'nothing to choose from' : `only ${quote(names[0]!)} to choose`}.`;
      refuse([...place, 'one of'], 'one-choice', message, 'Add another one, or make it an option: a plain yes or no.');
    }
    if (raw.default !== undefined && find(raw.default, names) === undefined) {
      const finding = unknownThing('one', raw.default, names, [...place, 'default']);
      findings.push({ ...finding, message: `${quote(name)} has no ${quote(raw.default)}.` });
    }
  }
  for (const feature of features.values()) {
    for (const [name, rawValue] of feature.measures) {
      if (!measures.get(name)?.bySize || rawValue.kind !== 'length') continue;
      const message = `This gives ${quote(name)} one length, whatever size is chosen.`;
      const fix = 'Give the sizes a measure of their own, and let this one change another that is added to it.';
      const { place } = rawValue;
      findings.push({ severity: 'warning', place, code: 'feature-hides-size', message, fix });
    }
  }
  reportNoChange(choices, calledNames(features), file, findings);
}

/** Two of a choice that change nothing, and that nothing hangs on, are one. */
function reportNoChange(
  choices: ReadonlyMap<string, CompiledChoice>,
  known: readonly string[],
  file: ProjectFile,
  findings: Diagnostic[],
): void {
  const hanging = [...(file.steps ?? []), ...Object.values(file.pieces), ...Object.values(file.materials ?? {})];
  const named = hanging.flatMap((one) => {
    const { when, unless } = typeof one === 'object' ? (one as Record<string, string | string[] | undefined>) : {};
    return [when, unless].flat().flatMap((name) => (name === undefined ? [] : [plainName(String(name))]));
  });
  // A name that is misspelt may mean any of them, and is told by itself.
  if (named.some((name) => find(name, known) === undefined)) return;
  for (const { name: choice, of } of choices.values()) {
    const idle = [...of].filter(([one, feature]) => {
      const { adds, drops, measures, materials } = file.choices![choice]!['one of'][one] ?? {};
      const isNamed = [feature.name, `${choice} ${one}`].some((name) => named.includes(plainName(name)));
      return !isNamed && [adds, drops, measures, materials].every((change) => change === undefined);
    });
    if (idle.length < 2) continue;
    const message = `${listed(idle.map(([one]) => quote(one)))} make no difference: nothing hangs on them.`;
    const fix = 'Say what each of them adds, drops or changes, or name it by “when” in a step.';
    const place: Place = ['choices', choice, 'one of', idle[1]![0]];
    findings.push({ severity: 'warning', place, code: 'choice-changes-nothing', message, fix });
  }
}

/** Pieces and materials hang on features that there are. */
function checkConditions({ file, features, choices }: Compiled, findings: Diagnostic[]): void {
  const known = calledNames(features);
  for (const group of ['pieces', 'materials'] as const) {
    for (const [name, raw] of Object.entries<unknown>(file[group] ?? {})) {
      const { when, unless } = typeof raw === 'object' ? (raw as Record<string, string | string[] | undefined>) : {};
      for (const [key, names] of Object.entries({ when, unless })) {
        for (const [i, one] of [names ?? []].flat().entries()) {
          const place: Place = [group, name, key, ...(Array.isArray(names) ? [i] : [])];
          if (find(one, known) === undefined) findings.push(unknownFeature(one, known, [...choices.values()], place));
        }
      }
    }
  }
}

/** A name that no option and none of a choice has. */
export function unknownFeature(
  name: string,
  known: readonly string[],
  choices: readonly CompiledChoice[],
  place: Place,
): Diagnostic {
  const choice = choices.find((one) => plainName(one.name) === plainName(name));
  const owners = choices.filter(({ of }) => find(name, of.keys()) !== undefined);
  const finding = { ...unknownThing(choices.length > 0 ? 'option or choice' : 'option', name, known, place) };
  if (choice) {
    finding.message = `${quote(name)} is a choice: one of it is always there.`;
    finding.fix = `Name the one that is meant, of ${listed([...choice.of.keys()].map(quote))}.`;
  } else if (owners.length > 1) {
    finding.message = `${listed(owners.map((one) => quote(one.name)))} both have ${quote(name)}.`;
    finding.fix = `Say which: ${quote(`${owners[0]!.name} ${name}`)}.`;
  }
  return finding;
}

function checkFinished(
  raw: NonNullable<ProjectFile['finished']>,
  { finished, edition, grid }: Pattern,
  refuse: Refuse,
): void {
  const flat = (['width', 'height'] as const).filter((side) => raw[side] !== undefined);
  if (raw.closed && flat.length > 0) {
    const message = 'The size as the last step leaves it stands here twice: by itself and under closed.';
    refuse(['finished', flat[0]!], 'size-twice', message, 'Keep what stands under closed, and take out the other.');
  } else if (!raw.closed && (flat.length === 1 || (flat.length === 0 && !raw.open))) {
    const missing = flat.length === 1 ? (flat[0] === 'width' ? 'height' : 'width') : 'width and height';
    refuse(['finished'], 'no-value', `A finished size needs its ${missing}, too.`, 'Write { width: 6, height: 8 }.');
  }
  const { place } = promisedIn(raw);
  for (const [size, at] of [
    [finished, place],
    [finished?.open, ['finished', 'open']],
  ] as const) {
    if (size?.within === undefined) continue;
    const least = Math.min(size.width, size.height);
    if (size.within >= 0 && size.within < least / 2) continue;
    const say = (mm: number) => formatLength(mm, edition, { grid });
    const message = `A size of ${say(least)} that may be ${say(size.within)} off says nothing.`;
    refuse([...at, 'within'], 'too-large', message, `Write less than ${quote(say(least / 2))}.`);
  }
}
