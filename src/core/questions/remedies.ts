/** What can still be done with work that came out otherwise than it should. */
import { formatLength, listed, SAME } from '../measure/index.ts';
import { sizeNames, type MeasuredWork, type SizeName } from './measured-work.ts';
import { workTolerance, type Explanation, type Measured } from './measured.ts';
import { called, wordingOf } from './sentences.ts';
import type { HoldCheck, Pattern, Piece, Size } from '../project/pattern.ts';

/** A piece whose cut size changes, in mm. */
export type SizeChange = { piece: string; label: string; from: Size; to: Size };

export type Remedy = { sentence: string } & (
  | { kind: 'mend'; how: 'trim' | 'sew-again' | 'unpick' | 'fold-again' | 'trim-top' | 'measure-again' }
  | {
      /** Go on with the work as it is, and fit the rest to it. */
      kind: 'carry-on';
      /** The measures as they really are now, mm. */
      values: Record<string, number>;
      pattern: Pattern;
      /** What is to be cut at another size than before. */
      changes: SizeChange[];
      /** What no longer goes where it should. */
      misfits: HoldCheck[];
    }
  | { kind: 'recut'; pieces: Pick<Piece, 'name' | 'label' | 'count' | 'size'>[] }
);

/** What to do, the least trouble first. */
export function remediesFor(
  work: MeasuredWork,
  measured: Measured,
  off: Measured,
  explanations: readonly Explanation[],
): Remedy[] {
  if (explanations.length > 0 && explanations.every(({ kind }) => kind === 'unit' || kind === 'exchanged')) {
    return [{ kind: 'mend', how: 'measure-again', sentence: 'Measure once more before you change anything.' }];
  }
  return [...mend(work, off, explanations), ...carryOn(work, measured, off), ...recut(work)];
}

function mend({ pattern, stage }: MeasuredWork, off: Measured, explanations: readonly Explanation[]): Remedy[] {
  const { edition, grid } = pattern;
  const show = (mm: number) => formatLength(mm, edition, { grid, style: 'set' });
  const tolerance = workTolerance[stage][edition];
  const large = sizeNames.filter((way) => (off[way] ?? 0) > tolerance);
  const small = sizeNames.filter((way) => (off[way] ?? 0) < -tolerance);
  const kinds = new Set(explanations.map(({ kind }) => kind));
  const one = (how: Extract<Remedy, { kind: 'mend' }>['how'], sentence: string): Remedy[] => [
    { kind: 'mend', how, sentence },
  ];
  if (kinds.has('not-sewn')) return [];
  if (kinds.has('not-trimmed')) return one('trim-top', 'Trim the top edge now.');
  if (kinds.has('fold-off') || kinds.has('pocket-forgotten')) {
    return one('fold-again', 'Press the folds out, check them against their lines, and fold again.');
  }
  if (large.length > 0 && small.length > 0) return [];
  if (stage === 'cut') {
    if (large.length === 0) return [];
    return one('trim', `Trim ${listed(large.map((way) => `${show(off[way]!)} off the ${way}`))}.`);
  }
  if (large.length > 0) return one('sew-again', 'Sew again inside the first seam, at the right distance.');
  const bySeam = kinds.has('seam-doubled') || kinds.has('other-allowance');
  return bySeam ? one('unpick', 'Where the seam is too wide, unpick it, and sew it at the right distance.') : [];
}

/**
 * Finds measures that, taken as they really came out, give the measured size, and works the project out with them: first
 * among those a learner may change, else among the others. One measure for each way that is off, and none that would
 * change the other way.
 */
function carryOn(work: MeasuredWork, measured: Measured, off: Measured): Remedy[] {
  const { pattern, stage, names, expected, sizeWith } = work;
  const tolerance = workTolerance[stage][pattern.edition];
  const stated = Object.values(pattern.measures).filter(
    ({ name, source, dimension }) => names.has(name) && source === 'stated' && dimension === 1,
  );
  const values: Record<string, number> = {};
  const open = new Set(sizeNames.filter((way) => Math.abs(off[way] ?? 0) > tolerance));
  for (const { name, value } of stated.toSorted((a, b) => Number(!a.adjustable) - Number(!b.adjustable))) {
    if (open.size === 0) break;
    const longer = sizeWith({ [name]: value + 1 });
    if (!longer) continue;
    const [way, ...others] = sizeNames.filter((way) => Math.abs(longer[way] - expected[way]) > 1e-6);
    if (way === undefined || others.length > 0 || !open.has(way)) continue;
    // Sizes follow measures in straight lines, mostly; whether this one does is seen below.
    const wanted = value + off[way]! / (longer[way] - expected[way]);
    const size = wanted > 0 ? sizeWith({ [name]: wanted }) : undefined;
    if (!size || Math.abs(size[way] - measured[way]!) > SAME) continue;
    values[name] = wanted;
    open.delete(way);
  }
  const size = open.size === 0 ? sizeWith(values) : undefined;
  const near = (way: SizeName) => off[way] === undefined || Math.abs(size![way] - measured[way]!) <= tolerance + SAME;
  if (!size || !sizeNames.every(near)) return [];
  const real = work.patternWith(values);
  const changes = changesBetween(pattern, real, work.made);
  const misfits = real.holds.filter((hold, i) => !hold.fits && (pattern.holds[i]?.fits ?? true));
  const wording = wordingOf(pattern);
  const show = (mm: number) => formatLength(mm, pattern.edition, { grid: pattern.grid, style: 'set' });
  const taken = listed(Object.entries(values).map(([name, mm]) => `${called(name, wording)} were ${show(mm)}`));
  const lost = listed([...new Set(misfits.map(({ what }) => what))]);
  const sentence = `Carry on as if ${taken}.${lost && ` But ${lost} would no longer go in.`}`;
  return [{ kind: 'carry-on', sentence, values, pattern: real, changes, misfits }];
}

function changesBetween(before: Pattern, after: Pattern, made: ReadonlySet<string>): SizeChange[] {
  return Object.values(before.pieces).flatMap(({ name, label, size: from }): SizeChange[] => {
    const to = after.pieces[name]?.size;
    const changed = to && sizeNames.some((way) => Math.abs(to[way] - from[way]) > SAME);
    return changed && !made.has(name) ? [{ piece: name, label, from, to }] : [];
  });
}

function recut({ inIt, pattern }: MeasuredWork): Remedy[] {
  const pieces = inIt.map(({ name, label, count, size }) => ({ name, label, count, size }));
  const [only] = pieces;
  if (!only) return [];
  const show = (mm: number) => formatLength(mm, pattern.edition, { grid: pattern.grid, style: 'set' });
  const sentence =
    pieces.length === 1
      ? `Cut it again, ${show(only.size.width)} by ${show(only.size.height)}.`
      : 'Cut its pieces again, and begin anew.';
  return [{ kind: 'recut', sentence, pieces }];
}
