/** How many pieces of hardware the steps use, and whether the file buys so many. */
import { bounds } from '../../geometry/index.ts';
import { ledgerOf } from './make-up.ts';
import { quote } from '../../measure/index.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Pattern } from '../pattern.ts';

/**
 * How many of a role are used: each that a step sets, and each zip that is cut as a piece. A snap or a magnet has two halves,
 * each set in a step of its own; a piece as narrow as one tape is half a zip. Where the shelf does not tell how wide a zip
 * is, each piece is taken for a whole one: nobody buys too few. 0 where nothing is known to use it.
 */
export function hardwareUsed(pattern: Pattern, role: string): number {
  const { hardware, across } = pattern.materials[role]?.material ?? {};
  if (hardware === undefined) return 0;
  if (hardware === 'zip') {
    const zips = Object.values(pattern.pieces).filter(({ material }) => material === role);
    const tapes = zips.map(({ cutOutline, count }) => {
      const { width, height } = bounds(cutOutline);
      return across === undefined || Math.min(width, height) >= (across * 3) / 4 ? 2 * count : count;
    });
    return Math.ceil(tapes.reduce((sum, one) => sum + one, 0) / 2);
  }
  if (!pattern.making) return 0;
  const set = ledgerOf(pattern).steps.reduce(
    (sum, { instruction, times }) => sum + (instruction.verb === 'attach' && instruction.attach === role ? times : 0),
    0,
  );
  return hardware === 'snap' || hardware === 'magnet' ? Math.ceil(set / 2) : set;
}

/** Hardware of which the file buys fewer than the steps use. */
export const checkCounts = (pattern: Pattern): Diagnostic[] =>
  Object.values(pattern.materials).flatMap(({ role, count, label, material }): Diagnostic[] => {
    // Its pieces may be halves, and then what the file says is right.
    if (material?.hardware === 'zip' && material.across === undefined) return [];
    const used = hardwareUsed(pattern, role);
    if (count === undefined || used <= count) return [];
    const message = `${used} ${quote(label)} are used, and the shopping list has ${count}.`;
    const fix = `Write “count: ${used}”, or leave “count” out: what is used is counted.`;
    return [
      { severity: 'warning', place: ['materials', role, 'count'], code: 'too-few', message, fix, amount: used - count },
    ];
  });
