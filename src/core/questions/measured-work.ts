/** A piece or the finished work, once it is measured: what it should measure, and what it would measure if something had gone otherwise. */
import { parseFormula } from '../formula/index.ts';
import { SAME, plainName } from '../measure/index.ts';
import { compiled } from '../project/compile.ts';
import { promisedIn } from '../project/finished.ts';
import { Evaluator } from '../project/evaluator.ts';
import { featuresOf } from '../project/ways.ts';
import { resolveProject, type Settings } from '../project/resolve.ts';
import type { Pattern, Piece, Size } from '../project/pattern.ts';
import type { ProjectFile } from '../project/schema.ts';

/** What was measured: a piece as it was cut or once it is sewn (or folded), or the finished work. */
export type Subject = { piece: string; stage: 'cut' | 'sewn' } | { finished: true };

/** A project at the learner's own size; `made` are pieces that are cut already and stay as they are. */
export type ProjectAtHand = { file: ProjectFile; settings?: Settings; made?: readonly string[] };

export type SizeName = keyof Size;
export const sizeNames: readonly SizeName[] = ['width', 'height'];

/** The measured thing as the project has it. All in mm. */
export type MeasuredWork = {
  pattern: Pattern;
  stage: 'cut' | 'sewn';
  expected: Size;
  /** Before and after sewing; of a pleated piece both are taken once it is folded. */
  cut: Size;
  sewn: Size;
  /** The allowances at the two edges across each way; 0 where nothing is sewn. */
  seams: Record<SizeName, readonly [number, number]>;
  piece?: Piece;
  /** The pieces in the measured work. */
  inIt: readonly Piece[];
  /** Pieces that are cut already, those in the work among them. */
  made: ReadonlySet<string>;
  /** Names of the measures that the size rests on. */
  names: ReadonlySet<string>;
  /** Its size with some measures changed, in or out of their range, and all else as it is. */
  sizeWith: (values: Readonly<Record<string, number>>) => Size | undefined;
  /** The whole pattern with them. */
  patternWith: (values: Readonly<Record<string, number>>) => Pattern;
};

/** What should be measured; undefined where the project, with its options, has no such thing. */
export function measuredWorkOf(
  subject: Subject,
  { file, settings = {}, made = [] }: ProjectAtHand,
): MeasuredWork | undefined {
  const pattern = resolveProject(file, settings);
  const expected = sizeOf(subject, pattern);
  if (!expected) return undefined;
  const inIt = 'piece' in subject ? [pattern.pieces[subject.piece]!] : shellOf(pattern, expected);
  const [piece] = inIt;
  const stage = 'piece' in subject ? subject.stage : 'sewn';
  const { left = 0, right = 0, bottom = 0, top = 0 } = piece?.allowance ?? {};
  return {
    pattern,
    stage,
    expected,
    sewn: piece?.sewn ?? expected,
    cut: piece
      ? { width: piece.size.width, height: stage === 'cut' ? piece.size.height : foldedHeight(piece) }
      : expected,
    seams: { width: [left, right], height: [bottom, top] },
    ...(piece && { piece }),
    inIt,
    made: new Set([...made, ...inIt.map(({ name }) => name)]),
    names: restsOn(subject, file, pattern),
    sizeWith: (values) => evaluatedSize(subject, file, pattern, values),
    patternWith: (values) => resolveProject(withValues(file, values, pattern), settings),
  };
}

function sizeOf(subject: Subject, { pieces, finished }: Pattern): Size | undefined {
  if (!('piece' in subject)) return finished && { width: finished.width, height: finished.height };
  const piece = Object.hasOwn(pieces, subject.piece) ? pieces[subject.piece] : undefined;
  return subject.stage === 'cut' ? piece?.size : piece?.sewn;
}

