import { areaOf, offsets, ON } from './ring.ts';
import { backwards, renamed } from './carve.ts';
import { difference, lineThrough, sides } from '../geometry/index.ts';
import { nextNumber } from './work.ts';
import type { Ply, PlyOutline, Work } from './work.ts';

/** The clipping library leaves hundred-thousandths of a mm²; a ply that loses less than this is not cut. */
const NOTHING = 1e-3;

/** The work without scraps that are cut off its plies, and the area cut away in mm². */
export function without(work: Work, scraps: (ply: Ply) => readonly PlyOutline[]): { work: Work; cutAway: number } {
  let number = nextNumber(work);
  let cutAway = 0;
  const plies = work.plies.flatMap((ply): Ply[] => {
    const cut = scraps(ply).filter((scrap) => mayMeet(ply.outline, scrap));
    if (cut.length === 0) return [ply];
    const rings = renamed(difference([ply.outline], cut), [ply.outline, ...cut.map(backwards)]);
    const left = rings.reduce((sum, ring) => sum + areaOf(ring), 0);
    if (areaOf(ply.outline) - left < NOTHING) return [ply];
    cutAway += areaOf(ply.outline) - left;
    return rings.map((outline, i) => ({ ...ply, outline, id: i === 0 ? ply.id : number++ }));
  });
  return { work: { ...work, plies }, cutAway };
}

/** Whether two rings may lie on one another: the line of no edge of the scrap has it on one side and the ring on the other. */
function mayMeet(ring: PlyOutline, scrap: PlyOutline): boolean {
  return !sides(scrap).some(({ from, to }) => {
    const line = lineThrough(from, to);
    return offsets(ring, line).every((off) => off <= ON) && offsets(scrap, line).every((off) => off >= -ON);
  });
}
