import { THIN } from '../measure/index.ts';
import { thicknessIn as thicknessOfRole } from '../project/steps/thickness.ts';
import type { PieceSetting } from './surface.ts';
import type { ThicknessOf } from '../cloth/layers.ts';

/** How thick one layer of a material is, as the shelf has it. */
export const thicknessIn = ({ materials = {} }: PieceSetting): ThicknessOf => thicknessOfRole({ materials });

/** Thickness is told in hundredths of a millimetre in every edition: no ruler has marks so fine. */
export const thin = (mm: number, unit = `${THIN}mm`): string => `${Math.round(mm * 100) / 100}${unit}`;