/** The same size without drawing a single piece: what is tried out many times must be quick. */
function evaluatedSize(
  subject: Subject,
  file: ProjectFile,
  pattern: Pattern,
  values: Readonly<Record<string, number>>,
): Size | undefined {
  const { edition, measures, sizes } = pattern;
  const project = compiled(file);
  const chosen = Object.values(measures).flatMap(({ name, value, adjustable }) =>
    adjustable ? [[name, value] as const] : [],
  );
  const evaluator = new Evaluator(project, edition, {
    values: new Map([...chosen, ...Object.entries(values)]),
    on: featuresOf(pattern, project),
    size: sizes?.chosen,
  });
  const part = (what: 'width' | 'length' | 'finished width' | 'finished height') =>
    'piece' in subject ? evaluator.part(subject.piece, { what }) : undefined;
  const promised = (way: SizeName) => {
    const rawValue = project.finished?.now?.[way];
    return rawValue && evaluator.length(rawValue);
  };
  const [width, height] = !('piece' in subject)
    ? [promised('width'), promised('height')]
    : subject.stage === 'cut'
      ? [part('width'), part('length')]
      : [part('finished width'), part('finished height')];
  return width === undefined || height === undefined ? undefined : { width, height };
}

const foldedHeight = ({ pleats, size }: Piece) => pleats?.panelHeight ?? size.height;

/** The pieces that become the finished work: those that are sewn to its size, and what is fused to them. */
function shellOf({ pieces }: Pattern, { width, height }: Size): Piece[] {
  const all = Object.values(pieces);
  const fits = ({ sewn }: Piece) => Math.abs(sewn.width - width) < SAME && Math.abs(sewn.height - height) < SAME;
  const shell = all.filter((piece) => fits(piece) && piece.insetFrom === undefined);
  return [...shell, ...all.filter(({ insetFrom }) => shell.some(({ name }) => name === insetFrom))];
}

/** Every name that the size is worked out from, at any depth. */
function restsOn(subject: Subject, file: ProjectFile, { measures }: Pattern): Set<string> {
  const known = Object.keys(measures);
  const inText = (text: unknown) => {
    const read = typeof text === 'string' ? parseFormula(text, { names: known }) : undefined;
    return read?.ok ? read.value.names : [];
  };
  const open =
    'piece' in subject
      ? ['width', 'height', 'length'].map((what) => `${subject.piece} ${what}`)
      : Object.values(file.finished ? promisedIn(file.finished).written : {}).flatMap(inText);
  const found = new Set<string>();
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (found.has(name)) continue;
    found.add(name);
    open.push(...(measures[name]?.formula?.names ?? []));
  }
  return found;
}

/** The same file with some measures stated anew for one edition, in mm or as whole numbers, and without a range. */
function withValues(
  file: ProjectFile,
  values: Readonly<Record<string, number>>,
  { measures, edition, sizes }: Pattern,
): ProjectFile {
  const changed = Object.entries(values).map(([name, value]): [string, ProjectFile['measures'][string]] => {
    const key = Object.keys(file.measures).find((one) => plainName(one) === plainName(name)) ?? name;
    const label = measures[name]?.label ?? name;
    if (measures[name]?.isRatio) return [key, { number: value, label }];
    if (measures[name]?.dimension === 0) return [key, { count: value, label }];
    return [key, { [edition === 'inch' ? 'in' : 'mm']: `${value.toFixed(9)} mm`, label }];
  });
  const anew = { ...file, measures: { ...file.measures, ...Object.fromEntries(changed) } };
  if (!file.sizes || !sizes) return anew;
  // What the size gives goes before what stands under measures.
  const row = Object.entries(file.sizes.of[sizes.chosen]!).map(([name, given]) => {
    const key = Object.keys(values).find((one) => plainName(one) === plainName(name));
    if (key === undefined) return [name, given] as const;
    const value = values[key]!;
    if (measures[key]?.dimension === 0) return [name, value] as const;
    return [name, { [edition === 'inch' ? 'in' : 'mm']: `${value.toFixed(9)} mm` }] as const;
  });
  return { ...anew, sizes: { ...file.sizes, of: { ...file.sizes.of, [sizes.chosen]: Object.fromEntries(row) } } };
}
