/** Darts that no step sews: the edges of their pieces would stay as long as they were cut. */
import { quote } from '../../measure/index.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Ledger } from '../step.ts';
import type { Pattern } from '../pattern.ts';

/** A warning for each piece whose darts no step sews. */
export function checkDarts({ pieces }: Pattern, { steps }: Ledger): Diagnostic[] {
  const sewn = new Set(
    steps.flatMap(({ verb, after }) => (verb === 'dart' ? after.plies.map(({ piece }) => piece) : [])),
  );
  return Object.values(pieces).flatMap(({ name, darts, label }): Diagnostic[] => {
    if (darts.length === 0 || sewn.has(name)) return [];
    const message = `No step sews the darts of ${quote(label)}.`;
    const fix = `Sew them before the piece is joined: { dart: ${name} }.`;
    return [{ severity: 'warning', place: ['pieces', name, 'darts'], code: 'dart-not-sewn', message, fix }];
  });
}
