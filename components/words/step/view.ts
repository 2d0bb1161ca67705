import type { Pattern } from '../../../src/core/index.ts';
import { draw, tellStep } from '../../compute/telling.ts';
import type { Attributes } from './word.ts';

/** The step and its drawing; both undefined where an option leaves it out. */
export const view = (pattern: Pattern, { id }: Attributes) => ({
  scene: draw(pattern, id),
  step: tellStep(pattern, id),
});
