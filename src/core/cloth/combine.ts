import { nextNumber } from './work.ts';
import type { Ply, Work } from './work.ts';

/** Gives every number of a work a new one, so that it does not meet those of another work. */
export function renumbered(work: Work, number: (id: number) => number): Work {
  return {
    ...work,
    plies: work.plies.map((ply) => ({
      ...ply,
      id: number(ply.id),
      ...(ply.fusedTo !== undefined && { fusedTo: number(ply.fusedTo) }),
      outline: ply.outline.map((edge) =>
        edge.fold === undefined && edge.held === undefined
          ? edge
          : {
              ...edge,
              ...(edge.fold !== undefined && { fold: number(edge.fold) }),
              ...(edge.held !== undefined && { held: number(edge.held) }),
            },
      ),
    })),
    stitches: work.stitches.map((stitch) => ({
      ...stitch,
      id: number(stitch.id),
      ...(stitch.partOf !== undefined && { partOf: number(stitch.partOf) }),
      runs: stitch.runs.map((run) => ({ ...run, plies: run.plies.map(number) })),
      ...(stitch.round && {
        round: { ...stitch.round, over: number(stitch.round.over), caught: stitch.round.caught.map(number) },
      }),
      ...(stitch.joins && {
        joins: {
          ...stitch.joins,
          outer: number(stitch.joins.outer),
          inner: number(stitch.joins.inner),
          caught: stitch.joins.caught.map(number),
        },
      }),
    })),
    marks: work.marks.map((mark) => ({ ...mark, plies: mark.plies.map(number) })),
    done: work.done.map((one) => (one.stitches ? { ...one, stitches: one.stitches.map(number) } : one)),
  };
}

/**
 * One stack of several works, bottom to top. The first keeps its numbers and the book of its steps; the others' steps
 * follow, without what would undo them. Also tells which plies came from which work.
 */
export function stackUp(works: readonly Work[]): { work: Work; of: ReadonlySet<number>[] } {
  let work: Work = { plies: [], stitches: [], marks: [], done: [] };
  const of: Set<number>[] = [];
  for (const [i, next] of works.entries()) {
    const by = i === 0 ? 0 : nextNumber(work) - 1;
    const one = by === 0 ? next : renumbered(next, (id) => id + by);
    of.push(new Set(one.plies.map((ply) => ply.id)));
    const pieces = new Set(one.plies.map((ply) => ply.piece));
    const before = copiesIn(work.plies.filter((ply) => pieces.has(ply.piece)));
    const counted = one.plies.map((ply) => countedOn(ply, before.get(ply.piece) ?? 0));
    work = {
      plies: [...work.plies, ...counted],
      stitches: [...work.stitches, ...one.stitches],
      marks: [...work.marks, ...one.marks],
      done: [...work.done, ...one.done.map(({ undo: _, ...rest }) => rest)],
    };
  }
  return { work, of };
}

/** How many were cut of each piece of some plies. */
export function copiesIn(plies: readonly Ply[]): ReadonlyMap<string, number> {
  const copies = new Map<string, number>();
  for (const { piece, copy = 0 } of plies) copies.set(piece, Math.max(copies.get(piece) ?? 0, copy + 1));
  return copies;
}

const countedOn = (ply: Ply, by: number): Ply => (by === 0 ? ply : { ...ply, copy: (ply.copy ?? 0) + by });

/** The same work with some of its plies changed; those for which nothing is given stay. */
export const withPlies = (work: Work, change: (ply: Ply) => Ply): Work => ({
  ...work,
  plies: work.plies.map(change),
});
