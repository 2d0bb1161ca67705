import { formatQuantity } from '../formula/quantity.ts';
import { literal } from '../formula/brackets.ts';
import { layersSaid } from '../project/steps/layers-said.ts';
import { inText } from '../project/texts.ts';
import { letteringWidth } from '../drawing/lettering.ts';
import { polyline } from '../drawing/path.ts';
import { answerRoom, paragraph } from './blocks.ts';
import { seedText, toMeasure } from './exercises.ts';
import { flow } from './flow.ts';
import { madeAs, slug } from './handout.ts';
import { picksInPattern, picksOnSheet } from './picks.ts';
import { line } from './place.ts';
import { typeOf } from './type.ts';
import type { Quantity } from '../formula/index.ts';
import type { Pattern } from '../project/pattern.ts';
import type { PaperQuestion, Exercises, Seed, PaperExercise } from './exercises.ts';
import type { Block } from './flow.ts';
import type { PickQuestion } from './picks.ts';
import type { Handout, Page, HandoutSetting } from './handout.ts';
import type { Type } from './type.ts';

/** A lesson as far as paper needs it. */
export type LessonOnPaper = {
  readonly name: string;
  readonly title: string;
  /** Its questions that take no sum. */
  readonly picks?: readonly PickQuestion[];
};

/**
 * The questions of a lesson with room to work them out. Each sheet has numbers of its own and says which; pages are
 * counted for each sheet, since each goes to another maker.
 */
export function worksheet(
  lesson: LessonOnPaper,
  exercises: Exercises,
  seeds: readonly Seed[],
  pattern: Pattern,
  setting: HandoutSetting,
): Handout {
  const { picks = [] } = lesson;
  const type = typeOf(setting);
  const title = `Worksheet: ${lesson.title}`;
  const heading = { title, project: madeAs(pattern), edition: pattern.edition };
  const empty = seeds.length === 0 || exercises.tasks(1).length + picks.length === 0;
  const nothing = 'This lesson asks nothing, so there is nothing to print.';
  const pages = seeds.flatMap((seed): Page[] => {
    const [first, ...rest] = flow(
      [
        ...sheet(exercises.tasks(seed.sheet), seed, type),
        ...picksOnSheet(picks, exercises.tasks(seed.sheet).length + 1, seed, pattern, type),
        ...onPageOnly(exercises.leftOut.length + picks.length - picksInPattern(picks, pattern).length, type),
      ],
      heading,
      setting,
    );
    return first ? [{ ...first, bookmark: `Sheet ${seedText(seed)}` }, ...rest] : [];
  });
  return {
    name: `worksheet-${slug(lesson.name)}`,
    title: `${lesson.title}: worksheet`,
    language: setting.language ?? 'en',
    reader: 'maker',
    paper: setting.paper,
    pages: empty ? flow(paragraph(nothing, type), heading, setting) : pages,
    findings: empty ? [`${title}: ${nothing}`] : [],
  };
}

function sheet(tasks: readonly PaperExercise[], seed: Seed, type: Type): Block[] {
  return [
    nameLine(seed, type),
    ...tasks.flatMap((task, i) => [
      ...paragraph(`${i + 1}. ${wordsOf(task)}`, type, { keep: true, after: 0.2 * type.text }),
      ...paragraph(toMeasure(task) ?? numbersSentence(task), type, {
        keep: true,
        size: type.small,
        after: 0.3 * type.text,
      }),
      ...answerRoom(unitOf(task), type),
    ]),
  ];
}

/** A sheet that leaves questions out says so; its key says which, and why. */
function onPageOnly(count: number, type: Type): Block[] {
  if (count === 0) return [];
  const text = count === 1 ? '1 more question stands' : `${count} more questions stand`;
  return paragraph(`${text} on the lesson’s page alone.`, type, { size: type.small });
}

/** Room for a name, and the seed. */
function nameLine(seed: Seed, type: Type): Block {
  const text = `Sheet ${seedText(seed)}`;
  return {
    height: 2.6 * type.text,
    draw(x, y) {
      const low = y + 1.2 * type.text;
      const from = x + letteringWidth('Name', type.text) + 3;
      const to = x + type.width - letteringWidth(text, type.text) - 8;
      return [
        line('name', 'Name', x, low, type.text),
        {
          kind: 'path',
          name: 'name line',
          role: 'dimension',
          path: polyline({ x: from, y: low + 0.5 }, { x: to, y: low + 0.5 }),
        },
        line('seed', text, x + type.width, low, type.text, { anchor: 'end', strong: true }),
      ];
    },
  };
}

/** A quantity as the edition sets it. */
export function quantity(value: Quantity, { edition, grid }: Pattern): string {
  return formatQuantity(value, { edition, grid, style: 'set' });
}

/** Words of a lesson as one text: sizes in brackets, and counts of layers as they are said. */
const inBrackets = (words: PaperQuestion['words'], pattern: Pattern | undefined): string =>
  words
    .map((part) => {
      if (typeof part === 'string') return literal(part);
      return (pattern && layersSaid(part.size, pattern)) ?? `[${part.size}]`;
    })
    .join('');

/** QuestionText of a lesson with a pattern's sizes among them; without a pattern as they were written. */
export function wordsAt(words: PaperQuestion['words'], pattern: Pattern | undefined): string {
  return inText(inBrackets(words, pattern), pattern)
    .replace(/[ \n\t]+/gu, ' ')
    .trim();
}

/** The question's words with the sheet's sizes among them. */
export const wordsOf = ({ asked, pattern }: PaperExercise): string => wordsAt(asked.words, pattern);

/** The numbers of the sum, by the names it knows them by. */
export function numbersSentence({ pattern, sum }: PaperExercise): string {
  const given = [...new Set(sum.formula.names)].flatMap((name) => {
    const found = sum.scope.get(name);
    return found?.ok ? [`${name} = ${quantity(found.value, pattern)}`] : [];
  });
  return given.length === 0 ? '' : `On this sheet: ${given.join(', ')}.`;
}

function unitOf({ sum, pattern }: PaperExercise): string {
  const { dimension } = sum.wanted;
  if (dimension === 0) return '';
  const unit = pattern.edition === 'inch' ? 'in' : dimension === 1 ? 'mm' : 'cm';
  return dimension === 2 ? `${unit}²` : unit;
}
