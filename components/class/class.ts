/** What a class understood: who is where, which questions went wrong, and which slips were behind it. */
import { csv, slipKinds, type MistakeKind } from '../../src/core/index.ts';
import { mistakes } from './known.ts';
import { isOfPlace } from './hand-in.ts';
import type { AnswerRecord, CourseLesson, HandIn, HandedLesson, MeasuredPiece, PracticeRecord } from './hand-in.ts';

/** One learner's standing in each lesson: sections read, questions right, steps sewn. */
export type Person = {
  name: string;
  day: string;
  lessons: Standing[];
};

/** Sections read, questions right, sets of practice ended, pieces measured, steps sewn: each of how many. */
type Standing = Record<'read' | 'right' | 'practised' | 'measured' | 'sewn', number> &
  Record<'ofSections' | 'of' | 'ofPractices' | 'ofPieces' | 'ofSteps', number>;

/** What is said of a slip of a question, by its key. */
export type SaySlip = (key: string, question: CourseLesson['questions'][number], lesson: CourseLesson) => string;

/** One question, or one set of practice, over the whole class. `slips` are the commonest first. */
export type Tally = {
  lesson: string;
  /** Its name in the lesson, and the lesson's id. */
  name: string;
  lessonId: string;
  words: string;
  isPractice: boolean;
  /** Right at the first try, right later, and tried without being right yet. Of practice: ended without a slip, with some, not yet. */
  atOnce: number;
  later: number;
  open: number;
  slips: Times[];
};

/** What was behind it, and how often. */
export type Times = { words: string; times: number };

/** One piece over the whole class: as it should be, explained by one mistake, or not to be listed. */
export type PieceTally = {
  lesson: string;
  words: string;
  well: number;
  explained: number;
  open: number;
  mistakes: Times[];
};

/** Where everybody is. What a hand-in says of questions that the course does not have is passed over. */
export function whoIsWhere(handIns: readonly HandIn[], lessons: readonly CourseLesson[]): Person[] {
  return handIns
    .map((handIn) => ({
      name: handIn.name,
      day: handIn.day,
      lessons: lessons.map(({ id, questions, practices, pieces, sections, steps }) => ({
        right: questions.filter(({ name }) => answerOf(handIn, id, name)?.right).length,
        of: questions.length,
        practised: practices.filter(({ name }) => practiceOf(handIn, id, name)?.done).length,
        ofPractices: practices.length,
        measured: pieces.filter(({ name }) => pieceOf(handIn, id, name)).length,
        ofPieces: pieces.length,
        read: Math.min(sections, lessonOf(handIn, id)?.sections ?? 0),
        ofSections: sections,
        sewn: Math.min(steps.length, lessonOf(handIn, id)?.sewn ?? 0),
        ofSteps: steps.length,
      })),
    }))
    .toSorted((a, b) => a.name.localeCompare(b.name));
}

/** One learner's standing in some lessons together; `open` are questions that were tried and are not right yet. */
export type Totals = Standing & { open: number };

export function totalsOf(handIn: HandIn, lessons: readonly CourseLesson[]): Totals {
  const [person] = whoIsWhere([handIn], lessons);
  const all = person?.lessons ?? [];
  const sum = (name: keyof Standing) => all.reduce((sum, one) => sum + one[name], 0);
  const open = lessons.flatMap(({ id, questions }) =>
    questions.filter(({ name }) => answerOf(handIn, id, name)?.right === false),
  ).length;
  return {
    ...{ read: sum('read'), right: sum('right'), practised: sum('practised'), measured: sum('measured') },
    ...{ sewn: sum('sewn'), ofSections: sum('ofSections'), of: sum('of'), ofPractices: sum('ofPractices') },
    ...{ ofPieces: sum('ofPieces'), ofSteps: sum('ofSteps'), open },
  };
}

/** Every question that somebody tried, and every set that somebody practised, in the order of the course. */
export function whatWentWrong(
  handIns: readonly HandIn[],
  lessons: readonly CourseLesson[],
  say: SaySlip = slipInWords,
): Tally[] {
  return lessons.flatMap((lesson) => {
    const { id, title, questions, practices } = lesson;
    return [
      ...questions.flatMap((question): Tally[] => {
        const answers = handIns.flatMap((handIn) => answerOf(handIn, id, question.name) ?? []);
        const all = answers.map(({ right, atOnce, slips }) => ({ ends: right, clean: atOnce, slips }));
        return tallied(aboutOf(question, false), all, (key) => say(key, question, lesson));
      }),
      ...practices.flatMap((set): Tally[] => {
        const sets = handIns.flatMap((handIn) => practiceOf(handIn, id, set.name) ?? []);
        const all = sets.map(({ done, slips }) => ({ ends: done, clean: slips.length === 0, slips }));
        return tallied(aboutOf(set, true), all, (key) => say(key, set, lesson));
      }),
    ];

    function aboutOf({ name, words }: { name: string; words: string }, isPractice: boolean) {
      return { lesson: title, lessonId: id, name, words, isPractice };
    }
  });
}

