/** What is told and drawn of the making. */
import {
  check,
  drawDrift,
  drawStep,
  makeUp,
  oncePer,
  pointAtVisible,
  type Drift,
  type Pattern,
  type Pointing,
  type Scene,
  type Step,
} from '../../src/core/index.ts';
import { cautions } from '../words/caution/cautions.ts';
import { stepOf } from './draw-step.ts';
import { low } from './fit.ts';
import { placesOf } from '../words/layer-study/layers.ts';
import { FINE } from '../words/drift-study/sums.ts';
import type { StepRow, LayerPlace, StepFacts } from './step-types.ts';

export { draw, stepOf } from './draw-step.ts';
export { drawApart, drawCut, drawLayers } from '../words/layer-study/layers.ts';
export { drawSeam } from '../words/seam-study/seam.ts';

/** All that a page tells of a step. */
export const tellStep = oncePer((pattern: Pattern, id: string): StepFacts | undefined => {
  const steps = makeUp(pattern);
  const i = steps.findIndex((one) => one.id === id);
  const step = steps[i];
  if (!step) return undefined;
  const { minutes, tools, iron, note } = step;
  const hurts = step.cautions.flatMap((key) => {
    const { title, sentences: [sentence = ''] = [] } = cautions[key] ?? {};
    return title === undefined ? [] : [{ title, sentence }];
  });
  return {
    ...lineOf(step),
    ...{ n: i + 1, of: steps.length, minutes, tools, hurts },
    ...(iron && { iron }),
    ...(note !== undefined && { note }),
    findings: findingsOf(pattern, step),
  };
});

/** The steps in order, a line each. */
export const tellAll = (pattern: Pattern): StepRow[] => makeUp(pattern).map(lineOf);

const lineOf = ({ id, title, makes, size, depth, minutes }: Step): StepRow => ({
  ...{ id, title, makes, size, depth, minutes },
});

/** How many layers lie on each other after a step; slow enough not to be asked while a slider moves. */
export const layersMost = (pattern: Pattern, id: string): number => stepOf(pattern, id)?.layersMost ?? 0;

/** The places of the work after a step, as a page carries them. */
export function tellPlaces(pattern: Pattern, id: string): LayerPlace[] {
  const step = stepOf(pattern, id);
  return step ? placesOf(step).map(({ n, at, stack, share, sewn }) => ({ n, at, stack, share, sewn })) : [];
}

/** What shows of the work after a step, to be pointed at. */
export function tellShowing(pattern: Pattern, id: string, side: 'front' | 'back', shows: string): Pointing | undefined {
  const step = stepOf(pattern, id);
  return step && pointAtVisible(step.after, side, shows, pattern);
}

/** A step on its way: from 0, before, to 1, after. */
export function play(pattern: Pattern, id: string, at: number): Scene | undefined {
  const step = stepOf(pattern, id);
  return step && drawStep(step, { ...pattern, fit: low(70), at });
}

/** A finished width as meant and as sewn. */
export const drawDrifted = (drift: Drift, { edition }: Pick<Pattern, 'edition'>): Scene =>
  drawDrift(drift, { edition, grid: FINE, fit: low(40) });

const checked = oncePer((pattern: Pattern) => check(pattern));

/** What goes wrong in a step at this size. Notes are for the author. */
function findingsOf(pattern: Pattern, { place }: Step): StepFacts['findings'] {
  return checked(pattern)
    .filter(({ severity, place: at }) => severity !== 'note' && at[0] === place[0] && at[1] === place[1])
    .map(({ severity, message, fix }) => ({ severity, message, ...(fix !== undefined && { fix }) }));
}
