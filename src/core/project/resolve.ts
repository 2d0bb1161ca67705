/** From a project file and a learner's choices to every number of the project, in one edition. */
import { closest, isOnGrid, listed, quote, plainName } from '../measure/index.ts';
import { bounds } from '../geometry/index.ts';
import { choiceKind, formatChosen, isOnStep } from './chosen.ts';
import { checkHold } from './holds.ts';
import { PatternCache } from './cache.ts';
import { finishedOf } from './finished.ts';
import { hindrance } from './features.ts';
import { compiled, type Compiled, type CompiledMeasure } from './compile.ts';
import { unknownThing } from './remarks.ts';
import { drawDarts } from './darts.ts';
import { drawFolds, drawNotches, sizePlace } from './lines.ts';
import { LARGEST, Evaluator, pleatedSize, SMALLEST, type Choices } from './evaluator.ts';
import { namedParts } from './names.ts';
import { materialOf, type Materials } from './materials.ts';
import type {
  Adjustable,
  Choice,
  Cutting,
  HoldCheck,
  Making,
  Measure,
  OptionChoice,
  Pattern,
  Piece,
  Role,
  Sizes,
} from './pattern.ts';
import type { CompiledChoice } from './features.ts';
import type { CompiledSizes } from './size-table.ts';
import type { RawValue } from './raw-value.ts';
import { workTexts } from './texts.ts';
import type { CompiledPiece } from './shapes.ts';
import type { Diagnostic, Edition } from '../measure/index.ts';
import type { ProjectFile } from './schema.ts';

export type Settings = {
  /** The edition to work in; the file’s home edition if left out. */
  edition?: Edition;
  /** A learner’s own measures: mm, or a whole number for a count. Of a measure not named the lesson’s value holds. */
  values?: Readonly<Record<string, number>>;
  /** Which options are on, and which one of each choice: { flap: false, outside: 'plain' }. Of one not named the file’s default holds. */
  options?: Readonly<Record<string, boolean | string>>;
  /** One of the sizes of the file; its default if left out. */
  size?: string | undefined;
  /** The shelf of materials.yaml. Without it roles keep their names and nothing is known of the materials. */
  materials?: Materials | undefined;
};

/**
 * Works out a project. Never throws: what could not be computed is left out of the pattern and named in its findings,
 * each with its place in the file. A learner’s value out of range or between two marks is refused with a finding, and
 * the lesson’s value stays.
 *
 * The same file object is read once and resolved many times, so keep it.
 *
 * @example
 * resolveProject(file).pieces['pocket strip'].size // => { width: 127, height: 746.125 }
 * resolveProject(file, { edition: 'metric', values: { 'card width': 120 } }).measures['panel width'].value // => 138
 */
export function resolveProject(file: ProjectFile, settings: Settings = {}): Pattern {
  const project = compiled(file);
  const edition = settings.edition ?? project.home;
  const asked: Diagnostic[] = [];
  const on = chosenFeatures(project, settings.options ?? {}, asked);
  const size = chosenSize(project, settings.size, asked);
  const lessons = new Evaluator(project, edition, { values: new Map(), on, size });
  const choices: Choices = { values: chosenValues(project, settings.values ?? {}, edition, lessons, asked), on, size };
  const evaluator = new Evaluator(project, edition, choices);

  const wanted = wantedBy(project, on);
  const measures = evaluateMeasures(evaluator, lessons);
  const pieces = evaluatePieces(evaluator, wanted, measures);
  const holds = checkHolds(evaluator, pieces);
  const materials = findMaterials(evaluator, wanted, on, settings.materials);
  const making = findMaking(evaluator, on, wanted);
  const finished = finishedOf(project.finished, evaluator);
  const pattern: Pattern = {
    title: file.title,
    ...(file.summary !== undefined && { summary: file.summary }),
    edition,
    home: project.home,
    grid: project.grid,
    measures: Object.fromEntries(measures),
    pieces,
    materials,
    options: Object.fromEntries(
      optionsOf(project).map(({ name, label, default: byDefault, note }): [string, OptionChoice] => [
        name,
        { label, on: on.has(name), default: byDefault, ...(note !== undefined && { note }) },
      ]),
    ),
    choices: Object.fromEntries([...project.choices.values()].map((choice) => [choice.name, choiceNow(choice, on)])),
    ...(project.sizes && size !== undefined && { sizes: sizesNow(project.sizes, size) }),
    holds,
    cutting: findCutting(evaluator),
    ...(making && { making }),
    ...(finished && { finished }),
    findings: [...project.findings, ...asked, ...evaluator.findings],
    origin: { file, edition },
    cache: new PatternCache(),
  };
  workTexts(pattern);
  return pattern;
}

