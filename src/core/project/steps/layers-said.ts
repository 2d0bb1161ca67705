/** How many layers lie on one another where they are most, as the prose of a lesson asks for it. */
import { layersInWords } from '../../cloth/layers.ts';
import { plainName } from '../../measure/index.ts';
import { makeUp } from './make-up.ts';
import type { Pattern } from '../pattern.ts';

/** What stands for all steps together. */
export const ALL_STEPS = 'the project';

/**
 * Whose layers a text asks for: a step by its id, or all of them; undefined for any other text.
 *
 * @example layersAsked('layers of sew-round') // => 'sew-round'
 */
export const layersAsked = (text: string): string | undefined => /^layers of (.+)$/iu.exec(text.trim())?.[1];

/**
 * The most layers that a step leaves in one place, in words. Undefined where the text asks for no layers, where a measure
 * of the project has that name, and where an option leaves the step out.
 *
 * @example layersSaid('layers of sew-round', pattern) // => '14 layers, 6 of them interfacing'
 */
export function layersSaid(text: string, pattern: Pattern): string | undefined {
  const asked = layersAsked(text);
  if (asked === undefined || Object.hasOwn(pattern.measures, text)) return undefined;
  const whose = plainName(asked);
  const steps = makeUp(pattern).filter(({ id }) => whose === ALL_STEPS || plainName(id) === whose);
  if (steps.length === 0) return undefined;
  const { layersMost: layers, fusedMost: fused } = steps.reduce((most, one) =>
    one.layersMost > most.layersMost ? one : most,
  );
  return layersInWords({ layers, fused });
}
