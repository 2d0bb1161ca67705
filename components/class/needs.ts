/** Who needs help first, and what to say again to everybody: by rules that the page states. */
import type { AnswerRecord, CourseLesson } from './hand-in.ts';
import { when, type ClassLearner } from './learners.ts';
import { kindOf, lessonPattern, saySlip, type ClassQuestion } from './say.ts';

export const HELP_RULE =
  'The learner with most open questions of one kind of slip comes first; then the one with most open questions, the one ' +
  'most steps behind the middle of the class, and the one who handed in longest ago. A question is open that was tried and is not right yet.';

export const AGAIN_RULE =
  'What at least half of those who answered, and no fewer than two, had wrong at their first try, or a slip that at least half of the class made.';

export type Need = {
  key: string;
  name: string;
  open: number;
  /** The kind of slip behind most of them, where it is behind two or more. */
  same?: { words: string; questions: number };
  /** Steps behind the middle of the class. */
  behind: number;
  reason: string;
};

/** Those who have something open or are behind. The one who needs help first stands in front. */
export function whoNeedsHelp(learners: readonly ClassLearner[]): Need[] {
  const sewn = (learner: ClassLearner) => learner.handIn.lessons.reduce((sum, one) => sum + one.sewn, 0);
  const middle = median(learners.map(sewn));
  return learners
    .map((learner) => ({ learner, need: needOf(learner, Math.max(0, Math.floor(middle - sewn(learner)))) }))
    .filter(({ need }) => need.open > 0 || need.behind > 0)
    .toSorted(
      (a, b) =>
        (b.need.same?.questions ?? 0) - (a.need.same?.questions ?? 0) ||
        b.need.open - a.need.open ||
        b.need.behind - a.need.behind ||
        (when(a.learner.handIn) < when(b.learner.handIn) ? -1 : 1),
    )
    .map(({ need }) => need);
}

function needOf({ key, handIn }: ClassLearner, behind: number): Need {
  const open = handIn.lessons.flatMap(({ answers }) => answers.filter(({ right }) => !right));
  const kinds = Map.groupBy(
    open.flatMap((answer) => kindOf(answer.slip ?? answer.slips.at(-1) ?? 'other') ?? []),
    ({ kind }) => kind,
  );
  const [most] = [...kinds.values()].toSorted((a, b) => b.length - a.length);
  const same = most && most.length > 1 ? { words: most[0]!.words, questions: most.length } : undefined;
  const parts = [
    ...(same ? [`${same.words}, in ${same.questions} open questions`] : []),
    ...(open.length > (same?.questions ?? 0) ? [`${open.length} open in all`] : []),
    ...(behind > 0 ? [`${behind} ${behind === 1 ? 'step' : 'steps'} behind the middle of the class`] : []),
  ];
  return { key, name: handIn.name, open: open.length, ...(same && { same }), behind, reason: `${parts.join('; ')}.` };
}

function median(all: readonly number[]): number {
  const sorted = all.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1 ? sorted[Math.floor(half)]! : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
}

/** One thing to say again: the sentence, why, and the questions it is about. */
export type SayAgain = { sentence: string; why: string; learners: number };

type Missed = { lesson: CourseLesson; question: ClassQuestion; answers: { key: string; answer: AnswerRecord }[] };

/** What most of the class missed, the commonest first. */
export function whatToSayAgain(
  learners: readonly ClassLearner[],
  lessons: readonly CourseLesson[],
  edition: 'inch' | 'metric',
): SayAgain[] {
  const least = Math.max(2, learners.length / 2);
  const all = lessons.flatMap((lesson) => lesson.questions.map((question) => answersTo(lesson, question, learners)));
  const told = new Map<string, { who: Set<string>; questions: Set<string> }>();
  for (const { lesson, question, answers } of all) {
    const pattern = lessonPattern(lesson.project, edition);
    for (const { key, answer } of answers) {
      for (const slip of new Set([...answer.slips, ...(answer.slip === undefined ? [] : [answer.slip])])) {
        const sentence = saySlip(slip, question, pattern).toClass;
        if (sentence === undefined) continue;
        const one = told.get(sentence) ?? { who: new Set(), questions: new Set() };
        told.set(sentence, one);
        one.who.add(key);
        one.questions.add(question.words);
      }
    }
  }
  const often = [...told].filter(([, { who }]) => who.size >= least);
  const slips = often.map(([sentence, { who, questions }]): SayAgain => {
    const where = questions.size === 1 ? `at “${[...questions][0]}”` : `at ${questions.size} questions`;
    return { sentence, why: `${who.size} of ${learners.length} made this slip, ${where}.`, learners: who.size };
  });
  const known = new Set(often.flatMap(([, { questions }]) => [...questions]));
  const questions = all.flatMap(({ question, answers }): SayAgain[] => {
    const missed = answers.filter(({ answer }) => !answer.atOnce).length;
    if (known.has(question.words) || missed < 2 || missed < answers.length / 2) return [];
    const open = answers.filter(({ answer }) => !answer.right).length;
    const why = `${missed} of ${answers.length} had it wrong at first${open > 0 ? `, and ${open} still have` : ''}.`;
    return [{ sentence: `Work this through together: “${question.words}”`, why, learners: missed }];
  });
  return [...slips, ...questions].toSorted((a, b) => b.learners - a.learners).slice(0, MOST_SAID);
}

/** More than this nobody says in one lesson. */
const MOST_SAID = 8;

function answersTo(lesson: CourseLesson, question: ClassQuestion, learners: readonly ClassLearner[]): Missed {
  const answers = learners.flatMap(({ key, handIn }) => {
    const handed = handIn.lessons.find((one) => one.lesson === lesson.id);
    const answer = handed?.answers.find((one) => one.name === question.name);
    return answer ? [{ key, answer }] : [];
  });
  return { lesson, question, answers };
}
