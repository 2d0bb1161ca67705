/** Steps and drawings of the making, for the worker. */
import { layersSaid, makeUp, thicknessIn, type Pattern, type Scene } from '../../src/core/index.ts';
import { pointingAfter } from '../words/ask-side/view.ts';
import { drawDrifted } from '../words/drift-study/draw.ts';
import { drawApart, drawCut, drawLayers } from '../words/layer-study/layers.ts';
import { placesAfter } from '../words/layer-study/view.ts';
import { drawPlaying, layersAfter } from '../words/make-up/view.ts';
import { drawSeam } from '../words/seam-study/seam.ts';
import { stepFacts } from '../words/step/view.ts';
import { draw, drawIn, drawWhole, stepOf } from './draw-step.ts';
import type { Handler } from './serve-requests.ts';
import type { Drawing, Drawn } from './protocol.ts';

export const steps: Handler<'steps'> = (pattern) => makeUp(pattern).flatMap(({ id }) => stepFacts(pattern, id) ?? []);

/** How often an unfinished set of drawings is sent: each time there are twice as many. */
const isPowerOfTwo = (n: number): boolean => (n & (n - 1)) === 0;

export const allOfIt: Handler<'making'> = async (pattern, { fit, first }, { send, pause }) => {
  const facts = makeUp(pattern).flatMap(({ id }) => stepFacts(pattern, id) ?? []);
  const from = Math.max(
    0,
    facts.findIndex(({ id }) => id === first),
  );
  const drawings: Record<string, Scene> = {};
  // From the step that is looked at onwards, then what came before it.
  for (const [i, { id }] of [...facts.slice(from), ...facts.slice(0, from)].entries()) {
    const scene = drawIn(pattern, id, fit);
    if (scene) drawings[id] = scene;
    if (isPowerOfTwo(i + 1)) send({ steps: facts, drawings: { ...drawings }, isWhole: false });
    await pause();
  }
  return { steps: facts, drawings, isWhole: true };
};

/** Counting takes longer than all the rest of a step. */
export const layerCounts: Handler<'layer counts'> = async (pattern, _, { pause }) => {
  const counts: string[] = [];
  for (const step of makeUp(pattern)) {
    counts.push(layersAfter(step));
    await pause();
  }
  return counts;
};

export const layersInProse: Handler<'layers said'> = (pattern, { asked }) =>
  asked.map((text) => layersSaid(text, pattern));

export const places: Handler<'places'> = (pattern, { step }) => placesAfter(pattern, step);

export const pointing: Handler<'pointing'> = (pattern, { step, side, shows }) =>
  pointingAfter(pattern, step, side, shows);

export const drawing: Handler<'drawing'> = (pattern, { drawing }) => drawn(pattern, drawing);

function drawn(pattern: Pattern, drawing: Drawing): Drawn | undefined {
  if (drawing.of === 'seam') return only(drawSeam(drawing.sizes, drawing.press, pattern));
  if (drawing.of === 'drift') return only(drawDrifted(drawing.drift, pattern));
  if (drawing.of === 'whole') return only(drawWhole(pattern));
  const { of, id } = drawing;
  if (of === 'step') return only(draw(pattern, id));
  if (of === 'play') return only(drawPlaying(pattern, id, drawing.at));
  const step = stepOf(pattern, id);
  if (!step) return undefined;
  if (of === 'layers apart') return only(drawApart(step, pattern));
  const own = thicknessIn(pattern);
  const thickness = (role: string): number => drawing.thickness[role] ?? own(role);
  return of === 'cut' ? only(drawCut(step, pattern, drawing.place, thickness)) : drawLayers(step, pattern, thickness);
}

const only = (scene: Drawn['scene'] | undefined): Drawn | undefined => scene && { scene };
