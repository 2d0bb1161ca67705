import type { Pattern } from '../../../src/core/index.ts';
import { oncePerGiven } from '../once.ts';
import { layersMost, play, tellAll } from '../../compute/telling.ts';

/** All steps, a line each, with the most layers of each, and the first one before it is done. */
export const view = oncePerGiven((pattern: Pattern, _: object) => {
  const steps = tellAll(pattern);
  const layers = steps.map(({ id }) => layersMost(pattern, id));
  return { steps, layers, scene: steps[0] && play(pattern, steps[0].id, 0) };
});
