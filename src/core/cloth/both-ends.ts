/** A strap bent so that both its ends lie side by side. */
import { boxOf } from './size.ts';
import { fail, SAME } from '../measure/index.ts';
import { fold } from './fold.ts';
import { rotate } from './move.ts';
import type { Sewn, Work } from './work.ts';

/**
 * Folds a strap twice over a corner, so that both its ends point up, right side up, with their outer sides so far apart. It
 * is as a strap lies flat whose ends are caught in one seam; nothing holds the folds, and it hangs free between its ends.
 *
 * Faults: `too-deep` where the strap is too short to reach, or too wide to turn; those of folding.
 *
 * @param apart from the outer side of one end to that of the other, in mm
 * @example
 * size(bothEndsUp(strap, 180)) // a strap of 560 x 25 mm => { width: 180, height: 215 }
 */
export function bothEndsUp(strap: Work, apart: number): Sewn {
  const lying = boxOf(strap.plies);
  const upright = lying.width > lying.height ? rotate(strap, 90) : { ok: true as const, value: strap };
  if (!upright.ok) return upright;
  const { x, y, width, height } = boxOf(upright.value.plies);
  const between = apart - width;
  // Along its middle the strap goes down, across and up again.
  const down = (height - between) / 2;
  if (!(between >= width - SAME)) {
    const message = 'The ends would lie so near to one another that the strap could not turn between them.';
    return fail({
      code: 'too-deep',
      message,
      field: 'both ends',
      amount: width - between,
      fix: 'Make “both ends” smaller.',
    });
  }
  if (!(down > width / 2 + SAME)) {
    const message = 'The strap is too short: its ends do not reach so far apart.';
    return fail({
      code: 'too-deep',
      message,
      field: 'both ends',
      amount: width / 2 - down,
      fix: 'Make “both ends” larger, or the strap longer.',
    });
  }
  const corner = { x: x + width / 2, y: y + height - down };
  const across = fold(upright.value, { line: { at: corner, angle: 315 }, lands: 'over', name: 'strap' });
  if (!across.ok) return across;
  const far = { x: corner.x + between, y: corner.y };
  return fold(across.value, { line: { at: far, angle: 45 }, lands: 'over', name: 'strap' });
}
