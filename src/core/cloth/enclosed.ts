import { asOneStep, foldInHand } from './group.ts';
import { acrossWork, sewn } from './stitch.ts';
import { fail, ok } from '../measure/index.ts';
import { findEdge, lineInside, lineLeft, reversedEdge } from './edge.ts';
import { fold } from './fold.ts';
import { join } from './seam.ts';
import { movedEdge } from './sides.ts';
import { middleOfWork } from './place.ts';
import { movedWork } from './move.ts';
import { reflection } from '../geometry/transform.ts';
import { without } from './without.ts';
import type { EdgeReference } from './edge.ts';
import type { Line } from '../geometry/index.ts';
import type { PlyOutline, Sewn, Work } from './work.ts';

export type FrenchSeam = {
  readonly edges: readonly [EdgeReference, EdgeReference];
  /** Allowance of the first row, sewn wrong sides together, in mm. */
  readonly first: number;
  /** What is left of it after trimming; 1/8 in (3 mm) where the second row is at 1/4 in. */
  readonly trimTo: number;
  /** From the folded edge to the second row, sewn right sides together, in mm. */
  readonly second: number;
};

/**
 * A French seam: the raw edges are enclosed in a second seam. First wrong sides together, trimmed, folded right sides
 * together along the first row, sewn again, and opened; the ridge is pressed to the second work. The edges need first
 * plus second as allowance (Oklahoma Cooperative Extension, 4-H Construction Card 810: 3/8 and 1/4 in).
 *
 * Faults: those of joining; `too-deep` when the trimmed edges would stick out of the second row.
 *
 * @example
 * frenchSeam(front, back, { edges: ['right', 'left'], first: 9, trimTo: 3, second: 6 })
 */
export function frenchSeam(a: Work, b: Work, { edges, first, trimTo, second }: FrenchSeam): Sewn {
  if (!(trimTo < second && trimTo <= first && trimTo >= 0) || !Number.isFinite(first + second)) {
    const message = 'The allowance left after trimming must be smaller than the second allowance.';
    return fail({ code: 'too-deep', message, amount: trimTo - second });
  }
  // Upper sides are right sides; turned over, the first lies wrong side up, and wrong sides come together.
  const axis = { at: middleOfWork(a), angle: 90 };
  const turned = movedWork(a, reflection(axis));
  const found = findEdge(a, edges[0]);
  if (!found.ok) return found;
  const edge = movedEdge(found.value, reflection(axis));
  const sewnOnce = join(
    [
      { work: turned, edge },
      { work: b, edge: edges[1], face: 'up' },
    ],
    { allowance: first, press: 'unopened' },
  );
  if (!sewnOnce.ok) return sewnOnce;
  const line = lineInside(edge, first);
  const old = new Set(a.plies.map(({ id }) => id));
  const scrap = beyond(sewnOnce.value, line, trimTo, first);
  const trimmed = without(sewnOnce.value, () => [scrap]);
  if (!trimmed.ok) return trimmed;
  const { work: narrow, cutAway } = trimmed.value;

  // The second work goes all the way round the edge, and takes the allowances along to lie in between.
  const opened = foldInHand(
    { work: narrow, hand: new Set(narrow.plies.flatMap(({ id }) => (old.has(id) ? [] : [id]))) },
    { line: reversedEdge(line), lands: 'over', name: 'seam' },
  );
  if (!opened.ok) return opened;
  const round = fold(opened.value.work, { line, lands: 'under', name: 'seam' });
  if (!round.ok) return round;
  const ridge = lineInside(edge, first + second);
  const sewnTwice = sewn(round.value, 'seam', acrossWork(round.value, ridge));
  const body = new Set(round.value.plies.flatMap(({ id }) => (old.has(id) ? [] : [id])));
  const flat = foldInHand({ work: sewnTwice, hand: body }, { line: reversedEdge(ridge), lands: 'under', name: 'seam' });
  if (!flat.ok) return flat;
  const seams = sewnTwice.stitches.slice(-2).map(({ id }) => id);
  const { done } = sewnOnce.value;
  const note = { ...done.at(-1)!, did: 'French seam', stitches: seams, cutAway };
  return ok(asOneStep(done.slice(0, -1), movedWork(flat.value.work, reflection(axis)), note));
}

