import { fold } from './fold.ts';
import { ok } from '../measure/index.ts';
import type { ClothFault } from './fault.ts';
import type { StepRecord, Sewn, Work } from './work.ts';
import type { Fold } from './fold.ts';
import type { Result } from '../measure/index.ts';

/** A work with some of its plies in hand. */
export type InHand = { readonly work: Work; readonly hand: ReadonlySet<number> };

/** What came of a fold: the plies in hand with the parts they were folded into, and only those of them that moved. */
export type Folded = InHand & { readonly moved: ReadonlySet<number> };

/** Folds the plies in hand and keeps them in hand. */
export function foldInHand({ work, hand }: InHand, how: Omit<Fold, 'plies'>): Result<Folded, ClothFault> {
  const folded = fold(work, { ...how, plies: hand });
  if (!folded.ok) return folded;
  const came = folded.value.done.at(-1)!.undo!.came;
  const all = [...came].filter(([, { from }]) => hand.has(from));
  return ok({
    work: folded.value,
    hand: new Set(all.map(([id]) => id)),
    moved: new Set(all.filter(([, { moved }]) => moved).map(([id]) => id)),
  });
}

/** Several folds and rows as one step in the book of the work. */
export const asOneStep = (before: readonly StepRecord[], after: Work, done: StepRecord): Work => ({
  ...after,
  done: [...before, done],
});

/** One step after another, until one cannot be done. */
export function applyEach<T>(work: Work, items: readonly T[], step: (work: Work, item: T) => Sewn): Sewn {
  let now = work;
  for (const item of items) {
    const next = step(now, item);
    if (!next.ok) return next;
    now = next.value;
  }
  return ok(now);
}
