import type { Edition } from '../measure/index.ts';
import type { Quantity } from '../formula/index.ts';

/** The units that are taken for each other at a sewing table: mm in one, the mark read from it, its edition. */
const units = [
  { name: 'inches', mm: 25.4, mark: 1 / 16, edition: 'inch' },
  { name: 'centimetres', mm: 10, mark: 0.1, edition: 'metric' },
  { name: 'millimetres', mm: 1, mark: 1, edition: 'metric' },
] as const;
export type UnitName = (typeof units)[number]['name'];

/** A number that lies in the middle between two marks may have been read as either. */
const HAIR = 1e-6;

export type UnitSlip = { meant: UnitName; read: UnitName; value: number; within: number };

/**
 * What becomes of a right length or area when its number is in one unit and is read in another.
 *
 * `within` is half a mark of the ruler that the number came from, as it was then read. In one edition only its own
 * units come to be read, for that is what a bare number means; a unit that was written is understood in any.
 *
 * @example unitSlips({ value: 114.3, dimension: 1 }, 'inch')[0] // => { meant: 'centimetres', read: 'inches', value: 290.322, … }
 */
export function unitSlips({ value, dimension }: Quantity, edition?: Edition): UnitSlip[] {
  if (dimension === 0) return [];
  return units.flatMap((read) =>
    units.flatMap((meant): UnitSlip[] => {
      if (meant === read || (edition !== undefined && edition !== read.edition && edition !== meant.edition)) return [];
      const wrong = value * (read.mm / meant.mm) ** dimension;
      const within = dimension === 1 ? (meant.mark / 2) * read.mm + HAIR : 0.02 * wrong;
      return [{ meant: meant.name, read: read.name, value: wrong, within }];
    }),
  );
}