const optionsOf = ({ features }: Compiled) => [...features.values()].filter(({ of }) => of === undefined);

function choiceNow({ label, default: byDefault, note, of }: CompiledChoice, on: ReadonlySet<string>): Choice {
  const chosen = [...of].find(([, { name }]) => on.has(name))![0];
  return {
    label,
    chosen,
    default: byDefault,
    ...(note !== undefined && { note }),
    of: Object.fromEntries(
      [...of].map(([name, one]) => [name, { label: one.label, ...(one.note !== undefined && { note: one.note }) }]),
    ),
  };
}

const sizesNow = ({ label, default: byDefault, note, names, values }: CompiledSizes, chosen: string): Sizes => ({
  label,
  chosen,
  default: byDefault,
  ...(note !== undefined && { note }),
  of: [...names],
  measures: [...values.keys()],
});

const named = (name: string, among: readonly string[]): string | undefined =>
  among.find((one) => plainName(one) === plainName(name));

/** The features that are on: options as asked, and one of each choice. What is asked and not there is said. */
function chosenFeatures(
  project: Compiled,
  asked: Readonly<Record<string, boolean | string>>,
  findings: Diagnostic[],
): Set<string> {
  const options = optionsOf(project).map(({ name }) => name);
  const choices = [...project.choices.keys()];
  const on = new Set([...project.features.values()].flatMap((one) => (one.default ? [one.name] : [])));
  const refuse = (message: string, fix: string) =>
    findings.push({ severity: 'warning', place: ['options'], code: 'option-unknown', message, fix });
  for (const [name, wish] of Object.entries(asked)) {
    const [option, key] = [named(name, options), named(name, choices)];
    if (key !== undefined) {
      const { of } = project.choices.get(key)!;
      const one = typeof wish === 'string' ? named(wish, [...of.keys()]) : undefined;
      if (one !== undefined) {
        for (const { name: other } of of.values()) on.delete(other);
        on.add(of.get(one)!.name);
      } else if (typeof wish === 'string') {
        const finding = unknownThing('one', wish, [...of.keys()], ['choices', key]);
        findings.push({ ...finding, severity: 'warning', message: `${quote(key)} has no ${quote(wish)}.` });
      } else
        refuse(`${quote(key)} is one of several, and no yes or no.`, `Name one: ${listed([...of.keys()].map(quote))}.`);
    } else if (option === undefined) {
      const what = choices.length > 0 ? 'option or choice' : 'option';
      findings.push({ ...unknownThing(what, name, [...options, ...choices], ['options']), severity: 'warning' });
    } else if (typeof wish !== 'boolean')
      refuse(`${quote(option)} is a yes or no, not ${quote(wish)}.`, 'Write true or false.');
    else if (wish) on.add(option);
    else on.delete(option);
  }
  return on;
}

/** The size to work in; of one that is not there the default, with a sentence. */
function chosenSize({ sizes }: Compiled, asked: string | undefined, findings: Diagnostic[]): string | undefined {
  if (asked === undefined) return sizes?.default;
  const found = sizes && named(asked, sizes.names);
  if (found === undefined) {
    findings.push({ ...unknownThing('size', asked, sizes?.names ?? [], ['sizes']), severity: 'warning' });
  }
  return found ?? sizes?.default;
}

/** The learner’s values that can be used. The others are refused, each with a sentence. */
function chosenValues(
  project: Compiled,
  asked: Readonly<Record<string, number>>,
  edition: Edition,
  lessons: Evaluator,
  findings: Diagnostic[],
): Map<string, number> {
  const chosen = new Map<string, number>();
  const adjustable = [...project.measures.values()].filter((measure) => measure.range);
  for (const [name, value] of Object.entries(asked)) {
    const refuse = (code: string, message: string, amount?: number) =>
      findings.push({
        severity: 'warning',
        place: ['values', name],
        code,
        message,
        ...(amount !== undefined && { amount }),
      });
    const measure = adjustable.find((one) => plainName(one.name) === plainName(name));
    if (!measure) {
      const meant = closest(
        name,
        adjustable.map((one) => one.name),
      );
      const exists = [...project.measures.keys()].some((one) => plainName(one) === plainName(name));
      const message = exists
        ? `${quote(name)} follows from the others here and cannot be changed.`
        : `There is no measure called ${quote(name)} to change.`;
      refuse('value-unknown', meant === undefined || exists ? message : `${message} Do you mean ${quote(meant)}?`);
      continue;
    }
    const fault = refusalOf(measure, value, project, edition, lessons);
    if (fault) refuse(fault.code, fault.message, fault.amount);
    else chosen.set(measure.name, value);
  }
  return chosen;
}

