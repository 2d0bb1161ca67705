import { literal, partsOf } from '../formula/brackets.ts';
import { toText } from '../formula/text.ts';
import { isClear, limitsOf, slipsOf } from '../questions/judge.ts';
import { heading, paragraph, row, table } from './blocks.ts';
import { seedText, toMeasure } from './exercises.ts';
import { flow } from './flow.ts';
import { madeAs, slug } from './handout.ts';
import { picksInPattern, picksInKey } from './picks.ts';
import { typeOf } from './type.ts';
import { quantity, wordsAt, type LessonOnPaper } from './worksheet.ts';
import type { Slip } from '../questions/slips.ts';
import type { Pattern } from '../project/pattern.ts';
import type { PaperQuestion, Exercises, LeftOut, Seed, PaperExercise } from './exercises.ts';
import type { Block } from './flow.ts';
import type { Handout, HandoutSetting } from './handout.ts';
import type { Type } from './type.ts';

/** So many sheets stand beside each other in a table. */
const across = (type: Type): number => (type.drawing > 1 ? 3 : 6);
/** So many slips are told for each question. */
const SLIPS = 4;

/** A question on several sheets. */
type OnSheets = {
  readonly asked: PaperQuestion;
  readonly all: readonly { readonly seed: Seed; readonly task: PaperExercise }[];
};

/**
 * The answers to the worksheets of the same seeds: a table to mark by, then each sum worked out for every sheet, and
 * what common slips come to.
 */
export function answerKey(
  lesson: LessonOnPaper,
  exercises: Exercises,
  seeds: readonly Seed[],
  pattern: Pattern,
  setting: HandoutSetting,
): Handout {
  const type = typeOf(setting);
  const title = `Answer key: ${lesson.title}`;
  const questions = exercises.tasks(1).map(({ asked }, i): OnSheets => {
    return { asked, all: seeds.map((seed) => ({ seed, task: exercises.tasks(seed.sheet)[i]! })) };
  });
  const blocks: Block[] = [
    ...paragraph('For the teacher. Letters and numbers are those at the top of each worksheet.', type),
    ...(questions.length === 0 ? [] : marking(questions, seeds, type)),
    ...questions.flatMap((question, i) => worked(question, i + 1, type)),
    ...picksInKey(lesson.picks ?? [], questions.length + 1, pattern, type),
    ...leftOut(lesson, exercises, pattern, type),
  ];
  return {
    name: `answer-key-${slug(lesson.name)}`,
    title: `${lesson.title}: answer key`,
    language: setting.language ?? 'en',
    reader: 'teacher',
    paper: setting.paper,
    pages: flow(blocks, { title, project: madeAs(pattern), edition: pattern.edition }, setting),
    findings: [],
  };
}

/** The questions that no sheet asks. */
function leftOut({ picks = [] }: LessonOnPaper, exercises: Exercises, pattern: Pattern, type: Type): Block[] {
  const there = picksInPattern(picks, pattern);
  const all: readonly LeftOut[] = [
    ...exercises.leftOut,
    ...picks.flatMap((pick) => (there.includes(pick) ? [] : [{ words: pick.words, why: 'away' as const }])),
  ];
  if (all.length === 0) return [];
  return [
    ...heading('On the page alone', type),
    ...all.flatMap(({ words, why }) => paragraph(`${wordsAt(words, pattern)} ${WHY[why]}`.trim(), type, { indent: 4 })),
  ];
}

const WHY: Readonly<Record<LeftOut['why'], string>> = {
  'read off': 'A sheet would have to print the answer.',
  away: 'The project as it is printed has no such thing.',
};

const answerOf = ({ sum, pattern }: PaperExercise): string => quantity(sum.wanted, pattern);

/** The answers of some sheets beside each other. */
function marking(questions: readonly OnSheets[], seeds: readonly Seed[], type: Type): Block[] {
  return inGroups(seeds, across(type)).flatMap((some, group) =>
    table(
      [{ title: 'Question', share: 1.4 }, ...some.map((seed) => ({ title: seedText(seed), share: 1.6 }))],
      questions.map(({ all }, i) =>
        row([String(i + 1), ...some.map((_, k) => answerOf(all[group * across(type) + k]!.task))]),
      ),
      type,
    ),
  );
}

