import { asOneStep } from './group.ts';
import { edgeOn } from './sides.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { join } from './seam.ts';
import type { Seam } from './seam.ts';
import type { ClothFault } from './fault.ts';
import type { Result } from '../measure/index.ts';
import type { MetEdge, Sewn, StepRecord, Work } from './work.ts';

/**
 * Sews works side by side into rows, the first row at the top and each from the left, and the rows below one another.
 * Allowances are pressed open, or in each row the other way than in the row above, so that they lie beside one another
 * where seams meet. A grid of m x n units of w x h with allowance s comes to (n w - 2 (n - 1) s) x (m h - 2 (m - 1) s).
 *
 * Faults: those of finding the sides and of joining; `no-plies` for fewer than two works.
 *
 * @example
 * size(sewInRows([[dark, light], [light, dark]], { allowance: 6, open: false }).value)
 */
export function sewInRows(rows: readonly (readonly Work[])[], how: { allowance: number; open: boolean }): Sewn {
  const works = rows.flat();
  if (works.length < 2) return fail({ code: 'no-plies', message: 'There is only one work: nothing is sewn to it.' });
  const rowsSewn: Seams[] = [];
  for (const [i, row] of rows.entries()) {
    const press = how.open ? 'open' : i % 2 === 0 ? 'to second' : 'to first';
    const units = row.map((work) => ({ work, met: [], isNew: work.stitches.map(() => false) }));
    const sewn = inLine(units, ['right', 'left'], { allowance: how.allowance, press });
    if (!sewn.ok) return sewn;
    rowsSewn.push(sewn.value);
  }
  const all = inLine(rowsSewn, ['bottom', 'top'], { allowance: how.allowance, press: how.open ? 'open' : 'to second' });
  if (!all.ok) return all;
  const { work, met, isNew } = all.value;
  // As after any step, the rows that it sewed come last.
  const [before, sewn] = [false, true].map((which) => work.stitches.filter((_, i) => isNew[i] === which));
  const apart = met.find(([a, b]) => Math.abs(a!.length - b!.length) > SAME) ?? met[0]!;
  const done: StepRecord = {
    did: 'sew in rows',
    stitches: sewn!.map(({ id }) => id),
    met: apart,
    together: 'right sides together',
  };
  const after = { ...work, stitches: [...before!, ...sewn!] };
  return ok(
    asOneStep(
      works.flatMap((one) => one.done),
      after,
      done,
    ),
  );
}

/** What was sewn so far, the edges that met in each seam, and which of its rows are new. */
type Seams = {
  readonly work: Work;
  readonly met: readonly (readonly MetEdge[])[];
  readonly isNew: readonly boolean[];
};

/** Works sewn together one after another, each at its `start` to the `end` of those before. */
function inLine(
  parts: readonly Seams[],
  [end, start]: readonly [string, string],
  seam: Seam,
): Result<Seams, ClothFault> {
  const [first, ...others] = parts;
  let now = first!;
  for (const next of others) {
    const [a, b] = [edgeOn(now.work, end), edgeOn(next.work, start)];
    if (!a.ok) return a;
    if (!b.ok) return b;
    const layers = [
      { work: now.work, edge: a.value },
      { work: next.work, edge: b.value },
    ];
    const sewn = join(layers, seam);
    if (!sewn.ok) return sewn;
    now = {
      work: sewn.value,
      met: [...now.met, ...next.met, sewn.value.done.at(-1)?.met ?? []],
      isNew: [...now.isNew, ...next.isNew, true],
    };
  }
  return ok(now);
}
