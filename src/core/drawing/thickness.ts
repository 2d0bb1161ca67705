import { THIN } from '../measure/index.ts';
import type { PieceSetting } from './surface.ts';
import type { ThicknessOf } from '../cloth/layers.ts';

/** A woven quilting cotton, about (from memory): for cloth of which nobody says how thick it is. */
export const COTTON = 0.3;

/** How thick one layer of a material is, as the shelf has it. */
export const thicknessIn =
  ({ materials = {} }: PieceSetting): ThicknessOf =>
  (material) =>
    materials[material]?.material?.thickness ?? COTTON;

/** Thickness is told in hundredths of a millimetre in every edition: no ruler has marks so fine. */
export const thin = (mm: number, unit = `${THIN}mm`): string => `${Math.round(mm * 100) / 100}${unit}`;
