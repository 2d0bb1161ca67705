import { lengthWriter } from '../drawing/lengths.ts';
import { drawStep } from '../drawing/step.ts';
import { blank, figure, paragraph, together, toTick } from './blocks.ts';
import { flow } from './flow.ts';
import { madeAs } from './handout.ts';
import { POINT, typeOf } from './type.ts';
import { saySewing, type Sewing } from '../project/sewing.ts';
import { verbNamed } from '../steps/index.ts';
import type { Pattern } from '../project/pattern.ts';
import type { CautionKey } from '../steps/index.ts';
import type { Step } from '../project/step.ts';
import type { CautionWords } from './class-plan.ts';
import type { Block } from './flow.ts';
import type { Handout, HandoutSetting } from './handout.ts';
import type { Type } from './type.ts';

export type StepWords = {
  /** The usual words for what can hurt. */
  readonly cautions: Readonly<Partial<Record<CautionKey, CautionWords>>>;
  /** Stands before the steps, once. */
  readonly defersTo: string;
  /** Where each step is shown in a recording, by its id: “from 1:35 to 2:10”. */
  readonly times?: (() => Readonly<Record<string, string>>) | undefined;
};

/** The steps in order, each with its drawing, what the work measures now, where it can hurt, and a box to tick. */
export function stepSheet(
  steps: readonly Step[],
  pattern: Pattern,
  words: StepWords,
  setting: HandoutSetting,
): Handout {
  const type = typeOf(setting);
  const times = words.times?.() ?? {};
  const nothing = 'This project has no steps yet, so there is nothing to print.';
  const blocks = [
    ...(steps.some(({ cautions }) => cautions.length > 0) ? paragraph(words.defersTo, type, { size: type.small }) : []),
    ...steps.flatMap((step, i) => stepBlocks(step, i + 1, pattern, words, type, times[step.id])),
  ];
  return {
    name: 'step-sheet',
    title: `${pattern.title}: steps`,
    language: setting.language ?? 'en',
    reader: 'maker',
    paper: setting.paper,
    pages: flow(
      steps.length === 0 ? paragraph(nothing, type) : blocks,
      { title: 'Step by step', project: madeAs(pattern), edition: pattern.edition },
      setting,
    ),
    findings: steps.length === 0 ? [nothing] : [],
  };
}

/** What is drawn to scale in a step is not higher, in mm: two steps to a page. */
const HIGHEST = 40;
/** Pleats are folded in a long strip, whose fold lines must be told apart: so high on paper, in large print too. */
const HIGHEST_PLEATS = 95;

/** Read from 60 cm: 13 pt, or what large print has. */
const readFar = (type: Type): number => Math.max(13 * POINT, type.text);

function stepBlocks(
  step: Step,
  number: number,
  pattern: Pattern,
  words: StepWords,
  type: Type,
  time: string | undefined,
): Block[] {
  const { set } = lengthWriter(pattern);
  const size = readFar(type);
  const indent = 1.9 * size;
  const { width, height } = step.size;
  const highest = verbNamed(step.verb).pleats ? HIGHEST_PLEATS / type.drawing : HIGHEST;
  const fit = { width: (type.width - indent) / type.drawing, height: highest };
  const scene = drawStep(step, { edition: pattern.edition, grid: pattern.grid, materials: pattern.materials, fit });
  const facts = [`about ${Math.max(1, Math.round(step.minutes.value))} min`, ...step.tools];
  const told = (title: string, text: string | undefined): Block[] =>
    text === undefined ? [] : paragraph(`${title}: ${text}`, type, { size, indent, after: 0.2 * size });
  const parts: Block[] = [
    ...toTick(`${number}.  ${step.title}.`, type, { size, strong: true }),
    figure(scene, indent, type, `step ${number}`),
    ...(step.note === undefined ? [] : paragraph(step.note, type, { size, indent, after: 0.2 * size })),
    ...(step.advice === undefined ? [] : paragraph(step.advice, type, { size, indent, after: 0.2 * size })),
    ...paragraph(`Now measures ${set(width)} × ${set(height)}.`, type, { indent, strong: true, after: 0.1 * size }),
    ...paragraph(`${facts.join(' · ')}.`.replace(/^a/, 'A'), type, { indent, after: 0.2 * size }),
    ...(step.sewing ? paragraph(machineSet(step.sewing, pattern), type, { indent, after: 0.2 * size }) : []),
    ...(time === undefined ? [] : paragraph(`In the recording ${time}.`, type, { indent, after: 0.2 * size })),
    ...step.cautions.flatMap((key) => {
      const caution = words.cautions[key];
      const text = `${caution?.title}: ${caution?.sentences[0] ?? ''}`;
      return caution ? paragraph(text, type, { indent, after: 0.2 * size }) : [];
    }),
    ...told('How it should look', step.shouldLook),
    ...told('If it went wrong', step.ifWrong),
  ];
  // A step is never divided: who turns the page has both hands at the machine.
  return [...together(parts.slice(0, -1)), ...parts.slice(-1), blank(0.8 * size)];
}

/** How the machine is set, in one sentence. */
function machineSet(sewing: Sewing, { edition }: Pattern): string {
  const { stitch, needle, foot } = saySewing(sewing, edition);
  const said = [stitch, ...(needle === undefined ? [] : [`needle ${needle}`]), ...(foot === undefined ? [] : [foot])];
  return `Machine: ${said.join(' · ')}.`;
}
