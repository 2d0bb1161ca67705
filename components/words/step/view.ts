import {
  check,
  makeUp,
  oncePer,
  sayIron,
  saySewing,
  type Diagnostic,
  type Minutes,
  type Pattern,
  type Size,
  type Step,
  type Timer,
} from '../../../src/core/index.ts';
import { draw } from '../../compute/draw-step.ts';
import { cautions } from '../caution/cautions.ts';
import type { Attributes } from './word.ts';

/** All that a page shows of a step in words; lengths in mm. It travels with the page, so that nothing is made up to read it. */
export type StepFacts = {
  id: string;
  /** Its number among the steps that are done, from 1, and how many there are. */
  n: number;
  of: number;
  /** A sentence without its full stop. */
  title: string;
  /** The name of its result. */
  makes: string;
  /** What it measures after the step, and the depth of what stands. */
  size: Size;
  depth: number;
  minutes: Minutes;
  tools: string[];
  /** How the machine is set for what it sews. */
  sewing?: ReturnType<typeof saySewing>;
  /** What is waited for at the iron. */
  timers: Timer[];
  /** How hot an iron may be, and for what. */
  iron?: string;
  /** Where it can hurt: of each usual caution its title and its first sentence. */
  hurts: { title: string; sentence: string }[];
  note?: string;
  /** The author's words on how it looks when it is right, and on what to do if it went wrong. */
  shouldLook?: string;
  ifWrong?: string;
  /** What to mind of the turn of cloth. */
  advice?: string;
  findings: Pick<Diagnostic, 'severity' | 'message' | 'fix'>[];
};

/** A row of the table of all steps. */
export type StepRow = Pick<StepFacts, 'id' | 'title' | 'makes' | 'size' | 'depth' | 'minutes'>;

/** The step and its drawing; both undefined where an option leaves it out. */
export const view = (pattern: Pattern, { id }: Attributes) => ({
  scene: draw(pattern, id),
  step: stepFacts(pattern, id),
});

/** A step in words; undefined where an option leaves it out. */
export const stepFacts = oncePer((pattern: Pattern, id: string): StepFacts | undefined => {
  const steps = makeUp(pattern);
  const i = steps.findIndex((one) => one.id === id);
  const step = steps[i];
  if (!step) return undefined;
  const { minutes, tools, sewing, timers, iron, note, shouldLook, ifWrong, advice } = step;
  const hurts = step.cautions.flatMap((key) => {
    const { title, sentences: [sentence = ''] = [] } = cautions[key] ?? {};
    return title === undefined ? [] : [{ title, sentence }];
  });
  return {
    ...stepRow(step),
    ...{ n: i + 1, of: steps.length, minutes, tools, timers, hurts },
    ...(sewing && { sewing: saySewing(sewing, pattern.edition) }),
    ...(iron && { iron: `${sayIron(iron.celsius)} (${iron.material})` }),
    ...(note !== undefined && { note }),
    ...(shouldLook !== undefined && { shouldLook }),
    ...(ifWrong !== undefined && { ifWrong }),
    ...(advice !== undefined && { advice }),
    findings: findingsOf(pattern, step),
  };
});

/** A step as a row of the table. */
export const stepRow = ({ id, title, makes, size, depth, minutes }: Step): StepRow => ({
  ...{ id, title, makes, size, depth, minutes },
});

const checked = oncePer((pattern: Pattern) => check(pattern));

/** What goes wrong in a step at this size. Notes are for the author. */
function findingsOf(pattern: Pattern, { place }: Step): StepFacts['findings'] {
  return checked(pattern)
    .filter(({ severity, place: at }) => severity !== 'note' && at[0] === place[0] && at[1] === place[1])
    .map(({ severity, message, fix }) => ({ severity, message, ...(fix !== undefined && { fix }) }));
}
