import { practise, type Difficulty } from '../questions/practice.ts';
import { sumFor } from '../questions/sum.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Question } from '../questions/judge.ts';
import type { Sum } from '../questions/sum.ts';

/** A question as a lesson asks it: its words, and the sizes that stand among them. */
export type PaperQuestion = Question & {
  /** A name of its own in the lesson. */
  readonly id: string;
  readonly words: readonly (string | { readonly size: string })[];
  /** How fine its numbers are, and how many of them change; 2 if left out. */
  readonly difficulty?: Difficulty;
  /** The same question stands before it: what is to be said of it is said there. */
  readonly isRepeated?: boolean;
};

/** A question that stands on the page and on no sheet. */
export type LeftOut = { readonly words: PaperQuestion['words']; readonly why: 'read off' | 'away' };

/** A question with the numbers of one sheet. */
export type PaperExercise = { readonly asked: PaperQuestion; readonly pattern: Pattern; readonly sum: Sum };

/** Which numbers stand on a sheet: a series, and the sheet's own number counted from 1. */
export type Seed = { readonly series: string; readonly sheet: number };

/** As it is printed on the sheet and on its key. */
export const seedText = ({ series, sheet }: Seed): string => `${series}-${sheet}`;

/** As many sets of numbers as a question is given; sheets take them in turn. */
const SETS = 6;
/** How often new numbers are drawn to find them. */
const DRAWS = 14;

/**
 * The questions of a lesson that a sheet asks, each with several sets of numbers. What is measured on a template has the
 * template's own.
 *
 * `resolve` makes the pattern: `(values) => resolveProject(file, { edition, values })`.
 */
export function exercisesFor(
  questions: readonly PaperQuestion[],
  resolve: (values: Record<string, number>) => Pattern,
  series: string,
): Exercises {
  const known = remembered(resolve);
  const lesson = known({});
  const all: { sets: PaperExercise[] }[] = [];
  for (const asked of questions) {
    const sum = sumFor(asked.of, lesson);
    if (!sum.ok || !isOnPaper(asked, lesson)) continue;
    if (formOn(asked, lesson) === 'measured') {
      all.push({ sets: [{ asked, pattern: lesson, sum: sum.value }] });
      continue;
    }
    // PaperQuestion again, it has other answers than the time before, whichever sets meet on a sheet.
    const before = asked.isRepeated ? all.at(-1)?.sets : undefined;
    all.push({ sets: setsOf({ asked, pattern: lesson, sum: sum.value }, known, series, before) });
  }
  return {
    varied: all.every(({ sets }) => sets.length > 1 || toMeasure(sets[0]!) !== undefined),
    leftOut: questions.flatMap((asked) => {
      const form = formOn(asked, lesson);
      if (form === 'sum' || form === 'measured') return [];
      return [{ words: asked.words, why: form }];
    }),
    tasks: (sheet) => all.map(({ sets }) => sets[(sheet - 1) % sets.length]!),
  };
}

/**
 * How paper can ask a question: for a sum; for a size that has no sum, as the width of an outlined piece, which is
 * measured on its template; not at all, because its answer would only be read off the sheet, or because the project
 * leaves it out.
 */
export function formOn({ of }: Pick<PaperQuestion, 'of'>, pattern: Pattern): 'sum' | 'measured' | 'read off' | 'away' {
  const sum = sumFor(of, pattern);
  if (!sum.ok) return 'away';
  const { tree } = sum.value.formula;
  if (tree.kind === 'number' || tree.kind === 'length') return 'read off';
  if (tree.kind !== 'name') return 'sum';
  return pattern.measures[tree.name]?.source === 'stated' ? 'read off' : 'measured';
}

/** Whether a sheet asks a question. */
export function isOnPaper(asked: Pick<PaperQuestion, 'of'>, pattern: Pattern): boolean {
  const form = formOn(asked, pattern);
  return form === 'sum' || form === 'measured';
}

/** Where a maker measures what has no sum; undefined where there is a sum. */
export function toMeasure({ sum, pattern }: PaperExercise): string | undefined {
  const { tree } = sum.formula;
  if (tree.kind !== 'name') return undefined;
  return `Measure it on the template, printed at true scale: ${pattern.measures[tree.name]?.label ?? tree.name}.`;
}

/** The same sizes are asked for again and again while numbers are drawn. */
function remembered(resolve: (values: Record<string, number>) => Pattern): typeof resolve {
  const patterns = new Map<string, Pattern>();
  return (values) => {
    const key = JSON.stringify(values);
    const pattern = patterns.get(key) ?? resolve(values);
    patterns.set(key, pattern);
    return pattern;
  };
}

export type Exercises = {
  /** Whether every question has other numbers on the sheet of the neighbour. */
  readonly varied: boolean;
  /** The questions that no sheet asks, and why: the page says the answer itself, or the project has no such thing. */
  readonly leftOut: readonly LeftOut[];
  /** The questions with the numbers of one sheet. */
  tasks: (sheet: number) => PaperExercise[];
};

/** Sets of numbers with answers that all differ, so that neighbours cannot copy; the lesson's own where none changes. */
function setsOf(
  own: PaperExercise,
  resolve: (values: Record<string, number>) => Pattern,
  series: string,
  before: readonly PaperExercise[] = [],
): PaperExercise[] {
  const { asked } = own;
  const sets: PaperExercise[] = [];
  for (let draw = 0; draw < DRAWS && sets.length < SETS; draw++) {
    const exercise = practise(asked, resolve, `${series} ${asked.id} ${draw}`, asked.difficulty ?? 2);
    if (!exercise) break;
    const sum = sumFor(asked.of, exercise.pattern);
    if (!sum.ok) continue;
    const { wanted } = sum.value;
    const others = [...sets, ...before];
    if (others.some(({ sum }) => sum.wanted.value === wanted.value)) continue;
    sets.push({ asked, pattern: exercise.pattern, sum: sum.value });
  }
  return sets.length > 0 ? sets : [own];
}