const inGroups = <T>(all: readonly T[], size: number): T[][] =>
  Array.from({ length: Math.ceil(all.length / size) }, (_, i) => all.slice(i * size, (i + 1) * size));

/** One question: its sum by names, the numbers of every sheet, and the slips by what they come to. */
function worked({ asked, all }: OnSheets, number: number, type: Type): Block[] {
  const { sum } = all[0]!.task;
  const { names } = toText(sum.formula, sum.scope);
  const measured = toMeasure(all[0]!.task);
  const slips = asked.isRepeated ? [] : commonSlips(all.map(({ task }) => task));
  return [
    ...heading(`Question ${number}`, type),
    ...paragraph(askedOf(asked), type, { keep: true, after: 0.3 * type.text }),
    ...paragraph(measured ?? (sum.asked === undefined ? names : `${sum.asked} = ${names}`), type, {
      keep: true,
      strong: true,
    }),
    ...(measured === undefined ? all : all.slice(0, 1)).flatMap(({ seed, task }, i) => {
      const { numbers, result } = toText(task.sum.formula, task.sum.scope);
      // Those of one group stand on one page.
      const keep = (i + 1) % across(type) !== 0 && i < all.length - 1;
      const looks = { indent: 4, after: 0.1 * type.text, keep };
      const before = measured === undefined ? `${seedText(seed)}:  ${numbers} ` : 'On every sheet:  ';
      return paragraph(`${before}${result}`, type, { ...looks, keep: keep && measured === undefined });
    }),
    ...(slips.length === 0
      ? []
      : inGroups(all, across(type)).flatMap((some) =>
          table(
            [{ title: 'Common slip', share: 4.4 }, ...some.map(({ seed }) => ({ title: seedText(seed), share: 1.4 }))],
            slips.map(({ sentence, values }) => row([sentence, ...some.map(({ task }) => values.get(task) ?? '')])),
            type,
            type.small,
          ),
        )),
  ];
}

/** The question's words; where a size stands that each sheet has its own of, three dots. */
const askedOf = ({ words }: PaperQuestion): string =>
  words
    .map((part) => (typeof part === 'string' ? part : '…'))
    .join('')
    .replace(/\s+/gu, ' ')
    .trim();

/** The slips that can be told apart on the first sheet, and what each comes to on every other where it can be there. */
function commonSlips(tasks: readonly PaperExercise[]): { sentence: string; values: Map<PaperExercise, string> }[] {
  const clear = tasks.map((task) => ({ task, slips: clearSlips(task) }));
  return (clear[0]?.slips ?? []).slice(0, SLIPS).map(({ key, sentence }) => ({
    sentence,
    values: new Map(
      clear.flatMap(({ task, slips }) => {
        const slip = slips.find((other) => other.key === key);
        return slip ? [[task, quantity({ ...task.sum.wanted, value: slip.value }, task.pattern)] as const] : [];
      }),
    ),
  }));
}

/** What the author says to slips, with dots for the sizes that each sheet has its own of. */
function unnumbered({ slips = [], reword = {}, ...asked }: PaperQuestion): PaperQuestion {
  const dots = (text: string) => literal(dotted(text));
  return {
    ...asked,
    slips: slips.map(({ is, say }) => ({ is, say: dots(say) })),
    reword: Object.fromEntries(Object.entries(reword).map(([key, say]) => [key, dots(say)])),
  };
}

const dotted = (text: string): string =>
  partsOf(text)
    .map((part, i) => (i % 2 === 1 ? '…' : part))
    .join('');

/** On paper the unit is printed beside the answer: slips of the unit are left to the page. */
function clearSlips({ asked, sum, pattern }: PaperExercise): Slip[] {
  const limits = limitsOf(asked, sum.wanted, pattern);
  const all = slipsOf(unnumbered(asked), sum, pattern);
  return all.filter((slip) => slip.kind !== 'unit' && isClear(slip, all, sum.wanted, limits));
}
