import { thicknessIn, type Pattern } from '../../../src/core/index.ts';
import { drawLayers, stepOf, tellPlaces } from '../../compute/telling.ts';
import { roundOf } from './layers-on-sheet.ts';
import { pack } from './packed-places.ts';
import { oncePerGiven } from '../once.ts';
import type { Attributes } from './word.ts';

/** The layers of the work after the step, the first place marked; no scene where an option leaves the step out. */
export const view = oncePerGiven((pattern: Pattern, { step: id }: Attributes) => {
  const step = stepOf(pattern, id);
  const drawn = step && drawLayers(step, pattern, thicknessIn(pattern));
  return {
    makes: step?.makes ?? id,
    scene: drawn && { ...drawn.scene, shapes: [...drawn.scene.shapes, roundOf(drawn, 1)] },
    places: pack(tellPlaces(pattern, id)),
  };
});
