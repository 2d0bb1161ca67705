/**
 * Stands in for faults.ts where a browser runs the core. No page is built from a file with a fault, so its sentences,
 * which are for the author, need not travel to every learner. What fails still fails, and says so in one sentence.
 */
import type { Diagnostic, InText } from '../measure/index.ts';
import type * as Mismatches from './mismatches.ts';
import type * as Refusals from './refusals.ts';

const fails = (): Diagnostic<InText> => ({
  severity: 'error',
  code: 'no-result',
  message: 'This sum has no result at this size.',
  start: 0,
  end: 0,
});

/** Whatever is wrong, the same is said; a list of all that can be wrong would be longer than this. */
const saysSo = <Faults extends object>(own: Partial<Faults> = {}): Faults =>
  new Proxy(own, { get: (own, name) => Reflect.get(own, name) ?? fails }) as Faults;

export const mismatches = saysSo<typeof Mismatches>({
  restsOnFault: () => ({ ...fails(), code: 'rests-on-fault' }),
});

export const refusals = saysSo<typeof Refusals>();
