import { acrossWork, sewn } from './stitch.ts';
import { asOneStep } from './group.ts';
import { boxOf } from './size.ts';
import { edgeOn } from './sides.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { lineInside } from './edge.ts';
import { fold } from './fold.ts';
import { ON, offsets } from './ring.ts';
import type { ClothFault } from './fault.ts';
import type { Line } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { Side } from './sides.ts';
import type { Sewn, Work } from './work.ts';
import type { WorkEdge } from './edge.ts';

/** How a strip is folded in four. */
export type FoldInFour = {
  /** The long side that is folded first and comes to lie under the other in the end; see `longSide` if left out. */
  readonly from?: Side;
  /** How much is turned in first at the ends, in mm, and at which: both if left out. */
  readonly ends?: { readonly in: number; readonly at?: readonly Side[] };
  /** Rows close beside its long sides, once it is folded: where its folded edges lie on one another, or at both. */
  readonly edgestitch?: 'open side' | 'both sides';
  /** How far inside its edge such a row runs, in mm. */
  readonly inside: number;
};

const ACROSS = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' } as const;
const ENDS = {
  top: ['left', 'right'],
  bottom: ['left', 'right'],
  left: ['bottom', 'top'],
  right: ['bottom', 'top'],
} as const;

/**
 * Folds a strip in four, wrong side inside: both long sides to the middle, and then in half. What it measures across is a
 * quarter of what it measured; it lies in four layers, and in eight where an end was turned in first.
 *
 * Faults: those of finding the sides and of folding; `shapes-differ` where its long sides are not parallel; `one-edge` where
 * it is as wide as it is high and nobody says which way it is folded; `too-deep` where turned ends would meet, or where the
 * strip is narrower than its rows.
 *
 * @example
 * size(foldInFour(strap, { inside: 3 }).value) // a strap of 100 x 560 mm => { width: 25, height: 560 }
 */
export function foldInFour(work: Work, how: FoldInFour): Sewn {
  const from = how.from ?? longSide(work);
  if (from === undefined) {
    const message = 'It is as wide as it is high: which of its sides come to the middle is not said.';
    return fail({ code: 'one-edge', message, field: 'from', fix: 'Say from which side: from: top, or from: left.' });
  }
  const sides = parallel(work, from);
  if (!sides.ok) return sides;
  const [first, second] = sides.value;
  const wide = Math.max(...work.plies.flatMap(({ outline }) => offsets(outline, first.line)));
  const quarter = wide / 4;
  const lands = wrongSideUp(work) ? 'over' : 'under';
  const ends = endsOf(work, from, how.ends);
  if (!ends.ok) return ends;
  const lines: { line: Line; name: string }[] = [
    ...ends.value.map((end) => ({ line: lineInside(end, how.ends!.in), name: end.own })),
    { line: lineInside(first, quarter), name: first.own },
    { line: lineInside(second, quarter), name: second.own },
    { line: lineInside(first, 2 * quarter), name: 'fold' },
  ];
  let now = work;
  for (const { line, name } of lines) {
    const folded = fold(now, { line, lands, name });
    if (!folded.ok) return folded;
    now = folded.value;
  }
  const { edgestitch, inside } = how;
  // A row beside either long side; with both, two rows that must not cross.
  const rows = {
    'open side': [3 * quarter - inside],
    'both sides': [3 * quarter - inside, 2 * quarter + inside],
  };
  const needs = edgestitch === 'both sides' ? 2 * inside : inside;
  if (edgestitch && quarter < needs + ON) {
    const message = 'Folded in four it is … wide, too narrow for its rows.';
    const fix = 'Cut a wider strip, or leave “edgestitch” out.';
    return fail({ code: 'too-deep', message, field: 'edgestitch', lengths: [quarter], fix });
  }
  const before = work.stitches.length;
  for (const by of edgestitch ? rows[edgestitch] : [])
    now = sewn(now, 'edgestitch', acrossWork(now, lineInside(first, by)));
  const stitches = now.stitches.slice(before).map(({ id }) => id);
  return ok(asOneStep(work.done, now, { did: 'fold in four', ...(stitches.length > 0 && { stitches }) }));
}

/** The upper or the left one of the two longer sides of what lies there; undefined where it is as wide as it is high. */
export function longSide({ plies }: Work): Side | undefined {
  const { width, height } = boxOf(plies);
  if (Math.abs(width - height) <= SAME) return undefined;
  return width > height ? 'top' : 'left';
}

/** The two long sides, which run beside each other. */
function parallel(work: Work, from: Side): Result<[WorkEdge, WorkEdge], ClothFault> {
  const [first, second] = [edgeOn(work, from), edgeOn(work, ACROSS[from])];
  if (!first.ok) return first;
  if (!second.ok) return second;
  const off = [second.value.from, second.value.to].map(
    (p) => offsets([{ name: '', bulge: 0, from: p }], first.value.line)[0]!,
  );
  if (Math.abs(off[0]! - off[1]!) <= SAME) return ok([first.value, second.value]);
  const message = `The ${from} and the ${ACROSS[from]} do not run beside each other: folded in four they would not meet in the middle.`;
  return fail({
    code: 'shapes-differ',
    message,
    edge: from,
    fix: 'Fold a strip that is as wide at both ends, or fold it line by line with “fold”.',
  });
}

/** The ends that are turned in first, with room for what is turned in. */
function endsOf(work: Work, from: Side, ends: FoldInFour['ends']): Result<WorkEdge[], ClothFault> {
  if (!ends) return ok([]);
  const which = ends.at ?? ENDS[from];
  const found: WorkEdge[] = [];
  for (const side of which) {
    if (!(ENDS[from] as readonly Side[]).includes(side)) {
      const message = `The ${side} is a long side, which comes to the middle, and no end.`;
      return fail({ code: 'one-edge', message, field: 'at', fix: `Its ends are ${ENDS[from].join(' and ')}.` });
    }
    const end = edgeOn(work, side);
    if (!end.ok) return end;
    found.push(end.value);
  }
  const { width, height } = boxOf(work.plies);
  const over = (which.length + 1) * ends.in - (from === 'top' || from === 'bottom' ? width : height);
  if (ends.in > 0 && over < -SAME) return ok(found);
  const message =
    ends.in > 0
      ? 'So much is turned in at its ends that it would not lie flat on what is left.'
      : 'Its ends are turned in by a length above nothing.';
  const fix = `Make “ends in” ${ends.in > 0 ? 'smaller' : 'larger'}.`;
  return fail({ code: 'too-deep', message, field: 'ends in', amount: over, fix });
}

/** Whether what lies on top shows its wrong side. */
const wrongSideUp = ({ plies }: Work): boolean =>
  plies.findLast(({ fusedTo }) => fusedTo === undefined)?.face === 'wrong';
