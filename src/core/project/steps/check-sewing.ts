/** Whether what an author sets on the machine can be set there. */
import { formatNumber, type Diagnostic } from '../../measure/index.ts';
import { plansOf } from './plan.ts';
import type { Pattern } from '../pattern.ts';

/** The longest stitch that home machines sew, in mm. Common practice, no source: most end at 5, some at 7. */
const LONGEST = 7;

/** A stitch longer than machines sew was probably counted to the inch. */
export function checkSewing(pattern: Pattern): Diagnostic[] {
  return plansOf(pattern).steps.flatMap(({ doing, place }): Diagnostic[] => {
    const length = doing?.always['stitch length'];
    if (length === undefined || length <= LONGEST) return [];
    const asMm = formatNumber(Math.round(254 / length) / 10);
    return [
      {
        severity: 'error',
        place: [...place, 'stitch length'],
        code: 'long-stitch',
        message: `No home machine sews stitches of ${formatNumber(length)} mm.`,
        fix: `Stitch length is in mm. ${formatNumber(length)} stitches to the inch are “stitch length: ${asMm}”.`,
      },
    ];
  });
}
