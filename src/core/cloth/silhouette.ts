import { areaOf } from './ring.ts';
import { fail, ok } from '../measure/index.ts';
import { renamed } from './carve.ts';
import { union } from '../geometry/index.ts';
import type { ClothFault } from './fault.ts';
import type { Ply, PlyOutline } from './work.ts';
import type { Result } from '../measure/index.ts';

/**
 * The outline of several plies together, with the names of their edges; those of the highest ply where several lie on
 * one another.
 *
 * Faults: `outline` when they lie in separate places; `no-plies`.
 */
export function outlineOf(plies: readonly Ply[]): Result<PlyOutline, ClothFault> {
  const largest = plies.reduce<Ply | undefined>(
    (best, ply) => (best && areaOf(best.outline) >= areaOf(ply.outline) ? best : ply),
    undefined,
  );
  if (!largest) return fail({ code: 'no-plies', message: 'There is nothing to sew round.' });
  // Most often one ply is as large as all of them; then its own ring, exact, is the outline.
  const rings = union(plies.map((ply) => ply.outline));
  const whole = rings.filter((ring) => areaOf(ring) > 0);
  if (whole.length > 1) return fail({ code: 'outline', message: 'The layers do not lie in one place.' });
  if (Math.abs(areaOf(whole[0]!) - areaOf(largest.outline)) < 0.01) return ok(largest.outline);
  return ok(renamed(whole, plies.map((ply) => ply.outline).reverse())[0]!);
}
