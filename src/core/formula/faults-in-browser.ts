/**
 * Stands in for faults.ts where a browser runs the core. No page is built from a file with a fault, so its sentences,
 * which are for the author, need not travel to every learner. What fails still fails, and says so in one sentence.
 */
import type { Fault } from '../measure/index.ts';
import type * as Mismatches from './mismatches.ts';
import type * as Refusals from './refusals.ts';

const fails = (): Fault => ({ code: 'no-result', message: 'This sum has no result at this size.', start: 0, end: 0 });

export const mismatches: typeof Mismatches = {
  kindsDiffer: fails,
  moreThanArea: fails,
  dividedByLarger: fails,
  dividedByZero: fails,
  roundedToNothing: fails,
  restsOnFault: () => ({ ...fails(), code: 'rests-on-fault' }),
  notFinite: fails,
};

export const refusals: typeof Refusals = {
  empty: fails,
  tooLong: fails,
  tooDeep: fails,
  leftOpen: fails,
  withoutTo: fails,
  partMissing: fails,
  leftOver: fails,
  unknownWords: fails,
  unknownName: fails,
  twoWaysFraction: fails,
  twoWaysComma: fails,
};
