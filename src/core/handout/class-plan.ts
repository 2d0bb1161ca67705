import {
  kitFor,
  kitRows,
  oneMoreWords,
  planSessions,
  prepare as prepared,
  SESSION_NOTE,
  sessionHeads,
  sessionLines,
  tasksOf,
} from '../kit/index.ts';
import { heading, paragraph, row, table, toTick } from './blocks.ts';
import { flow } from './flow.ts';
import { typeOf } from './type.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Block } from './flow.ts';
import type { Type } from './type.ts';
import type { Handout, HandoutSetting } from './handout.ts';
import type { PlannedSitting, SessionPlan, Taught } from '../kit/index.ts';

/** What can hurt in a lesson: its name, the lesson's own words and the usual ones. */
export type CautionWords = { readonly title: string; readonly sentences: readonly string[] };

export type PlannedLesson = Taught & {
  readonly summary: string;
  /** What is shown, in the order of the lesson. */
  readonly shows: readonly string[];
  readonly cautions: readonly CautionWords[];
};

export type PlannedSession = {
  readonly title: string;
  /** As long as the room is booked; left out, as long as it has to be. */
  readonly minutes?: number | undefined;
  /** The time of day, as 18:30. */
  readonly begins?: string | undefined;
};

export type Plan = {
  readonly title: string;
  readonly summary: string;
  readonly level: string;
  readonly makers: number;
  /** Whole sets of everything beside those. */
  readonly spares: number;
  /** Sewing machines and irons in the room. */
  readonly machines: number;
  readonly irons: number;
  readonly sessions: readonly PlannedSession[];
  /** In the order of the course. */
  readonly lessons: readonly PlannedLesson[];
  /** Stands under the cautions. */
  readonly defersTo: string;
};

/**
 * For the teacher: the sessions with their lessons, what is made in each and the minutes of both, what to prepare and to
 * show, and where it can hurt. The plan is that of planSessions, as on the page for a class and in the check.
 */
export function classPlan(plan: Plan, pattern: Pattern | undefined, setting: HandoutSetting): Handout {
  const type = typeOf(setting);
  const { makers, spares, machines, irons } = plan;
  const held = planSessions(pattern ? tasksOf(pattern) : [], {
    minutes: plan.sessions.map(({ minutes }) => minutes),
    lessons: plan.lessons,
    room: { makers, machines, irons },
  });
  const titles = held.sessions.map((_, i) => `${i + 1}. ${plan.sessions[i]?.title ?? 'Not planned yet'}`);
  const blocks: Block[] = [
    ...paragraph(plan.summary, type),
    ...paragraph(
      `Level: ${plan.level}. Planned for ${makers} makers at ${several(machines, 'machine')} and ` +
        `${several(irons, 'iron')}, with ${several(spares, 'set')} to spare.`,
      type,
    ),
    ...heading('Sessions', type),
    ...sessionsTable(titles, held, type),
    ...(pattern ? paragraph(oneMoreWords(held), type) : []),
    ...held.findings.flatMap(({ message, fix }) => paragraph([message, fix].filter(Boolean).join(' '), type)),
    ...heading('Prepare', type),
    ...prepare(plan, pattern).flatMap((sentence) => toTick(sentence, type)),
    ...held.sessions.flatMap((sitting, i) =>
      sessionBlocks(titles[i]!, sitting, plan, plan.sessions[i]?.begins, setting),
    ),
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

const several = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

function sessionsTable(titles: readonly string[], { sessions }: SessionPlan, type: Type): Block[] {
  return [
    ...table(
      [
        { title: 'Session', share: 3 },
        { title: 'Lessons', share: 3.4 },
        { title: 'Minutes', share: 1.3 },
        { title: 'Lessons take', share: 1.5 },
        { title: 'Making takes', share: 1.5 },
      ],
      sessions.map(({ lessons, minutes, taught, outlook }, i) =>
        row([
          titles[i]!,
          lessons.map(({ title, minutes: own }) => `${title} (${own})`).join(', '),
          String(minutes),
          String(taught),
          String(Math.ceil(outlook.most)),
        ]),
      ),
      type,
    ),
    ...paragraph(
      'The making takes until nine in ten makers are done, waiting at irons and machines counted in. ' +
        'Setting up and tidying up take 10 minutes of each session.',
      type,
      { size: type.small },
    ),
  ];
}

function prepare({ makers, spares, machines }: Plan, pattern: Pattern | undefined): string[] {
  const kit = pattern && kitFor(pattern, { makers, spares, machines });
  const rows = kit ? kit.lines.flatMap((line) => kitRows(line, pattern.edition)) : [];
  const { cut, done } = pattern ? prepared(pattern, { makers, spares }) : { cut: [], done: [] };
  return [
    ...rows.map(({ label, material, buy }) => `${label} (${material}): ${buy}.`),
    ...cut.map(({ label, count }) => `Cut ${count} of: ${label}.`),
    ...done.map(({ title, count }) => `${title}, ${count} times.`),
    'Print the templates at 100 % and measure the test square of one sheet.',
    `Print ${makers} worksheets for each lesson with questions: each maker gets another number than the neighbour.`,
    'Print the answer keys of the same numbers, for yourself.',
  ];
}

function sessionBlocks(
  title: string,
  sitting: PlannedSitting,
  plan: Plan,
  begins: string | undefined,
  setting: HandoutSetting,
): Block[] {
  const type = typeOf(setting);
  const { minutes, spare } = sitting;
  const lessons = plan.lessons.filter((lesson) => sitting.lessons.includes(lesson));
  const blocks = [...heading(`Session ${title}`, type)];
  const left = Math.floor(spare);
  const rest = left < 0 ? `that is ${-left} minutes too short` : `that leaves ${left} minutes for questions`;
  blocks.push(...paragraph(`${minutes} minutes: ${rest}.`, type, { keep: true }));
  const [until, what, taken, waits] = sessionHeads;
  blocks.push(
    ...table(
      [
        { title: until, share: 0.9 },
        { title: what, share: 4.6 },
        { title: taken, share: 1.1 },
        { title: waits, share: 3 },
      ],
      sessionLines(sitting, begins).map((line) => row([line.until, line.what, line.minutes, line.waiting])),
      type,
    ),
    ...paragraph(SESSION_NOTE, type, { size: type.small }),
  );
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
      blocks.push(...paragraph(plan.defersTo, type, { indent: 4, size: type.small }));
    }
  }
  return blocks;
}
