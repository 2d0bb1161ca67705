import { areaOf } from './ring.ts';
import { backwards, renamed } from './carve.ts';
import { difference } from '../geometry/index.ts';
import { nextNumber } from './work.ts';
import type { Ply, PlyOutline, Work } from './work.ts';

/** The clipping library leaves hundred-thousandths of a mm²; a ply that loses less than this is not cut. */
const NOTHING = 1e-3;

/** The work without scraps that are cut off its plies, and the area cut away in mm². */
export function without(work: Work, scraps: (ply: Ply) => readonly PlyOutline[]): { work: Work; cutAway: number } {
  let number = nextNumber(work);
  let cutAway = 0;
  const plies = work.plies.flatMap((ply): Ply[] => {
    const cut = scraps(ply);
    if (cut.length === 0) return [ply];
    const rings = renamed(difference([ply.outline], cut), [ply.outline, ...cut.map(backwards)]);
    const left = rings.reduce((sum, ring) => sum + areaOf(ring), 0);
    if (areaOf(ply.outline) - left < NOTHING) return [ply];
    cutAway += areaOf(ply.outline) - left;
    return rings.map((outline, i) => ({ ...ply, outline, id: i === 0 ? ply.id : number++ }));
  });
  return { work: { ...work, plies }, cutAway };
}
