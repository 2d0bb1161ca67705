/** Pleats under pieces that no step folds. */
import { quote } from '../../measure/index.ts';
import { verbNamed } from '../../steps/index.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Ledger } from '../step.ts';

/** A piece that is sewn flat does not come to the size that its pleats give it. Where steps are missing nothing is said. */
export function checkPleated({ pieces }: Pattern, { steps, findings }: Ledger): Diagnostic[] {
  if (findings.some(({ severity }) => severity === 'error')) return [];
  return Object.values(pieces).flatMap(({ name, pleats, edgePleats }): Diagnostic[] => {
    if (!pleats && !edgePleats) return [];
    const taking = steps.filter(({ before }) =>
      Object.values(before).some(({ plies }) => plies.some(({ piece }) => piece === name)),
    );
    if (taking.length === 0 || taking.some(({ verb }) => verbNamed(verb).pleats)) return [];
    const message = `No step folds the pleats of ${quote(name)}, and its finished size counts on them.`;
    const fix = `Fold them in a step, “pleat: ${name}”, or leave them out.`;
    return [{ severity: 'warning', place: ['pieces', name], code: 'never-pleated', message, fix }];
  });
}
