import { lengthWriter } from '../drawing/lengths.ts';
import { drawStep } from '../drawing/step.ts';
import { beside, blank, figure, paragraph, together, toTick } from './blocks.ts';
import { clothWords } from '../drawing/surface.ts';
import { drawLegend } from '../drawing/legend.ts';
import { flow } from './flow.ts';
import { madeAs } from './handout.ts';
import { POINT, typeOf } from './type.ts';
import { saySewing, type Sewing } from '../project/sewing.ts';
import { verbNamed } from '../steps/index.ts';
import type { Scene } from '../drawing/scene.ts';
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
  const scenes = steps.map((step) => drawingOf(step, pattern, type));
  const blocks = [
    ...(steps.some(({ cautions }) => cautions.length > 0) ? paragraph(words.defersTo, type, { size: type.small }) : []),
    ...(isWide(type) ? legendBlocks(scenes, pattern, type) : []),
    ...steps.flatMap((step, i) =>
      stepBlocks(step, { number: i + 1, scene: scenes[i]!, time: times[step.id] }, pattern, words, type),
    ),
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

/** What is drawn to scale in a step is not higher, in mm: four steps to a page, or two in large print. */
const HIGHEST = 40;
const HIGHEST_LARGE = 40;
/** Pleats are folded in a long strip, whose fold lines must be told apart: so high on paper, in large print too. */
const HIGHEST_PLEATS = 95;
/** The width of a drawing that stands beside its text, and between both, in mm. */
const [PICTURE, GUTTER] = [88, 5];
/** A step with more text than this, in mm, has it under its drawing. */
const TALLEST = 200;

/** Read from 60 cm: 13 pt, or what large print has. */
const readFar = (type: Type): number => Math.max(13 * POINT, type.text);

/** Whether there is room for text beside a drawing. */
const isWide = ({ drawing }: Type): boolean => drawing === 1;

function drawingOf(step: Step, pattern: Pattern, type: Type): Scene {
  const { edition, grid, materials } = pattern;
  const highest = isWide(type) ? HIGHEST : HIGHEST_LARGE;
  const height = verbNamed(step.verb).pleats ? HIGHEST_PLEATS / type.drawing : highest;
  const width = isWide(type) ? PICTURE : (type.width - indentOf(type)) / type.drawing;
  return drawStep(step, { edition, grid, materials, fit: { width, height }, explained: isWide(type) });
}

const indentOf = (type: Type): number => 1.9 * readFar(type);

/** What the lines of all drawings mean, once; in large print each drawing says it. */
function legendBlocks(scenes: readonly Scene[], pattern: Pattern, type: Type): Block[] {
  const legend = drawLegend(scenes, clothWords(pattern.materials), type.width / type.drawing);
  return [figure(legend, 0, type, 'legend'), blank(0.5 * type.text)];
}

function stepBlocks(
  step: Step,
  { number, scene, time }: { number: number; scene: Scene; time: string | undefined },
  pattern: Pattern,
  words: StepWords,
  type: Type,
): Block[] {
  const size = readFar(type);
  const left = indentOf(type);
  const title = toTick(`${number}.  ${step.title}.`, type, { size, strong: true });
  const picture = (indent: number) => figure(scene, indent, type, `step ${number}`);
  if (isWide(type)) {
    const at = left + PICTURE + GUTTER;
    const told = textBlocks(step, { indent: 0, time }, pattern, words, { ...type, width: type.width - at });
    const both = beside([picture(left)], told, at);
    if (both.height < TALLEST) return [...together(title), both, blank(0.8 * size)];
  }
  const parts = [...title, picture(left), ...textBlocks(step, { indent: left, time }, pattern, words, type)];
  // A step is never divided: who turns the page has both hands at the machine.
  return [...together(parts.slice(0, -1)), ...parts.slice(-1), blank(0.8 * size)];
}

/** What stands beside the drawing of a step, or under it. */
function textBlocks(
  step: Step,
  { indent, time }: { indent: number; time: string | undefined },
  pattern: Pattern,
  words: StepWords,
  type: Type,
): Block[] {
  const { set } = lengthWriter(pattern);
  const size = readFar(type);
  const { width, height } = step.size;
  const facts = [`about ${Math.max(1, Math.round(step.minutes.value))} min`, ...step.tools];
  const told = (title: string, text: string | undefined): Block[] =>
    text === undefined ? [] : paragraph(`${title}: ${text}`, type, { size, indent, after: 0.2 * size });
  return [
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
}

/** How the machine is set, in one sentence. */
function machineSet(sewing: Sewing, { edition }: Pattern): string {
  const { stitch, needle, foot } = saySewing(sewing, edition);
  const said = [stitch, ...(needle === undefined ? [] : [`needle ${needle}`]), ...(foot === undefined ? [] : [foot])];
  return `Machine: ${said.join(' · ')}.`;
}