function refusalOf(
  measure: CompiledMeasure,
  value: number,
  { grid }: Compiled,
  edition: Edition,
  lessons: Evaluator,
): { code: string; message: string; amount?: number } | undefined {
  const { min, max, step } = measure.range![edition];
  const kind = choiceKind(measure);
  const say = (of: number) => formatChosen(of, kind, edition, { grid });
  const lesson = lessons.measure(measure)?.value;
  const stays = lesson === undefined ? '' : ` The lesson’s ${say(lesson)} stays.`;
  const label = quote(measure.label);
  if (!Number.isFinite(value)) return { code: 'value-not-a-number', message: `${label} needs a number.${stays}` };
  if (value < min - 1e-6 || value > max + 1e-6) {
    const amount = value < min ? min - value : value - max;
    return {
      code: 'value-out-of-range',
      message: `${label} goes from ${say(min)} to ${say(max)} here.${stays}`,
      amount,
    };
  }
  if (kind === 'number' && !isOnStep(value, { min, step })) {
    return { code: 'value-off-step', message: `${label} goes in steps of ${say(step)} from ${say(min)}.${stays}` };
  }
  if (kind === 'count' && !Number.isInteger(value)) {
    return { code: 'value-not-whole', message: `${label} is a whole number.${stays}` };
  }
  if (kind === 'length' && !isOnGrid(value, edition, grid)) {
    const marks = edition === 'inch' ? `1/${grid.inch} in` : `${grid.metric} mm`;
    return { code: 'value-off-grid', message: `${label} is measured in marks of ${marks}.${stays}` };
  }
  return undefined;
}

type Wanted = (name: string, group: 'pieces' | 'materials') => boolean;

/** Whether the features that are on want a piece or material. What none mentions is always wanted. */
function wantedBy(project: Compiled, on: ReadonlySet<string>): Wanted {
  const features = [...project.features.values()];
  return (name, group) => {
    const condition = project.conditions[group].get(name);
    if (condition && hindrance(condition, project.features, on) !== undefined) return false;
    const adders = features.filter((one) => one.adds.has(name));
    const added = adders.length === 0 || adders.some((one) => on.has(one.name));
    return added && !features.some((one) => on.has(one.name) && one.drops.has(name));
  };
}

function evaluateMeasures(evaluator: Evaluator, lessons: Evaluator): [string, Measure][] {
  const measures: [string, Measure][] = [];
  for (const measure of evaluator.compiled.measures.values()) {
    const { name, label, kind, note } = measure;
    const found = evaluator.measure(measure);
    if (!found) continue;
    const { value, dimension } = found;
    const made: Measure = { name, label, value, dimension, source: kind === 'formula' ? 'derived' : 'stated' };
    const rawValue = evaluator.rawValueOf(measure);
    if (kind === 'number') made.isRatio = true;
    if (kind !== 'count' && rawValue?.kind === 'formula') made.formula = rawValue.formula;
    const adjustable = adjustableOf(measure, evaluator.edition, lessons);
    if (adjustable) made.adjustable = adjustable;
    if (note !== undefined) made.note = note;
    measures.push([name, made]);
  }
  return measures;
}

/** Makes the pieces that are wanted, and adds the numbers that all pieces give to `measures`. */
function evaluatePieces(evaluator: Evaluator, wanted: Wanted, measures: [string, Measure][]): Record<string, Piece> {
  const pieces: [string, Piece][] = [];
  for (const piece of evaluator.compiled.pieces.values()) {
    const heard = evaluator.findings.length;
    const made = makePiece(evaluator, piece);
    measures.push(...partMeasures(evaluator, piece));
    // A piece that the options leave out still gives its numbers, but its faults do not matter now.
    if (!wanted(piece.name, 'pieces')) evaluator.forget(heard);
    else if (made) pieces.push([piece.name, made]);
  }
  return Object.fromEntries(pieces);
}

function adjustableOf(measure: CompiledMeasure, edition: Edition, lessons: Evaluator): Adjustable | undefined {
  const lesson = measure.range && lessons.measure(measure);
  return lesson && { kind: choiceKind(measure), ...measure.range![edition], lesson: lesson.value };
}

