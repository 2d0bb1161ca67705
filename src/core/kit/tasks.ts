/** What is done by whom in a class: what lies ready when it begins, and the tasks of a maker in order. */
import { makeUp } from '../project/steps/make-up.ts';
import { inSizeWords, sharesOf } from './shares.ts';
import { setsFor } from './group.ts';
import { LEARNER, verbNamed } from '../steps/index.ts';
import type { Pattern, Piece } from '../project/pattern.ts';
import type { Step } from '../project/step.ts';
import type { Group } from './group.ts';

/** A place that makers share. */
export type Station = 'iron' | 'machine';

/** Some minutes at one's own table or at a place that is shared. */
export type Visit = { at: 'table' | Station; minutes: number };

/** One thing a maker does, at one place after the other. */
export type ClassTask = {
  id: string;
  title: string;
  minutes: number;
  visits: Visit[];
  /** The next follows in the same session. */
  keepWithNext: boolean;
};

/**
 * Minutes for cutting, for somebody who does it at home: to press the cloth and straighten its end, half of it at the
 * iron, and for each piece. A learner takes LEARNER times as long. Common practice, no source; the whole of a project is
 * held against class plans in tests/reference/minutes.test.ts.
 */
const CUT_READY = 6;
const CUT_PIECE = 2;

/** The tasks of a maker: first the cutting of what is not cut already, then the steps that are not done before. */
export function tasksOf(pattern: Pattern): ClassTask[] {
  const cut = cutTask(Object.values(pattern.pieces).filter((piece) => isCutByMaker(piece, pattern)));
  const steps = makeUp(pattern).filter((step) => !step.doneBefore);
  return [...(cut ? [cut] : []), ...steps.map(stepTask)];
}

/** Hardware is bought and not cut. */
const isCut = ({ material }: Piece, { materials }: Pattern): boolean =>
  materials[material]?.material?.kind !== 'hardware';

const isCutByMaker = (piece: Piece, pattern: Pattern): boolean => isCut(piece, pattern) && !piece.preCut;

function cutTask(pieces: readonly Piece[]): ClassTask | undefined {
  const count = pieces.reduce((sum, piece) => sum + piece.count, 0);
  if (count === 0) return undefined;
  const [ready, minutes] = [LEARNER * CUT_READY, LEARNER * (CUT_READY + CUT_PIECE * count)];
  return {
    id: 'cut',
    title: count === 1 ? 'Cut the piece' : `Cut the ${count} pieces`,
    minutes,
    visits: [
      { at: 'iron', minutes: ready / 2 },
      { at: 'table', minutes: minutes - ready / 2 },
    ],
    keepWithNext: false,
  };
}

function stepTask({ id, title, verb, minutes, times, keepWithNext }: Step): ClassTask {
  const { value, iron, machine } = minutes;
  const table = Math.max(0, value - iron - machine);
  const shared = [
    { at: 'iron' as const, minutes: iron },
    { at: 'machine' as const, minutes: machine },
  ];
  const once: Visit[] = [{ at: 'table', minutes: table }, ...(verbNamed(verb).ironsFirst ? shared : shared.reverse())];
  return {
    id,
    title: times > 1 ? `${title}, ${times} times` : title,
    minutes: value * times,
    visits: once.filter((visit) => visit.minutes > 0).map(({ at, minutes }) => ({ at, minutes: minutes * times })),
    keepWithNext: keepWithNext === true,
  };
}

/** What the teacher gets ready, and what is left to the makers. */
export type Preparation = {
  /** Cut before the class: the piece, and how many for all sets. */
  cut: { label: string; count: number }[];
  /** Done before the class, for all sets. */
  done: { title: string; count: number }[];
  /** How long that takes the teacher, in minutes. */
  minutes: number;
  /** Labels of the pieces that makers cut, and how many each. */
  left: { label: string; count: number }[];
};

/** What is got ready for a group before the class begins. */
export function prepare(pattern: Pattern, group: Group): Preparation {
  const sets = setsFor(group);
  const pieces = Object.values(pattern.pieces).filter((piece) => isCut(piece, pattern));
  const cut = sharesOf(pattern, group).shares.flatMap((share) =>
    Object.values(share.pattern.pieces)
      .filter((piece) => piece.preCut && isCut(piece, share.pattern))
      .map(({ label, count }) => ({ label: inSizeWords(label, share.size), count: count * share.sets })),
  );
  const left = pieces.filter(({ preCut }) => !preCut).map(({ label, count }) => ({ label, count }));
  const before = makeUp(pattern).filter((step) => step.doneBefore);
  const done = before.map(({ title, times }) => ({ title, count: times * sets }));
  const cutting = cut.reduce((sum, { count }) => sum + CUT_PIECE * count, cut.length > 0 ? CUT_READY : 0);
  const doing = before.reduce((sum, { minutes, times }) => sum + minutes.value * times * sets, 0);
  return { cut, done, minutes: Math.round(cutting + doing), left };
}
