import { inverse } from '../geometry/transform.ts';
import { fail, ok } from '../measure/index.ts';
import { movedMark, movedRun } from './move.ts';
import { noted } from './work.ts';
import type { Mark, Sewn, Stitch, Undo, Work } from './work.ts';

/**
 * Undoes the last fold. Stitches and marks made since go back with their plies.
 *
 * Faults: `nothing-to-undo`; `changed-since` when the plies were cut or moved after the fold; `sewn-down` when
 * stitches made since hold the fold.
 *
 * @example
 * unfold(fold(work, how).value).value.plies // => work.plies
 */
export function unfold(work: Work): Sewn {
  const folds = work.done.flatMap((done) => (done.undo ? [done.undo] : []));
  // Undone folds leave a note of their own without `undo`; the last fold whose plies are these is the one to undo.
  const last = folds.findLast((undo) => undo.after === work.plies);
  if (folds.length === 0) return fail({ code: 'nothing-to-undo', message: 'Nothing is folded yet.' });
  if (!last) return fail({ code: 'changed-since', message: 'The work was cut, moved or sewn to other work since.' });

  const stitches: Stitch[] = [];
  for (const stitch of work.stitches) {
    const before = last.before.stitches.find((one) => one.id === stitch.id);
    if (before) {
      stitches.push(before);
      continue;
    }
    const runs = stitch.runs.map((run) => {
      const moved = wentWith(run.plies, last);
      if (moved === 'both') return undefined;
      const plies = run.plies.map((id) => last.came.get(id)?.from ?? id);
      return { ...(moved ? movedRun(run, inverse(last.over)) : run), plies: moved ? plies.reverse() : plies };
    });
    if (runs.includes(undefined)) {
      return fail({ code: 'sewn-down', message: `A row of ${stitch.kind} stitches holds the fold.` });
    }
    stitches.push({ ...stitch, runs: runs.flatMap((run) => run ?? []) });
  }
  const marks = work.marks.map((mark, i) => last.before.marks[i] ?? backMark(mark, last));
  return ok(noted({ plies: last.before.plies, stitches, marks, done: work.done }, { did: 'unfold' }));
}

function wentWith(plies: readonly number[], undo: Undo): boolean | 'both' {
  const moved = plies.map((id) => undo.came.get(id)?.moved ?? false);
  return moved.every((one) => one === moved[0]) ? (moved[0] ?? false) : 'both';
}

function backMark(mark: Mark, undo: Undo): Mark {
  const there = wentWith(mark.plies, undo) === true ? movedMark(mark, inverse(undo.over)) : mark;
  return { ...there, plies: [...new Set(mark.plies.map((id) => undo.came.get(id)?.from ?? id))] };
}
