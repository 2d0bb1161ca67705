/** What a machine must not sew over, and where a zip comes apart. */
import { bounds } from '../../geometry/index.ts';
import { crossedAt, isAlongTeeth, NEAR_STOP, TEETH, teethIn, zipsIn } from '../zips.ts';
import { distance } from '../../geometry/point.ts';
import { quote, SAME } from '../../measure/index.ts';
import { sayIn } from './say.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Ledger, Step } from '../step.ts';
import type { Pattern } from '../pattern.ts';

/**
 * A row over a stop or over metal teeth breaks the needle. At an end that was cut, only a row across the teeth keeps the slider
 * on; that is asked of the finished work.
 */
export function checkZips(pattern: Pattern, { steps, results, finished }: Ledger): Diagnostic[] {
  if (!Object.values(pattern.materials).some(({ material }) => material?.hardware === 'zip')) return [];
  const work = finished === undefined ? undefined : results[finished];
  return [
    ...steps.flatMap((step) => {
      const taken = takenIn(pattern, step);
      return taken.length > 0 ? taken : sewnOver(pattern, step);
    }),
    ...(work ? comesOff(pattern, steps.at(-1), work) : []),
  ];
}

function sewnOver(pattern: Pattern, { after, stitches, place }: Step): Diagnostic[] {
  const rows = after.stitches.filter(({ id }) => stitches.some((row) => row.id === id));
  if (rows.length === 0) return [];
  const severity = 'error';
  return teethIn(after, pattern).flatMap((teeth): Diagnostic[] => {
    const size = distance(teeth.from, teeth.to);
    const crossed = crossedAt(teeth, { stitches: rows });
    const zip = quote(teeth.ply.piece);
    const onStop = crossed.some(
      (at) => (teeth.stops[0] && Math.abs(at) < NEAR_STOP) || (teeth.stops[1] && Math.abs(at - size) < NEAR_STOP),
    );
    if (onStop) {
      const message = `This row runs over a stop of ${zip}: the needle would break.`;
      return [{ severity, place, code: 'zip-stop', message, fix: 'Move the zip, or sew beside the stop.' }];
    }
    if (isAlongTeeth(teeth, { stitches: rows })) {
      const message = `This row runs along the teeth of ${zip}, and the slider would not pass.`;
      return [
        { severity, place, code: 'zip-teeth', message, fix: 'Sew beside the teeth, nearer to the edge of the tape.' },
      ];
    }
    if (!teeth.metal || crossed.length === 0) return [];
    const message = `This row crosses the metal teeth of ${zip}: the needle would break.`;
    const fix = 'End the zip before the seam, with tabs at its ends, or take one of plastic.';
    return [{ severity, place, code: 'zip-teeth', message, fix }];
  });
}

/** A seam along a zip that takes in its teeth. */
function takenIn(pattern: Pattern, { before, after, place, instruction }: Step): Diagnostic[] {
  const known = Object.values(before).reduce((sum, { done }) => sum + done.length, 0);
  const met = after.done.slice(known).flatMap((done) => done.met ?? []);
  const zips = Object.values(before).flatMap((work) => teethIn(work, pattern).map(({ ply }) => ply.piece));
  return met.flatMap(({ piece, allowance, length }): Diagnostic[] => {
    if (!zips.includes(piece)) return [];
    const { width, height } = bounds(pattern.pieces[piece]!.cutOutline);
    const wide = Math.min(width, height);
    // Across its ends the seam keeps the slider on.
    if (length <= wide + SAME || allowance <= wide / 2 - TEETH) return [];
    const say = sayIn(pattern);
    const message = `A seam of ${say(allowance)} takes in the teeth of ${quote(piece)}, which lie ${say(wide / 2)} from the edge of its tape.`;
    const fix = 'Give this seam an allowance of its own: “seam”, less than the tape is wide.';
    const at = 'seam' in instruction && instruction.seam !== undefined ? [...place, 'seam'] : place;
    return [{ severity: 'error', place: at, code: 'zip-teeth', message, fix, amount: allowance - wide / 2 + TEETH }];
  });
}

function comesOff(pattern: Pattern, last: Step | undefined, work: Step['after']): Diagnostic[] {
  if (!last) return [];
  return zipsIn(work, pattern).flatMap(({ piece, cut, crossed }): Diagnostic[] => {
    if (crossed >= cut) return [];
    const message = `The slider comes off ${quote(piece)}: at an end that was cut no row crosses its teeth.`;
    const fix = 'Sew across the teeth there, by hand or in a seam, or keep the stop.';
    return [{ severity: 'warning', place: last.place, code: 'zip-open-end', message, fix }];
  });
}
