/** Whether pile and print stand upright on the finished work. */
import { area } from '../../geometry/index.ts';
import { type Diagnostic, quote } from '../../measure/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Ledger } from '../step.ts';
import type { Ply, Work } from '../../cloth/index.ts';

export function checkNap(pattern: Pattern, { results, finished }: Ledger): Diagnostic[] {
  const work = finished === undefined ? undefined : results[finished];
  if (!work) return [];
  return Object.values(pattern.pieces).flatMap(({ name, nap }): Diagnostic[] => {
    if (nap === 'any') return [];
    const shown = largest(work, name);
    // What was up on the piece as it was cut must point up now, whichever way the work is turned to show it.
    if (!shown || shown.transform.d > -0.5) return [];
    const message = `${quote(name)} ends up upside down on the finished work: its pile or print points to the bottom.`;
    const fix = 'Turn the piece round when you lay it, or cut it the other way up.';
    return [{ severity: 'warning', place: ['pieces', name, 'nap'], code: 'upside-down', message, fix }];
  });
}

/** The largest layer of a piece: allowances that are turned in say nothing about how it stands. */
function largest({ plies }: Work, piece: string): Ply | undefined {
  const own = plies.filter((ply) => ply.piece === piece);
  return own.toSorted((a, b) => area(b.outline) - area(a.outline))[0];
}
