import type { HoldCheck, Piece } from '../project/pattern.ts';
import type { PleatPlan, Pocket } from '../project/pleats.ts';

/** A piece that has pleats. */
export type Pleated = Piece & { pleats: PleatPlan };

export const isPleated = (piece: Piece): piece is Pleated => piece.pleats !== undefined;

/** A stretch of the strip as it lies: from where to where it runs, in heights of the panel, and the side in front. */
export type FlatLayer = {
  readonly from: number;
  readonly to: number;
  readonly face: 'right side' | 'wrong side' | 'trimmed';
  /** Whether it ends at a fold that is made, at the strip's raw edge, or goes on where the drawing stops. */
  readonly end: 'fold' | 'raw' | 'on';
};

/** The heights that a drawing of the folding shows: enough above and below for the rest of the strip to be seen. */
export type Window = { readonly bottom: number; readonly top: number };

/**
 * How the strip lies when its first folds are made, from the front to the back: each fold turns all that is left of
 * the strip behind what is folded already, up and down by turns. A part of a fold, as in 2.5, is the moment when the
 * rest of the strip is being turned, as it looks from the front.
 *
 * @param made how many folds are made, from 0 to all of them
 */
export function flatLayers(plan: PleatPlan, made: number): FlatLayer[] {
  const whole = Math.floor(Math.max(0, Math.min(made, plan.folds.length)));
  const turned = whole < plan.folds.length ? Math.max(0, made) - whole : 0;
  const face = (i: number): FlatLayer['face'] => (i % 2 === 0 ? 'right side' : 'wrong side');
  const up = (i: number) => (i % 2 === 0 ? 1 : -1);
  const runs: FlatLayer[] = plan.runs
    .slice(0, whole)
    .map(({ from, to }, i) => ({ from, to, face: face(i), end: 'fold' as const }));
  const from = plan.folds[whole - 1]?.height ?? 0;
  const left = plan.stripLength - (plan.folds[whole - 1]?.at ?? 0);
  if (whole === plan.folds.length) return [...runs, ...lastRuns(plan)];
  if (turned === 0) return [...runs, { from, to: from + up(whole) * left, face: face(whole), end: 'raw' }];
  // The next stretch lies already; what comes after it swings, and is seen foreshortened.
  const next = plan.runs[whole]!;
  const swing = Math.cos(Math.PI * turned) * (plan.stripLength - next.end);
  return [
    ...runs,
    { from: next.from, to: next.to, face: face(whole), end: 'fold' },
    { from: next.to, to: next.to + up(whole) * swing, face: face(swing > 0 ? whole : whole + 1), end: 'raw' },
  ];
}

/** Behind the last fold the cloth runs up to the panel's top; what stands above it will be trimmed off. */
function lastRuns(plan: PleatPlan): FlatLayer[] {
  const { from, to } = plan.runs.at(-1)!;
  const last: FlatLayer = { from, to, face: 'right side', end: 'raw' };
  return plan.trim > 0 ? [last, { from: to, to: to + plan.trim, face: 'trimmed', end: 'raw' }] : [last];
}

/** The panel when all is done: folded, and trimmed to its height. */
export function folded(plan: PleatPlan): FlatLayer[] {
  return plan.runs.map(({ from, to }, i) => ({
    from,
    to,
    face: i % 2 === 0 ? 'right side' : 'wrong side',
    end: i === plan.runs.length - 1 ? 'raw' : 'fold',
  }));
}

/** The window through which the folding is watched. It stays the same from the first fold to the last. */
export function windowOf(plan: PleatPlan): Window {
  const spare = 0.3 * plan.panelHeight;
  return { bottom: -spare, top: plan.panelHeight + Math.max(spare, plan.trim) };
}

/** What of a stretch lies in the window. */
export function within(run: FlatLayer, window: Window): FlatLayer {
  const clamp = (height: number) => Math.max(window.bottom, Math.min(window.top, height));
  const to = clamp(run.to);
  return { ...run, from: clamp(run.from), to, end: to === run.to ? run.end : 'on' };
}

/** A range of heights, `from` the lower. */
export type HeightRange = { readonly from: number; readonly to: number };

/** What of a range others, in front of it, leave to be seen. */
export function uncovered(range: HeightRange, front: readonly HeightRange[]): HeightRange[] {
  return front.reduce<HeightRange[]>(
    (seen, cover) =>
      seen
        .flatMap(({ from, to }) => [
          { from, to: Math.min(to, cover.from) },
          { from: Math.max(from, cover.to), to },
        ])
        .filter(({ from, to }) => to - from > 1e-9),
    [range],
  );
}

export const rangeOf = ({ from, to }: FlatLayer): HeightRange => ({ from: Math.min(from, to), to: Math.max(from, to) });

/** How far the folding has come, and what of the strip can be seen of it. */
export type Stage = {
  /** Folds made, from 0 to all; a part is a fold being made. */
  made: number;
  /** Whether the folding is watched, rather than its result shown. */
  watched: boolean;
  bottom: number;
  top: number;
  /** Whether all folds are made. */
  complete: boolean;
  /** From the front to the back. */
  runs: FlatLayer[];
  /** Pockets of which both folds are made. */
  pockets: Pocket[];
};

/**
 * The stage that a setting asks for.
 *
 * @param folds how many folds are made; left out, the finished panel
 * @param held something that stands in a pocket when all is done, perhaps above the panel's top
 */
export function stageOf(plan: PleatPlan, folds: number | undefined, held?: HoldCheck): Stage {
  const watched = folds !== undefined;
  const made = watched ? Math.max(0, Math.min(folds, plan.folds.length)) : plan.folds.length;
  const window = watched ? windowOf(plan) : { bottom: 0, top: plan.panelHeight };
  const stands = held ? pocketOf(plan, held).bottom + held.size.height : 0;
  return {
    made,
    watched,
    complete: made === plan.folds.length,
    bottom: window.bottom,
    top: Math.max(window.top, stands),
    runs: (watched ? flatLayers(plan, made) : folded(plan)).map((run) => within(run, window)),
    pockets: plan.pockets.filter(({ n }) => made >= 2 * n),
  };
}

/** The pocket that something is held in; the highest when it does not say. */
export const pocketOf = ({ pockets }: PleatPlan, { pocket }: HoldCheck): Pocket =>
  pockets[(pocket ?? pockets.length) - 1] ?? pockets.at(-1)!;

/** How much of the strip lies beyond the last fold that is made. */
export const stillFlat = (plan: PleatPlan, made: number): number =>
  plan.stripLength - (plan.folds[Math.floor(made) - 1]?.at ?? 0);

/** Whether lengths are all one, as far as cloth goes. */
export const alike = (lengths: readonly number[]): boolean =>
  lengths.every((length) => Math.abs(length - lengths[0]!) < 1e-6);

/** How far the folding has come, in two notes of a line each. */
export function progress(plan: PleatPlan, made: number, set: (mm: number) => string): string[] {
  const count = Math.floor(made);
  const flat = count === plan.folds.length ? 'nothing' : set(stillFlat(plan, made));
  return [`Folds made: ${count} of ${plan.folds.length}.`, `Still flat: ${flat}.`];
}
