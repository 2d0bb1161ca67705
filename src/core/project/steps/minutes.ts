/** How long a step takes one maker who is learning. Common practice, no source: an author who knows better says so. */
import { areaOf, sizeOf } from './measure.ts';
import type { Minutes, SewnRow } from '../step.ts';
import type { StepPlan } from './plan.ts';
import type { Verb } from './verbs.ts';
import type { Work } from '../../cloth/index.ts';

/** Getting ready for a step: reading it, finding the edges, setting the machine or the iron. */
const READY = 1;
/** Minutes that handling takes, beside the sewing: matching, pinning, folding, turning. */
const HANDLING: Record<Verb, number> = {
  fuse: 1,
  join: 2,
  'sew round': 3,
  'french seam': 5,
  'flat-felled seam': 5,
  pleat: 1,
  tuck: 2,
  hem: 2,
  lay: 1,
  baste: 0,
  trim: 1,
  grade: 3,
  'clip corners': 1,
  'turn over': 0,
  turn: 3,
  'close gap': 1,
  gather: 4,
  'box corner': 4,
  bind: 6,
  casing: 4,
  attach: 4,
  fold: 1,
  topstitch: 0,
  edgestitch: 0,
  press: 1,
};

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

/** The author's minutes, or an estimate from what is sewn, folded and pressed, in whole minutes. */
export function minutesOf(plan: StepPlan, before: readonly Work[], after: Work, rows: readonly SewnRow[]): Minutes {
  const byHand = (row: SewnRow): boolean => row.class.startsWith('2');
  const took = (some: readonly SewnRow[], pace: number): number =>
    some.reduce((sum, row) => sum + ROW + row.length / pace, 0);
  const machine = took(
    rows.filter((row) => !byHand(row)),
    MACHINE,
  );
  const hand = took(rows.filter(byHand), HAND);
  const folds = plan.verb === 'pleat' ? (after.plies.length - before[0]!.plies.length) / layersOf(before[0]!) : 0;
  const pressing = plan.verb === 'fuse' ? Math.ceil(areaOf(before[0]!) / SOLE) * PRESS : pressed(plan, after);
  // Who fuses or presses handles the work at the iron.
  const atIron = ['fuse', 'press'].includes(plan.verb) ? HANDLING[plan.verb] : 0;
  const iron = atIron + folds * FOLD_PRESSED + pressing;
  const all = READY + HANDLING[plan.verb] + machine + hand + folds * FOLD + pressing;
  const given = plan.words.minutes;
  const value = given ?? Math.max(1, Math.round(all));
  const part = (minutes: number): number => (minutes * value) / all;
  return { value, given: given !== undefined, machine: part(machine), iron: part(iron) };
}

/** Layers that fold as one: cloth and what is fused to it. */
const layersOf = (work: Work): number => Math.max(1, work.plies.length);

function pressed({ verb, words }: StepPlan, after: Work): number {
  const pressesWork = verb === 'press' || verb === 'turn';
  if (pressesWork) return (Math.ceil(sizeOf(after) / SOLE) * PRESS) / 2;
  return verb === 'hem' || (verb === 'join' && words.press !== undefined) ? 1 : 0;
}