function tallied(
  about: Pick<Tally, 'lesson' | 'lessonId' | 'name' | 'words' | 'isPractice'>,
  all: readonly { ends: boolean; clean: boolean; slips: string[] }[],
  say: (key: string) => string,
): Tally[] {
  if (all.length === 0) return [];
  const ended = all.filter(({ ends }) => ends);
  const atOnce = ended.filter(({ clean }) => clean).length;
  const slips = counted(
    all.flatMap(({ slips }) => slips),
    say,
  );
  return [{ ...about, atOnce, later: ended.length - atOnce, open: all.length - ended.length, slips }];
}

/** Every piece that somebody measured, in the order of the course. */
export function whatWasMeasured(handIns: readonly HandIn[], lessons: readonly CourseLesson[]): PieceTally[] {
  return lessons.flatMap(({ id, title: lesson, pieces }) =>
    pieces.flatMap(({ name, words }): PieceTally[] => {
      const all = handIns.flatMap((handIn) => pieceOf(handIn, id, name) ?? []);
      if (all.length === 0) return [];
      const of = (verdict: MeasuredPiece['verdict']) => all.filter((one) => one.verdict === verdict).length;
      const [well, explained] = [of('well'), of('explained')];
      const mistakes = counted(
        all.flatMap(({ mistakes }) => mistakes),
        mistakeInWords,
      );
      return [{ lesson, words, well, explained, open: all.length - well - explained, mistakes }];
    }),
  );
}

function counted(keys: readonly string[], inWords: (key: string) => string): Times[] {
  const groups = Map.groupBy(keys, inWords);
  return [...groups].map(([words, all]) => ({ words, times: all.length })).toSorted((a, b) => b.times - a.times);
}

const lessonOf = (handIn: HandIn, lesson: string): HandedLesson | undefined =>
  handIn.lessons.find((one) => one.lesson === lesson);
const answerOf = (handIn: HandIn, lesson: string, name: string): AnswerRecord | undefined =>
  lessonOf(handIn, lesson)?.answers.find((answer) => answer.name === name);
const practiceOf = (handIn: HandIn, lesson: string, name: string): PracticeRecord | undefined =>
  lessonOf(handIn, lesson)?.practised?.find((one) => one.name === name);
const pieceOf = (handIn: HandIn, lesson: string, name: string): MeasuredPiece | undefined =>
  lessonOf(handIn, lesson)?.measured?.find((one) => one.name === name);

/** The kind of a mistake as a teacher reads it; a hand-in may hold any text. */
export const mistakeInWords = (kind: string): string =>
  Object.hasOwn(mistakes, kind) ? mistakes[kind as MistakeKind] : kind;

/**
 * The key of a slip as a teacher reads it.
 *
 * @example slipInWords('one-side seam') // => 'one side: seam'
 */
export function slipInWords(key: string): string {
  if (key === 'near') return 'a mark off';
  if (key === 'other' || isOfPlace(key)) return 'another wrong answer';
  const [kind = '', ...names] = key.split(' ');
  if (kind === 'own') return `the lesson’s own slip ${names.join(' ')}`;
  if (!slipKinds.some((one) => one === kind)) return key;
  return [kind.replaceAll('-', ' '), names.join(' ')].filter(Boolean).join(': ');
}

/**
 * A table for other programs, as the core writes CSV: a line for the sections read and one for the steps sewn of each
 * lesson, for each answer, each set of practice and each piece measured.
 */
export function toCsv(handIns: readonly HandIn[], lessons: readonly CourseLesson[]): string {
  const head = ['name', 'day', 'lesson', 'kind', 'question', 'tries', 'right', 'right at once', 'slips'];
  const rows = handIns.flatMap((handIn) =>
    lessons
      .flatMap(({ id, title, sections, steps, questions, practices, pieces }) => [
        ...countsOf(title, lessonOf(handIn, id), { sections, steps: steps.length }),
        ...questions.flatMap(({ name, words }) => {
          const answer = answerOf(handIn, id, name);
          if (!answer) return [];
          const { tries, right, atOnce, slips } = answer;
          return [[title, 'question', words, tries, yes(right), yes(atOnce), slips.map(slipInWords).join('; ')]];
        }),
        ...practices.flatMap(({ name, words }) => {
          const set = practiceOf(handIn, id, name);
          if (!set) return [];
          const listed = set.slips.map(slipInWords).join('; ');
          return [
            [title, 'practice', words, set.exercises, yes(set.done), yes(set.done && set.slips.length === 0), listed],
          ];
        }),
        ...pieces.flatMap(({ name, words }) => {
          const piece = pieceOf(handIn, id, name);
          if (!piece) return [];
          return [
            [
              title,
              'piece',
              words,
              '',
              yes(piece.verdict === 'well'),
              '',
              piece.mistakes.map(mistakeInWords).join('; '),
            ],
          ];
        }),
      ])
      .map((cells) => [handIn.name, handIn.day, ...cells]),
  );
  return csv([head, ...rows]);
}

/** How much of a lesson was read and sewn, as lines of the table. */
function countsOf(
  title: string,
  handed: HandedLesson | undefined,
  of: { sections: number; steps: number },
): (string | number)[][] {
  if (!handed) return [];
  const line = (kind: string, n: number, all: number) => [title, kind, `${Math.min(n, all)} of ${all}`, '', '', '', ''];
  return [
    line('sections read', handed.sections, of.sections),
    ...(of.steps > 0 ? [line('steps sewn', handed.sewn, of.steps)] : []),
  ];
}

const yes = (is: boolean) => (is ? 'yes' : 'no');
