/** What an instructor should know before the first cut. */
import type { Diagnostic } from '../measure/index.ts';
import { matchingOf } from './matching.ts';
import { checkEdges } from './check-edges.ts';
import { checkWritten } from './check-written.ts';
import { checkCloth, noteOffRuler } from './check-pieces.ts';
import { checkChannels } from './steps/check-channels.ts';
import { checkCounts } from './steps/hardware-used.ts';
import { checkDarts } from './steps/check-darts.ts';
import { checkHeat } from './steps/check-heat.ts';
import { checkHollow } from './steps/check-hollow.ts';
import { checkMeets } from './steps/check-meets.ts';
import { checkNap } from './steps/check-nap.ts';
import { checkPleated } from './steps/check-pleated.ts';
import { checkPockets } from './steps/check-pockets.ts';
import { checkRaw } from './steps/check-raw.ts';
import { checkSewing } from './steps/check-sewing.ts';
import { checkSizes } from './steps/check-size.ts';
import { checkStack } from './steps/check-stack.ts';
import { checkZips } from './steps/check-zips.ts';
import { ledgerOf } from './steps/make-up.ts';
import { noteTurnOfCloth } from './steps/turn-advice.ts';
import type { HoldCheck, Pattern } from './pattern.ts';

/**
 * Every finding about a pattern: those of resolving it, what does not fit where it should, and what cannot be made or
 * goes wrong in the making.
 *
 * @example check(resolveProject(file)) // => [] when all is well
 */
export function check(pattern: Pattern): Diagnostic[] {
  const misfits = Map.groupBy(
    pattern.holds.filter((hold) => !hold.fits),
    (hold) => hold.place,
  );
  return [
    ...pattern.findings,
    ...checkWritten(pattern),
    ...matchingOf(pattern).findings,
    ...checkCloth(pattern),
    ...checkEdges(pattern),
    ...noteOffRuler(pattern),
    ...[...misfits.values()].map(misfit),
    ...checkMaking(pattern),
  ];
}

/** What the steps run into. */
function checkMaking(pattern: Pattern): Diagnostic[] {
  if (!pattern.making) return [];
  const ledger = ledgerOf(pattern);
  return [
    ...ledger.findings,
    ...checkSizes(pattern, ledger),
    ...checkPleated(pattern, ledger),
    ...checkPockets(pattern, ledger),
    ...checkDarts(pattern, ledger),
    ...checkChannels(ledger.steps),
    ...checkHollow(ledger.steps),
    ...checkMeets(pattern, ledger),
    ...checkNap(pattern, ledger),
    ...checkStack(pattern, ledger.steps),
    ...checkZips(pattern, ledger),
    ...checkCounts(pattern),
    ...checkHeat(pattern, ledger.steps),
    ...checkRaw(pattern, ledger),
    ...checkSewing(pattern),
    ...noteTurnOfCloth(pattern, ledger.steps),
  ];
}

/** One finding for all the pockets that one thing does not fit. */
function misfit(holds: HoldCheck[]): Diagnostic {
  const [first, ...others] = holds as [HoldCheck, ...HoldCheck[]];
  const more = others.length === 0 ? '' : ` Nor does it fit ${others.length} more.`;
  return {
    severity: 'error',
    place: [...first.place, 'in'],
    code: 'does-not-fit',
    message: first.sentence + more,
    fix: fixOf(first),
    amount: Math.max(...holds.map(lackOf)),
  };
}

/** How much is lacking, in mm: of width, of height, or of the depth that would cover enough. */
const lackOf = ({ room, cover, size, shows }: HoldCheck): number =>
  Math.max(0, -room.width, -room.height, cover * size.height - (size.height - shows));

function fixOf({ room, covered, cover, piece, pocket }: HoldCheck): string {
  if (room.width < -0.05) return `Make ${piece} wider, or the ease smaller.`;
  if (covered < cover) return 'Make the pockets deeper, or ask for less cover.';
  return pocket === undefined
    ? `Make ${piece} taller, or the ease smaller.`
    : 'Make the head above the top pocket larger.';
}
