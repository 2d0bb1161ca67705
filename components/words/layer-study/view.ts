import { thicknessIn, type Pattern } from '../../../src/core/index.ts';
import { stepOf } from '../../compute/draw-step.ts';
import { oncePerGiven } from '../once.ts';
import { roundOf } from './layers-on-sheet.ts';
import { drawLayers, placesOf, type LayerPlace } from './layers.ts';
import type { Attributes } from './word.ts';

/** The layers of the work after the step, the first place marked; no scene where an option leaves the step out. */
export const view = oncePerGiven((pattern: Pattern, { step: id }: Attributes) => {
  const step = stepOf(pattern, id);
  const drawn = step && drawLayers(step, pattern, thicknessIn(pattern));
  return {
    makes: step?.makes ?? id,
    scene: drawn && { ...drawn.scene, shapes: [...drawn.scene.shapes, roundOf(drawn, 1)] },
    places: placesAfter(pattern, id),
  };
});

/** The places of the work after a step, without their regions, which only a drawing needs. */
export function placesAfter(pattern: Pattern, id: string): LayerPlace[] {
  const step = stepOf(pattern, id);
  return step ? placesOf(step).map(({ n, at, stack, share, sewn }) => ({ n, at, stack, share, sewn })) : [];
}
