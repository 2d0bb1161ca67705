import { drawStep, makeUp, type Pattern, type Scene, type Step } from '../../../src/core/index.ts';
import { stepOf } from '../../compute/draw-step.ts';
import { low } from '../../compute/fit.ts';
import { oncePerGiven } from '../once.ts';
import { stepRow } from '../step/view.ts';

/** All steps, a row each, with the most layers of each, and the first one before it is done. */
export const view = oncePerGiven((pattern: Pattern, _: object) => {
  const made = makeUp(pattern);
  const [first] = made;
  return {
    steps: made.map(stepRow),
    layers: made.map(layersAfter),
    scene: first && drawPlaying(pattern, first.id, 0),
  };
});

/** The most layers after a step, and how many of them are interfacing, in a cell of a table: 14 (7). */
export const layersAfter = ({ layersMost, fusedMost }: Step): string =>
  fusedMost === 0 ? String(layersMost) : `${layersMost} (${fusedMost})`;

/** A step on its way: from 0, before, to 1, after. */
export function drawPlaying(pattern: Pattern, id: string, at: number): Scene | undefined {
  const step = stepOf(pattern, id);
  return step && drawStep(step, { ...pattern, fit: low(70), at });
}