/** The numbers that a piece gives to formulas, as measures. */
function partMeasures(evaluator: Evaluator, piece: CompiledPiece): [string, Measure][] {
  const { compiled: project } = evaluator;
  const plan = evaluator.plan(piece);
  if (piece.pleats && !plan) return [];
  const measures: [string, Measure][] = [];
  for (const { part, name, label, spoken } of namedParts(
    piece.name,
    piece.label,
    piece.edgePleats ? 'along' : (plan?.pockets.length ?? 0),
    piece.edges,
  )) {
    const value = evaluator.part(piece.name, part);
    // A measure of the file that has taken this name hides it.
    if (value === undefined || project.measures.has(name)) continue;
    const isOfPleats = plan
      ? part.what !== 'width' && part.what !== 'finished width'
      : part.what === 'takeup' || part.what === 'pleat depth' || part.what === 'pleated edge';
    const source = isOfPleats ? 'pleats' : 'piece';
    measures.push([
      name,
      {
        name,
        label,
        spoken,
        value,
        dimension: 1,
        source,
        // Few are ever shown.
        get formula() {
          return evaluator.formula(piece, part);
        },
      },
    ]);
  }
  return measures;
}

function makePiece(evaluator: Evaluator, piece: CompiledPiece): Piece | undefined {
  const lines = evaluator.lines(piece);
  const count = piece.count ? evaluator.count(piece.count) : 1;
  if (!lines || count === undefined) return undefined;
  const { width, height } = bounds(lines.cut);
  const place = sizePlace(piece);
  const [longest, shortest] = [Math.max(width, height), Math.min(width, height)];
  if (longest > LARGEST) {
    const message = `${quote(piece.label)} is ${evaluator.say(longest)} long. That is more than 100 m, longer than a roll of cloth.`;
    evaluator.report({
      severity: 'error',
      place,
      code: 'too-large',
      message,
      fix: 'Check the unit.',
      amount: longest - LARGEST,
    });
    return undefined;
  }
  if (!(shortest >= SMALLEST)) {
    const message = `${quote(piece.label)} is only ${evaluator.say(shortest)} wide. Nobody can cut less than 1 mm.`;
    evaluator.report({
      severity: 'error',
      place,
      code: 'too-small',
      message,
      fix: 'Check the unit.',
      amount: SMALLEST - shortest,
    });
    return undefined;
  }
  const sewn = bounds(lines.stitch);
  const [pleats, edgePleats] = [evaluator.plan(piece), evaluator.along(piece)];
  if (piece.edgePleats && !edgePleats) return undefined;
  const { top = 0, bottom = 0 } = lines.allowance;
  const joinSeam = piece.joined && joinSeamOf(evaluator, piece, lines.allowance, width >= height);
  return {
    name: piece.name,
    label: piece.label,
    material: piece.role,
    count,
    outline: lines.stitch,
    cutOutline: lines.cut,
    corners: [...new Set(lines.stitch.map((edge) => edge.name))].filter((edge) => lines.replaced.has(edge)),
    allowance: lines.allowance,
    size: { width, height },
    sewn: edgePleats
      ? pleatedSize(sewn, edgePleats)
      : { width: sewn.width, height: pleats ? pleats.panelHeight - top - bottom : sewn.height },
    grain: piece.grain,
    nap: piece.nap,
    folds: drawFolds(evaluator, piece, { width, height }),
    notches: drawNotches(evaluator, piece, lines),
    darts: drawDarts(evaluator, piece, lines),
    ...(pleats && { pleats }),
    ...(edgePleats && { edgePleats }),
    ...(piece.shape?.kind === 'like' && { insetFrom: piece.shape.piece }),
    ...(lines.inset && { inset: lines.inset }),
    ...(piece.preCut && { preCut: piece.preCut }),
    ...(piece.joined && { joined: piece.joined }),
    ...(joinSeam !== undefined && { joinSeam }),
    ...(piece.note !== undefined && { note: piece.note }),
  };
}

/** What the joins of a strip take: their own seam, that of its short edges, or the measure called seam. */
function joinSeamOf(
  evaluator: Evaluator,
  { joinSeam }: CompiledPiece,
  { left = 0, right = 0, top = 0, bottom = 0 }: Record<string, number>,
  lying: boolean,
): number | undefined {
  if (joinSeam) return evaluator.length(joinSeam);
  const ends = lying ? Math.max(left, right) : Math.max(top, bottom);
  return ends > 0 ? ends : seamOf(evaluator);
}

/** The measure called seam, where it is a length. */
function seamOf(evaluator: Evaluator): number | undefined {
  const { measures } = evaluator.compiled;
  const name = [...measures.keys()].find((one) => plainName(one) === 'seam');
  const seam = name === undefined ? undefined : evaluator.measure(measures.get(name)!);
  return seam?.dimension === 1 ? seam.value : undefined;
}

