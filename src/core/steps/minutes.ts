/**
 * How long a step takes one maker. The parts below are those of somebody who sews at home; who learns it in a class takes
 * twice as long. tests/reference/minutes.test.ts holds both against published times: nine stages of a pair of jeans, minutes
 * of a factory, and class plans from a pillowcase to a tote. Each part by itself is common practice, no source. An author
 * who knows better says so.
 */
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

/**
 * A learner in a class takes so many times as long as somebody who sews at home: steps are read and shown, pieces found,
 * rows unpicked.
 */
export const LEARNER = 2;

/** Getting ready for a step: reading it, finding the edges, setting the machine or the iron. */
const READY = 1;
/** Sewn by machine at an easy pace, and by hand, in mm a minute. */
const MACHINE = 300;
const HAND = 60;
/** Starting, securing and finishing a row. */
const ROW = 1;
/** A fold is marked, folded and pressed; half of that is at the iron. */
const FOLD = 1;
const FOLD_PRESSED = 0.5;
/** A third work, and each further one, is matched and held with the others: a zip, a flap. */
const CAUGHT = 4;
/** An iron presses 15 seconds on each 150 cm² to fuse; the sole is about that large. */
const SOLE = 15_000;
const PRESS = 15 / 60;

/**
 * The author's minutes, or an estimate from what is sewn, folded and pressed, in whole minutes.
 *
 * @param before the works the step took
 * @param rows that the step sewed
 * @param pace how many times as long as somebody who sews at home: LEARNER for a maker, 1 for a teacher
 */
export function minutesOf(
  step: Instruction,
  given: number | undefined,
  before: readonly Work[],
  after: Work,
  rows: readonly Row[],
  pace: number = LEARNER,
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
  const caught = CAUGHT * Math.max(0, before.length - 2);
  const all = READY + verb.handling + caught + machine + hand + folds * FOLD + pressed;
  const value = given ?? Math.max(1, Math.round(pace * all));
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
