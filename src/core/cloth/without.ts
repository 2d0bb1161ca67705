import { areaOf, beginsAt, endsAt } from './ring.ts';
import { backwards, renamed } from './carve.ts';
import { difference, lineThrough, sides } from '../geometry/index.ts';
import { fail, ok } from '../measure/index.ts';
import { keptOn } from './kept.ts';
import { nextNumber } from './work.ts';
import type { ClothFault } from './fault.ts';
import type { Line } from '../geometry/index.ts';
import type { Ply, PlyOutline, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

/** The clipping library leaves hundred-thousandths of a mm²; a ply that loses less than this is not cut. */
const NOTHING = 1e-3;

/**
 * The work without scraps that are cut off its plies, and the area of cloth cut away in mm², gathers let out. Rows end at the cut. Faults:
 * `blocked` where hardware sits on a scrap.
 */
export function without(
  work: Work,
  scraps: (ply: Ply) => readonly PlyOutline[],
): Result<{ work: Work; cutAway: number }, ClothFault> {
  let number = nextNumber(work);
  // Of many plies the same scraps are cut off.
  const lines = new Map<PlyOutline, Line[]>();
  let cutAway = 0;
  const parts = new Map<number, Ply[]>();
  for (const ply of work.plies) {
    const cut = scraps(ply).filter((scrap) => {
      let known = lines.get(scrap);
      if (!known) lines.set(scrap, (known = sides(scrap).map(({ from, to }) => lineThrough(from, to))));
      return !known.some((line) => beginsAt(ply.outline, line) && endsAt(scrap, line));
    });
    if (cut.length === 0) continue;
    const rings = renamed(difference([ply.outline], cut), [ply.outline, ...cut.map(backwards)]);
    const left = rings.reduce((sum, ring) => sum + areaOf(ring), 0);
    if (areaOf(ply.outline) - left < NOTHING) continue;
    cutAway += (areaOf(ply.outline) - left) * ply.fullness;
    parts.set(
      ply.id,
      rings.map((outline, i) => ({ ...ply, outline, id: i === 0 ? ply.id : number++ })),
    );
  }
  const left = keptOn(work, parts);
  const gone = work.marks.find(
    ({ kind, name, at, plies }) =>
      kind === 'hardware' &&
      !left.marks.some((mark) => mark.name === name && mark.at === at && mark.plies.length === plies.length),
  );
  if (gone) {
    const message = `${gone.name} sits where the cloth is cut away.`;
    return fail({ code: 'blocked', message });
  }
  return ok({ work: left, cutAway });
}
