/** Whether a row or hardware goes through both walls of a work that is open, and so sews it together. */
import { isCreased, openingsOf } from '../../cloth/openings.ts';
import { quote } from '../../measure/index.ts';
import { beside, wallsOf } from '../../cloth/walls.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Ply, Work } from '../../cloth/index.ts';
import type { Step } from '../step.ts';

/** Beside a seam, no farther in than this, a row holds nothing that is not sewn together there. In mm; common practice, no source. */
const AT_SEAM = 30;

/** Verbs that sew or set something on a work as it lies. */
const ROWS = new Set<string>(['topstitch', 'edgestitch', 'quilt', 'attach', 'buttonhole']);

/**
 * A row across a bag, or a snap through it, that nobody meant to go through the other wall: a pocket that is sewn on after
 * the bag is sewn together. Rows beside its seams are meant, and so is what only holds for now.
 */
export const checkHollow = (steps: readonly Step[]): Diagnostic[] =>
  steps.flatMap((step): Diagnostic[] => {
    const { after, place, makes, stitches, instruction } = step;
    if (!ROWS.has(step.verb) || 'sew shut' in instruction) return [];
    const [opening] = openingsOf(after);
    if (!opening && Object.values(step.before).some(isCreased)) {
      const message = `${quote(makes)} is folded across its opening, so that it is not known whether this holds its walls together.`;
      const fix = 'Do it before the work is folded, or write “through” with the layers that are meant.';
      return 'through' in instruction ? [] : [{ severity: 'warning', place, code: 'walls-together', message, fix }];
    }
    if (!opening || !sewsOn(step)) return [];
    const { lower, upper } = wallsOf(after, opening.row);
    const isBoth = (ids: readonly number[]) => [lower, upper].every((wall) => hasOne(wall, ids));
    const fresh = new Set(stitches.map(({ id }) => id));
    const rows = after.stitches.filter(({ id, kind }) => fresh.has(id) && kind !== 'baste' && kind !== 'gather');
    const isAcross = rows.some(({ runs }) =>
      runs.some((run) => isBoth(run.plies) && !beside(after, opening.row, run, AT_SEAM)),
    );
    const mark = step.verb === 'attach' ? after.marks.at(-1) : undefined;
    if (!isAcross && !(mark && isBoth(mark.plies))) return [];
    const what = isAcross ? 'This row' : `${quote(mark!.name)}`;
    const message = `${what} goes through both walls of ${quote(makes)} and holds them together.`;
    const fix = 'Write “through” with the layers of the upper wall, or do it before the work is sewn together.';
    return [{ severity: 'warning', place, code: 'walls-together', message, fix }];
  });

/** Whether a step does something to a work that was open before it. */
const sewsOn = ({ before }: Step): boolean => Object.values(before).some((work: Work) => openingsOf(work).length > 0);

const hasOne = (plies: readonly Ply[], ids: readonly number[]): boolean => plies.some(({ id }) => ids.includes(id));
