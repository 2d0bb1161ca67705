/** Places as a page carries them: of the many layers in them few differ, and each of those is written once. */
import type { LayerPlace } from '../../compute/step-types.ts';

export type PackedPlaces = {
  layers: LayerPlace['stack'];
  /** The layers of a stack by their number in `layers`. */
  places: (Omit<LayerPlace, 'stack'> & { stack: number[] })[];
};

export function pack(places: readonly LayerPlace[]): PackedPlaces {
  const numbers = new Map<string, number>();
  const layers: PackedPlaces['layers'] = [];
  const numberOf = (layer: PackedPlaces['layers'][number]) => {
    const key = JSON.stringify(layer);
    let number = numbers.get(key);
    if (number === undefined) numbers.set(key, (number = layers.push(layer) - 1));
    return number;
  };
  return { places: places.map((place) => ({ ...place, stack: place.stack.map(numberOf) })), layers };
}

export const unpack = ({ places, layers }: PackedPlaces): LayerPlace[] =>
  places.map((place) => ({ ...place, stack: place.stack.map((number) => layers[number]!) }));
