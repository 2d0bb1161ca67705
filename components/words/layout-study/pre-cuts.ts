/** Cloth that is sold ready cut. */
import type { Edition } from '../../../src/core/index.ts';

/** `width` is across, from selvage to cut edge, `length` along the selvage; usable, in mm. */
export type PreCut = { key: string; label: string; width: number; length: number };

const inch = (inches: number): number => 25.4 * inches;

/**
 * A fat quarter is half a yard cut in two across: 18 x 22 in (46 x 56 cm), of which 21 in are usable beside the selvage;
 * a quarter yard is 9 x 44 in (23 x 112 cm) (quilterbee; Narnies Quilts). A fat eighth is 9 x 22 in
 * (measuringhow.com). That the others lose as much to the selvage is common practice, no source.
 */
export const preCuts: Readonly<Record<Edition, readonly PreCut[]>> = {
  inch: [
    { key: 'fat-quarter', label: 'fat quarter, 18 × 21 in', width: inch(21), length: inch(18) },
    { key: 'fat-eighth', label: 'fat eighth, 9 × 21 in', width: inch(21), length: inch(9) },
    { key: 'quarter-yard', label: 'quarter yard, 9 × 42 in', width: inch(42), length: inch(9) },
  ],
  metric: [
    { key: 'fat-quarter', label: 'fat quarter, 46 × 53 cm', width: 530, length: 460 },
    { key: 'fat-eighth', label: 'fat eighth, 23 × 53 cm', width: 530, length: 230 },
    { key: 'quarter-yard', label: 'quarter, 23 × 107 cm', width: 1070, length: 230 },
  ],
};
