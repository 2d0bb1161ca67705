import { writer } from '../drawing/lengths.ts';
import { blank, figure, paragraph, together, toTick } from './blocks.ts';
import { flow } from './flow.ts';
import { POINT, typeOf } from './type.ts';
import type { Scene } from '../drawing/scene.ts';
import type { Pattern } from '../project/pattern.ts';
import type { CautionKey, Step } from '../project/step.ts';
import type { CautionWords } from './class-plan.ts';
import type { Block } from './flow.ts';
import type { Handout, Setting } from './handout.ts';
import type { Type } from './type.ts';

export type StepWords = {
  /** The usual words for what can hurt. */
  readonly cautions: Readonly<Partial<Record<CautionKey, CautionWords>>>;
  /** Stands under the cautions, once. */
  readonly defersTo: string;
  /** The drawing of a step in a room of some width. */
  draw?(step: Step, width: number): Scene | undefined;
};

/** The steps in order, each with its drawing, what the work measures now, where it can hurt, and a box to tick. */
export function stepSheet(steps: readonly Step[], pattern: Pattern, words: StepWords, setting: Setting): Handout {
  const type = typeOf(setting);
  const nothing = 'This project has no steps yet, so there is nothing to print.';
  const blocks = steps.flatMap((step, i) => stepBlocks(step, i + 1, pattern, words, type));
  if (steps.some(({ cautions }) => cautions.length > 0))
    blocks.push(...paragraph(words.defersTo, type, { size: type.small }));
  return {
    name: 'step-sheet',
    title: `${pattern.title}: steps`,
    language: setting.language ?? 'en',
    reader: 'maker',
    paper: setting.paper,
    pages: flow(
      steps.length === 0 ? paragraph(nothing, type) : blocks,
      { title: 'Step by step', project: pattern.title, edition: pattern.edition },
      setting,
    ),
    findings: steps.length === 0 ? [nothing] : [],
  };
}

/** Read from 60 cm: 13 pt, or what large print has. */
const readFar = (type: Type): number => Math.max(13 * POINT, type.text);

function stepBlocks(step: Step, number: number, pattern: Pattern, words: StepWords, type: Type): Block[] {
  const { set } = writer(pattern);
  const size = readFar(type);
  const indent = 1.9 * size;
  const { width, height } = step.size;
  const scene = words.draw?.(step, (type.width - indent) / type.drawing);
  const facts = [`about ${Math.max(1, Math.round(step.minutes.value))} min`, ...step.tools];
  return [
    ...together(toTick(`${number}.  ${step.title}.`, type, { size, strong: true })),
    ...(scene ? together([figure(scene, indent, type, `step ${number}`)]) : []),
    ...(step.note === undefined ? [] : paragraph(step.note, type, { size, indent, after: 0.2 * size })),
    ...paragraph(`Now measures ${set(width)} × ${set(height)}.`, type, { indent, strong: true, after: 0.1 * size }),
    ...paragraph(`${facts.join(' · ')}.`.replace(/^a/, 'A'), type, { indent, after: 0.2 * size }),
    ...step.cautions.flatMap((key) => {
      const caution = words.cautions[key];
      return caution
        ? paragraph(`${caution.title}: ${caution.sentences[0] ?? ''}`, type, { indent, after: 0.2 * size })
        : [];
    }),
    blank(0.8 * size),
  ];
}
