/** The two walls of a work that is open, and what is done to one after the other. */
import { distance } from '../geometry/point.ts';
import { lineThrough, sides } from '../geometry/index.ts';
import { liesOn } from './edge.ts';
import { nextNumber, putsIn, wasLaidAs } from './work.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { renumbered } from './combine.ts';
import type { ClothFault } from './fault.ts';
import type { LaidWork, Mark, Ply, Run, Sewn, Stitch, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

/**
 * What lies below what is hollow in a work, what lies loose inside, and what lies above; each bottom to top. `below` and
 * `above` are what the open work was laid on, or lies under, and is not part of.
 */
export type Walls = {
  readonly below: readonly Ply[];
  readonly lower: readonly Ply[];
  readonly inside: readonly Ply[];
  readonly upper: readonly Ply[];
  readonly above: readonly Ply[];
};

/** The walls of a pair that was sewn round, or of a folded work that was sewn up, by the row that it was sewn with. */
export function wallsOf(work: Work, row: number): Walls {
  const stitch = work.stitches.find(({ id }) => id === row)!;
  const { over, caught } = stitch.round!;
  const at = work.plies.findIndex(({ id }) => id === over);
  const laid = laidWith(work, stitch);
  const isOwn = (ply: Ply) => laid.every((one) => wasLaidAs(ply, one));
  const isCaught = ({ id }: Ply) => caught.includes(id);
  const [low, high] = [work.plies.slice(0, Math.max(at, 0)), work.plies.slice(Math.max(at, 0))];
  return {
    below: low.filter((ply) => !isOwn(ply) && !isCaught(ply)),
    lower: low.filter((ply) => isOwn(ply) && !isCaught(ply)),
    inside: work.plies.filter(isCaught),
    upper: high.filter((ply) => isOwn(ply) && !isCaught(ply)),
    above: high.filter((ply) => !isOwn(ply) && !isCaught(ply)),
  };
}

const isSameLaid = (a: Pick<LaidWork, 'work' | 'nth'>, b: Pick<LaidWork, 'work' | 'nth'>): boolean =>
  a.work === b.work && a.nth === b.nth;

/** As what the work that a row was sewn with was laid on others. What was put into another counts with that. */
export function laidWith({ plies, stitches }: Work, { runs }: Stitch): readonly LaidWork[] {
  const through = new Set(runs.flatMap((run) => run.plies));
  const [first, ...others] = plies.filter(({ id }) => through.has(id));
  const put = putsIn({ stitches });
  return (first?.laid ?? []).filter(
    (one) => !put.some((other) => isSameLaid(one, other)) && others.every((ply) => wasLaidAs(ply, one)),
  );
}

/** Whether a ply is a layer of the work's own cloth: not laid on it, and no interfacing. */
export function isOwnCloth(work: Work, row: number): (ply: Ply) => boolean {
  const stitch = work.stitches.find(({ id }) => id === row)!;
  const known = [...laidWith(work, stitch), ...putsIn(work)];
  return ({ laid = [], fusedTo }) =>
    fusedTo === undefined && laid.every((one) => known.some((other) => isSameLaid(one, other)));
}

/** What is done to one wall, as a work by itself. */
export type WallAct = (wall: Work, which: 'lower' | 'upper') => Sewn;

/** A work after something was done to both its walls, with the walls as they are then and the rows that were sewn. */
export type WallByWall = { readonly work: Work; readonly walls: Walls; readonly rows: readonly number[] };

/**
 * Does something to each wall of a work as if the other were not there. A row of both walls is one row again afterwards,
 * and the rows that are new on either wall are one row round, in the order in which they were sewn.
 *
 * Faults: those of what is done.
 */
export function wallByWall(work: Work, walls: Walls, act: WallAct): Result<WallByWall, ClothFault> {
  const [below, above] = [wallAlone(work, walls.lower), wallAlone(work, walls.upper)];
  const [lower, upper] = [act(below, 'lower'), act(above, 'upper')];
  if (!lower.ok) return lower;
  if (!upper.ok) return upper;
  // Numbers that are new on one wall must not meet those of the other.
  const first = renumberedFrom(lower.value, below, nextNumber(work));
  const apart = renumberedFrom(upper.value, above, Math.max(nextNumber(work), nextNumber(first)));
  const known = new Set(work.stitches.map(({ id }) => id));
  const rowsOf = ({ stitches }: Work) => stitches.filter(({ id }) => !known.has(id));
  const [newLower, newUpper] = [rowsOf(first), rowsOf(apart)];
  // A row of one wall and a row of the other are one row round.
  const one = new Map(newUpper.map(({ id }, i) => [id, newLower[i]?.id ?? id]));
  const second = renumbered(apart, (id) => one.get(id) ?? id);
  const fresh = [...newLower, ...rowsOf(second).slice(newLower.length)].map((row, i): Stitch => {
    const other = i < newLower.length ? newUpper[i] : undefined;
    return other ? { ...row, runs: [...row.runs, ...other.runs] } : row;
  });
  const others = [...walls.below, ...walls.inside, ...walls.above];
  const plies = [...walls.below, ...first.plies, ...walls.inside, ...second.plies, ...walls.above];
  const level = new Map(plies.map(({ id }, i) => [id, i]));
  const loose = new Set(others.map(({ id }) => id));
  const old: Stitch[] = [];
  for (const stitch of work.stitches) {
    const parts = [first, second].flatMap((one) => one.stitches.find(({ id }) => id === stitch.id) ?? []);
    let runs = runsTogether(parts, level);
    for (const run of stitch.runs) {
      const caught = run.plies.filter((id) => loose.has(id));
      if (caught.length === 0) continue;
      const at = runs.findIndex((other) => sameWay(run, other));
      if (at < 0 && caught.length < run.plies.length) {
        const piece = others.find(({ id }) => id === caught[0])?.piece;
        const message = `A row of ${stitch.kind} stitches holds what would be folded here to ${piece}.`;
        return fail({ code: 'sewn-down', message, piece });
      }
      runs = at < 0 ? [...runs, run] : runs.with(at, { ...runs[at]!, plies: inOrder([...runs[at]!.plies, ...caught]) });
    }
    old.push({ ...stitch, runs });
  }
  const marks = work.marks.map((mark, i) => markOfBoth(mark, i));
  const newMarks = [first, second].flatMap((one) => one.marks.filter((mark) => !indexed(mark)));
  return ok({
    work: {
      plies,
      stitches: [...old, ...fresh],
      marks: [...marks.map(unmarked), ...newMarks.map(unmarked)],
      done: work.done,
    },
    walls: { ...walls, lower: first.plies, upper: second.plies },
    rows: fresh.map(({ id }) => id),
  });

  function inOrder(ids: readonly number[]): number[] {
    return ids.toSorted((a, b) => (level.get(a) ?? 0) - (level.get(b) ?? 0));
  }

  function markOfBoth(mark: Mark, i: number): Mark {
    const parts = [first, second].flatMap((one) => one.marks.filter((other) => indexed(other) === i + 1));
    const [one] = parts;
    if (!one) return mark;
    const caught = mark.plies.filter((id) => loose.has(id));
    return { ...one, plies: inOrder([...parts.flatMap(({ plies: of }) => of), ...caught]) };
  }
}

/** A mark of a wall that knows which mark of the whole work it is, counted from 1. */
type OfWhole = Mark & { readonly nth?: number };

const indexed = (mark: OfWhole): number | undefined => mark.nth;

function unmarked(mark: OfWhole): Mark {
  const { nth: _, ...rest } = mark;
  return rest;
}

/** A run of a wall that knows which run of the whole row it is a part of. */
export type OfRow = Run & { readonly nth?: number };

function unnumbered(run: OfRow): Run {
  const { nth: _, ...rest } = run;
  return rest;
}

/** A wall as a work: of what goes through both walls, its own part. What was sewn round is kept by the whole work alone. */
function wallAlone(work: Work, plies: readonly Ply[]): Work {
  const own = new Set(plies.map(({ id }) => id));
  const stitches = work.stitches.flatMap((stitch): Stitch[] => {
    const runs = stitch.runs.flatMap((run, nth): OfRow[] => {
      const through = run.plies.filter((id) => own.has(id));
      return through.length === 0 ? [] : [{ ...run, plies: through, nth }];
    });
    return runs.length === 0 ? [] : [{ ...stitch, runs, round: undefined, joins: undefined }];
  });
  const marks = work.marks.flatMap((mark, i): OfWhole[] => {
    const through = mark.plies.filter((id) => own.has(id));
    return through.length === 0 ? [] : [{ ...mark, plies: through, nth: i + 1 }];
  });
  return { plies, stitches, marks, done: [] };
}

/** What was done to a wall, its new numbers counted from one that nothing else has. */
function renumberedFrom(after: Work, before: Work, from: number): Work {
  const known = new Set([
    ...before.plies.flatMap(({ id, outline }) => [
      id,
      ...outline.flatMap(({ fold, held }) => [fold ?? id, held ?? id]),
    ]),
    ...before.stitches.map(({ id }) => id),
  ]);
  const fresh = new Map<number, number>();
  return renumbered(after, (id) => {
    if (known.has(id)) return id;
    const next = fresh.get(id) ?? from + fresh.size;
    fresh.set(id, next);
    return next;
  });
}

/** The runs of a row on both walls: parts of one run that went through both, and still lie on one another, are one again. */
export function runsTogether(parts: readonly Stitch[], level: ReadonlyMap<number, number>): Run[] {
  const [first, second] = parts;
  const rest: OfRow[] = [...(second?.runs ?? [])];
  const runs = (first?.runs ?? []).map((run: OfRow): OfRow => {
    const at = rest.findIndex((other) => other.nth === run.nth && sameWay(run, other));
    if (at < 0) return run;
    const [other] = rest.splice(at, 1);
    const plies = [...run.plies, ...other!.plies].toSorted((a, b) => (level.get(a) ?? 0) - (level.get(b) ?? 0));
    return { ...run, plies };
  });
  return [...runs, ...rest].map(unnumbered);
}

/** Whether two runs lie on one another, whichever way each was sewn. */
export const sameWay = (a: Run, b: Run): boolean =>
  (distance(a.from, b.from) < SAME && distance(a.to, b.to) < SAME) ||
  (distance(a.from, b.to) < SAME && distance(a.to, b.from) < SAME);

/** Whether a run lies along an edge of the seam that made an open work, no more than so many mm inside it. */
export function beside({ stitches }: Work, row: number, run: Run, by: number): boolean {
  const { ring } = stitches.find(({ id }) => id === row)!.round!;
  return sides(ring).some((side) => {
    return liesOn(lineThrough(side.from, side.to), run, by);
  });
}
