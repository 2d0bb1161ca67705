/** How long a step takes one maker who is learning. Common practice, no source: an author who knows better says so. */
import { area } from '../geometry/index.ts';
import { size } from '../cloth/index.ts';
import { verbNamed } from './instruction.ts';
import type { Instruction } from './instruction.ts';
import type { Pressing } from './verb.ts';
import type { Stitch, Work } from '../cloth/index.ts';

/**
 * How long a step takes one maker, for one of the works it makes. `given` by the author, or estimated from its stitches
 * and folds. `machine` and `iron` are what of it is spent at the sewing machine and at the iron.
 */
export type Minutes = { value: number; given: boolean; machine: number; iron: number };

/** A row of stitches: its type after ISO 4915, and its length in mm. */
type Row = Pick<Stitch, 'class'> & { readonly length: number };

/** Getting ready for a step: reading it, finding the edges, setting the machine or the iron. */
const READY = 1;
/** Sewn by machine at an easy pace, and by hand, in mm a minute. */
const MACHINE = 300;
const HAND = 60;
/** Starting, securing and finishing a row. */
const ROW = 1;
/** A fold is marked, folded and pressed; half of that is at the iron. */
const FOLD = 1.5;
const FOLD_PRESSED = 0.75;
/** An iron presses 15 seconds on each 150 cm² to fuse; the sole is about that large. */
const SOLE = 15_000;
const PRESS = 15 / 60;

/**
 * The author's minutes, or an estimate from what is sewn, folded and pressed, in whole minutes.
 *
 * @param before the works the step took
 * @param rows that the step sewed
 */
export function minutesOf(
  step: Instruction,
  given: number | undefined,
  before: readonly Work[],
  after: Work,
  rows: readonly Row[],
): Minutes {
  const verb = verbNamed(step.verb);
  const byHand = (row: Row): boolean => row.class.startsWith('2');
  const took = (some: readonly Row[], pace: number): number =>
    some.reduce((sum, row) => sum + ROW + row.length / pace, 0);
  const machine = took(
    rows.filter((row) => !byHand(row)),
    MACHINE,
  );
  const hand = took(rows.filter(byHand), HAND);
  const [first] = before;
  const folds = verb.pleats && first ? (after.plies.length - first.plies.length) / layersOf(first) : 0;
  const pressed = pressedFor(verb.pressing?.(step), first, after);
  const iron = (verb.handledAtIron ? verb.handling : 0) + folds * FOLD_PRESSED + pressed;
  const all = READY + verb.handling + machine + hand + folds * FOLD + pressed;
  const value = given ?? Math.max(1, Math.round(all));
  const part = (minutes: number): number => (minutes * value) / all;
  return { value, given: given !== undefined, machine: part(machine), iron: part(iron) };
}

/** Layers that fold as one: cloth and what is fused to it. */
const layersOf = (work: Work): number => Math.max(1, work.plies.length);

function pressedFor(pressing: Pressing | undefined, first: Work | undefined, after: Work): number {
  switch (pressing) {
    case 'an interfacing':
      return first ? Math.ceil(areaOf(first) / SOLE) * PRESS : 0;
    case 'the work':
      return (Math.ceil(boxAreaOf(after) / SOLE) * PRESS) / 2;
    case 'a fold':
      return 1;
    case undefined:
      return 0;
  }
}

/** All plies of a work together, in mm². */
const areaOf = (work: Work): number => work.plies.reduce((sum, ply) => sum + area(ply.outline), 0);

/** The box round a work, in mm². */
function boxAreaOf(work: Work): number {
  const { width, height } = size(work);
  return width * height;
}
