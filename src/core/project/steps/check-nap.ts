/** Whether pile and print stand upright on the finished work. */
import { quote } from '../../measure/index.ts';
import type { Finding, Pattern } from '../pattern.ts';
import type { Ledger } from '../step.ts';
import type { Ply, Work } from '../../cloth/index.ts';

export function checkNap(pattern: Pattern, { results, finished }: Ledger): Finding[] {
  const work = finished === undefined ? undefined : results[finished];
  if (!work) return [];
  return Object.values(pattern.pieces).flatMap(({ name, nap }): Finding[] => {
    if (nap === 'any') return [];
    const shown = outermost(work, name);
    // What was up on the piece as it was cut must point up now, whichever way the work is turned to show it.
    if (!shown || shown.lie.d > -0.5) return [];
    const message = `${quote(name)} ends up upside down on the finished work: its pile or print points to the bottom.`;
    const mend = 'Turn the piece round when you lay it, or cut it the other way up.';
    return [{ severity: 'warning', place: ['pieces', name, 'nap'], code: 'upside-down', message, mend }];
  });
}

/** The largest layer of a piece whose right side faces out, at the front or at the back. */
function outermost({ plies }: Work, piece: string): Ply | undefined {
  const pieces = plies.map((ply) => ply.piece);
  const front = plies[pieces.lastIndexOf(piece)];
  const back = plies[pieces.indexOf(piece)];
  if (front?.face === 'right') return front;
  return back?.face === 'wrong' ? back : undefined;
}
