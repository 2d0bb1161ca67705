import { layersSaid, type Pattern } from '../../../src/core/index.ts';
import { showQuantity, valueOf } from '../../page/quantity.ts';
import type { Attributes } from './word.ts';

/** The size as a sentence shows it, or the most layers of a step in words. */
export function view(pattern: Pattern, { of }: Attributes): { text: string; isLayers: boolean } {
  const layers = layersSaid(of, pattern);
  return { text: layers ?? showQuantity(valueOf(of, pattern), pattern), isLayers: layers !== undefined };
}
