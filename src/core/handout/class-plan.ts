import { kitFor, prepare as prepared, kitRows } from '../kit/index.ts';
import { heading, paragraph, row, table, toTick } from './blocks.ts';
import { flow } from './flow.ts';
import { typeOf } from './type.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Block } from './flow.ts';
import type { Handout, Setting } from './handout.ts';

/** What can hurt in a lesson: its name, the lesson's own words and the usual ones. */
export type CautionWords = { readonly title: string; readonly sentences: readonly string[] };

export type PlannedLesson = {
  readonly title: string;
  readonly summary: string;
  readonly minutes: number;
  /** What is shown, in the order of the lesson. */
  readonly shows: readonly string[];
  readonly cautions: readonly CautionWords[];
};

export type PlannedSession = {
  readonly title: string;
  /** As long as the room is booked; left out, as long as its lessons. */
  readonly minutes?: number;
  readonly lessons: readonly PlannedLesson[];
};

export type Plan = {
  readonly title: string;
  readonly summary: string;
  readonly level: string;
  readonly makers: number;
  /** Whole sets of everything beside those. */
  readonly spares: number;
  /** Sewing machines in the room; one for each maker if left out. */
  readonly machines?: number;
  readonly sessions: readonly PlannedSession[];
  /** Stands under the cautions. */
  readonly defersTo: string;
};

/** For the teacher: the sessions with their minutes, what to prepare and to show, and where it can hurt. */
export function classPlan(plan: Plan, pattern: Pattern | undefined, setting: Setting): Handout {
  const type = typeOf(setting);
  const sums = plan.sessions.map(({ lessons }) => lessons.reduce((sum, { minutes }) => sum + minutes, 0));
  const { machines } = plan;
  const at = machines === undefined ? '' : ` at ${machines} ${machines === 1 ? 'machine' : 'machines'}`;
  const blocks: Block[] = [
    ...paragraph(plan.summary, type),
    ...paragraph(
      `Level: ${plan.level}. Planned for ${plan.makers} makers${at}, with ${plan.spares} ${plan.spares === 1 ? 'set' : 'sets'} to spare.`,
      type,
    ),
    ...heading('Sessions', type),
    ...table(
      [
        { title: 'Session', share: 3.2 },
        { title: 'Lessons', share: 4 },
        { title: 'Minutes', share: 1.4 },
        { title: 'Lessons take', share: 1.8 },
      ],
      plan.sessions.map(({ title, lessons, minutes }, i) =>
        row([
          `${i + 1}. ${title}`,
          lessons.map((lesson) => `${lesson.title} (${lesson.minutes})`).join(', '),
          String(minutes ?? sums[i]!),
          String(sums[i]!),
        ]),
      ),
      type,
    ),
    ...heading('Prepare', type),
    ...prepare(plan, pattern).flatMap((sentence) => toTick(sentence, type)),
    ...plan.sessions.flatMap((session, i) => sessionBlocks(session, i, plan.defersTo, sums[i]!, setting)),
  ];
  return {
    name: 'class-plan',
    title: `${plan.title}: class plan`,
    language: setting.language ?? 'en',
    reader: 'teacher',
    paper: setting.paper,
    pages: flow(blocks, { title: 'Class plan', project: plan.title, edition: pattern?.edition ?? 'metric' }, setting),
    findings: [],
  };
}

function prepare({ makers, spares, machines }: Plan, pattern: Pattern | undefined): string[] {
  const kit = pattern && kitFor(pattern, { makers, spares, ...(machines !== undefined && { machines }) });
  const told = kit ? kit.lines.flatMap((line) => kitRows(line, pattern.edition)) : [];
  const { cut, done } = pattern ? prepared(pattern, { makers, spares }) : { cut: [], done: [] };
  return [
    ...told.map(({ label, material, buy }) => `${label} (${material}): ${buy}.`),
    ...cut.map(({ label, count }) => `Cut ${count} of: ${label}.`),
    ...done.map(({ title, count }) => `${title}, ${count} times.`),
    'Print the templates at 100 % and measure the test square of one sheet.',
    `Print ${makers} worksheets for each lesson with questions: each maker gets another number than the neighbour.`,
    'Print the answer keys of the same numbers, for yourself.',
  ];
}

function sessionBlocks(
  session: PlannedSession,
  index: number,
  defersTo: string,
  sum: number,
  setting: Setting,
): Block[] {
  const type = typeOf(setting);
  const { title, lessons, minutes } = session;
  const name = `Session ${index + 1}: ${title}`;
  const blocks = [...heading(name, type)];
  if (lessons.length === 0) blocks.push(...paragraph(`${minutes ?? 0} minutes without a lesson, for sewing.`, type));
  else if (minutes !== undefined && minutes !== sum) {
    const spare = minutes - sum;
    const told =
      spare > 0
        ? `leaves ${spare} minutes for questions and for tidying up`
        : `is ${-spare} minutes too short for its lessons`;
    blocks.push(...paragraph(`${minutes} minutes: that ${told}.`, type, { keep: true }));
  }
  for (const lesson of lessons) {
    blocks.push(
      ...paragraph(`${lesson.title}, ${lesson.minutes} minutes`, type, {
        strong: true,
        keep: true,
        after: 0.2 * type.text,
      }),
    );
    blocks.push(...paragraph(lesson.summary, type));
    if (lesson.shows.length > 0) {
      blocks.push(...paragraph('Demonstrate:', type, { keep: true, after: 0.1 * type.text }));
      blocks.push(...lesson.shows.flatMap((point) => toTick(point, type, { indent: 4 })));
    }
    if (lesson.cautions.length > 0) {
      blocks.push(...paragraph('Cautions:', type, { keep: true, after: 0.1 * type.text }));
      for (const caution of lesson.cautions) {
        blocks.push(
          ...paragraph(`${caution.title}. ${caution.sentences.join(' ')}`, type, {
            indent: 4,
            after: 0.25 * type.text,
            keep: caution === lesson.cautions.at(-1), // with the sentence below
          }),
        );
      }
      blocks.push(...paragraph(defersTo, type, { indent: 4, size: type.small }));
    }
  }
  return blocks;
}