function checkHolds(evaluator: Evaluator, pieces: Record<string, Piece>): HoldCheck[] {
  const { compiled: project, edition } = evaluator;
  return project.holds.flatMap((hold) => {
    const piece = Object.hasOwn(pieces, hold.piece) ? pieces[hold.piece] : undefined;
    const width = hold.own ? evaluator.length(hold.own.width) : hold.published!.width;
    const height = hold.own ? evaluator.length(hold.own.height) : hold.published!.height;
    const ease = hold.ease ? evaluator.length(hold.ease) : 0;
    const cover = hold.cover && evaluator.number(hold.cover);
    if (cover !== undefined && !(cover >= 0 && cover <= 1)) {
      const message = `A share from 0 to 1 belongs here, such as 2/3, not ${Number(cover.toFixed(3))}.`;
      evaluator.report({ severity: 'error', place: hold.cover!.place, code: 'not-a-share', message });
      return [];
    }
    if (!piece || width === undefined || height === undefined || ease === undefined) return [];
    const size = hold.turned ? { width: height, height: width } : { width, height };
    const { checks, findings } = checkHold(hold, piece, { size, ease, cover }, { edition, grid: project.grid });
    for (const finding of findings) evaluator.report(finding);
    return checks;
  });
}

function findMaterials(
  evaluator: Evaluator,
  wanted: Wanted,
  on: ReadonlySet<string>,
  shelf: Materials | undefined,
): Record<string, Role> {
  const { compiled: project, edition } = evaluator;
  const roles: [string, Role][] = [];
  for (const { role, count: rawValue, lining, note, ...own } of project.roles.values()) {
    if (!wanted(role, 'materials')) continue;
    const swaps = [...project.features.values()].filter(({ name, materials }) => on.has(name) && materials.has(role));
    const swap = swaps.at(-1);
    const { use, place, label = own.label } = swap?.materials.get(role) ?? own;
    const other = swaps.find(({ materials }) => materials.get(role)!.use !== use);
    if (swap && other) {
      const message = `${quote(other.name)} and ${quote(swap.name)} both put another material in the place of ${quote(role)}, and both are chosen: ${quote(swap.name)} holds.`;
      const fix = 'Choose one of the two.';
      evaluator.report({ severity: 'warning', place, code: 'swapped-twice', message, fix });
    }
    const material = shelf && materialOf(shelf, use, edition, project.grid);
    if (shelf && !material) evaluator.report(unknownThing('material', use, Object.keys(shelf), place));
    const count = rawValue && evaluator.count(rawValue);
    roles.push([
      role,
      {
        role,
        label,
        use,
        ...(count !== undefined && { count }),
        ...(material && { material }),
        ...((lining ?? material?.lining) && { lining: true as const }),
        ...(note !== undefined && { note }),
      },
    ]);
  }
  return Object.fromEntries(roles);
}

function findCutting(evaluator: Evaluator): Cutting {
  const { cutting, file } = evaluator.compiled;
  const amount = (rawValue: RawValue | undefined): number => (rawValue && evaluator.length(rawValue)) ?? 0;
  return {
    manner: file.cutting?.manner ?? 'straight cuts',
    gap: amount(cutting.gap),
    edge: amount(cutting.edge),
  };
}

/** What a domestic machine takes under its presser foot, in mm. Common practice, no source. */
const LIFTS = 5;

function findMaking(evaluator: Evaluator, on: ReadonlySet<string>, wanted: Wanted): Making | undefined {
  const { compiled: project } = evaluator;
  if ((project.file.steps ?? []).length === 0) return undefined;
  const rawValue = project.machine?.lifts;
  const lifts = rawValue && evaluator.length(rawValue);
  const seam = seamOf(evaluator);
  return {
    ...(seam !== undefined && { seam }),
    leftOut: findLeftOut(project, on, wanted),
    machine:
      lifts === undefined
        ? { lifts: LIFTS, source: 'common practice, no source' }
        : { lifts, source: project.machine!.source },
  };
}

/** The pieces that are not cut now, each with a feature that would bring it in or takes it out. */
function findLeftOut(project: Compiled, on: ReadonlySet<string>, wanted: Wanted): Making['leftOut'] {
  const features = [...project.features.values()];
  return Object.fromEntries(
    [...project.pieces.keys()]
      .filter((piece) => !wanted(piece, 'pieces'))
      .map((piece) => {
        const condition = project.conditions.pieces.get(piece);
        const why = features.find(({ name, adds, drops }) => (on.has(name) ? drops : adds).has(piece));
        return [piece, (condition && hindrance(condition, project.features, on)) ?? why?.name ?? ''];
      }),
  );
}