/** A ring round the allowances that lie more than so many mm right of a line; what it leaves is held by the row. */
function beyond(work: Work, line: Line, by: number, deepest: number): PlyOutline {
  const held = work.stitches.at(-1)!.id;
  const [from, to] = acrossWork(work, lineLeft(line, -by));
  const [farFrom, farTo] = acrossWork(work, lineLeft(line, -deepest - 1));
  return [farFrom, farTo, to, from].map((at) => ({ name: 'cut', from: at, bulge: 0, held }));
}

export type FlatFelledSeam = {
  readonly edges: readonly [EdgeReference, EdgeReference];
  /** Allowance of the first row, sewn right sides together, in mm. */
  readonly allowance: number;
  /** What is left of the second work's allowance, in mm: 1/4 in for an allowance of 5/8 in. */
  readonly trimTo: number;
  /** How much of the first work's allowance is folded round it, in mm: 1/4 in. */
  readonly turn: number;
  /** How far inside the fold the second row runs, in mm; 2 is common practice, no source. */
  readonly inside?: number;
};

/**
 * A flat-felled seam: sewn right sides together, one allowance trimmed, the other folded round it and sewn down, on the
 * wrong side of the second work (5/8, 1/4 and 1/4 in: Whafi, How to sew a flat-felled seam). The fell is allowance
 * minus turn wide.
 *
 * Faults: those of joining; `too-deep` when the trimmed allowance does not fit into the fell.
 *
 * @example
 * flatFelledSeam(front, back, { edges: ['right', 'left'], allowance: 16, trimTo: 6, turn: 6 })
 */
export function flatFelledSeam(a: Work, b: Work, how: FlatFelledSeam): Sewn {
  const { edges, allowance, trimTo, turn, inside = 2 } = how;
  const fell = allowance - turn;
  if (!Number.isFinite(allowance + trimTo + turn + inside) || turn <= 0 || trimTo < 0 || trimTo > fell) {
    const message = 'The trimmed allowance does not fit into the fell.';
    return fail({ code: 'too-deep', message, amount: trimTo - fell });
  }
  const edge = findEdge(a, edges[0]);
  if (!edge.ok) return edge;
  const layers = [
    { work: a, edge: edges[0] },
    { work: b, edge: edges[1] },
  ];
  const joined = join(layers, { allowance, press: 'unopened' });
  if (!joined.ok) return joined;
  const line = lineInside(edge.value, allowance);
  const old = new Set(a.plies.map(({ id }) => id));
  const second = (id: number) => !old.has(id);
  const scrap = beyond(joined.value, line, trimTo, allowance);
  const trimmed = without(joined.value, (ply) => (second(ply.id) ? [scrap] : []));
  if (!trimmed.ok) return trimmed;
  const { work: narrow, cutAway } = trimmed.value;

  const hand = new Set(narrow.plies.flatMap(({ id }) => (second(id) ? [id] : [])));
  const opened = foldInHand({ work: narrow, hand }, { line: reversedEdge(line), lands: 'over', name: 'seam' });
  if (!opened.ok) return opened;
  const { work: flat, moved } = opened.value;
  const below = new Set(flat.plies.flatMap(({ id }) => (moved.has(id) ? [] : [id])));
  const felled = foldInHand(
    { work: flat, hand: below },
    { line: lineLeft(line, -fell), lands: 'over', inside: true, name: 'fell' },
  );
  if (!felled.ok) return felled;
  const { work } = felled.value;
  const rowed = sewn(work, 'topstitch', acrossWork(work, lineLeft(line, inside - fell)));
  const stitches = rowed.stitches.slice(-2).map(({ id }) => id);
  const { done } = joined.value;
  return ok(asOneStep(done.slice(0, -1), rowed, { ...done.at(-1)!, did: 'flat-felled seam', stitches, cutAway }));
}
