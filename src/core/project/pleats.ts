/**
 * Pleats across a strip that make stepped pockets.
 *
 * The strip lies right side up and heights are measured from its bottom raw edge. From there the cloth goes up to the
 * top of pocket 1 (a mountain fold), down behind to its bottom (a valley fold), up again to the top of pocket 2, and so
 * on; above the last pocket it runs on to the panel's top raw edge. Where a fold lies along the flat strip is the sum
 * of the ways up and down to it.
 *
 * Adding up the ways gives, for pockets of equal depth, length = height + 2 × pockets × depth: the rule of the trade
 * that a pleated width takes twice the depth of each pleat more (NIMI, Government of India, CITS Dress Making Trade
 * Practical, p. 203).
 */

import { evaluate, type Node } from '../formula/index.ts';
import { foldTerm, panelHeightTerm, pocketDepthTerm, type PartTerm, type PleatTerms } from './pleat-terms.ts';
import { numberTerm, type Term } from './terms.ts';

/** More pockets than anyone folds into one strip; a guard against a slip of the key. */
export const MOST_POCKETS = 24;

export type Pocket = {
  /** Counted from 1 at the bottom. */
  n: number;
  /** Height of its top fold above the panel's bottom raw edge, mm. */
  top: number;
  /** Height of its bottom fold. */
  bottom: number;
  /** top - bottom. */
  depth: number;
  /** What shows of its front: from the pocket below (for pocket 1, from the bottom stitch line) to its top. */
  reveal: number;
};

export type PleatFold = {
  /** Along the flat strip from its bottom raw edge, mm. */
  at: number;
  /** Seen from the right side. */
  kind: 'mountain' | 'valley';
  /** Where it lies in the folded panel. */
  height: number;
  pocket: number;
};

/** One stretch of the strip between two folds, in the order in which the cloth runs from the bottom edge. */
export type StripRun = { start: number; end: number; from: number; to: number };

export type PleatPlan = {
  pockets: Pocket[];
  folds: PleatFold[];
  /** The stretches between the folds; the first starts at the bottom raw edge, the last ends where the panel is trimmed. */
  runs: StripRun[];
  bottoms: 'stepped' | 'level' | 'free';
  /** The raw edge that fold lines are marked from. */
  from: 'bottom' | 'top';
  /** Length of the strip as cut, mm. */
  stripLength: number;
  /** Height of the folded panel from raw edge to raw edge, after trimming. */
  panelHeight: number;
  /** What is trimmed off the top after folding. */
  trim: number;
  /** How many layers of the strip lie at a height above the bottom raw edge. */
  layersAt: (height: number) => number;
};

/** Why a strip cannot be folded so. `field` names the wish at fault, `index` the fold; `amount` says by how much, in mm. */
export type PleatFault = {
  code:
    | 'pockets-not-whole'
    | 'too-many-pockets'
    | 'no-depth'
    | 'no-step'
    | 'below-bottom-edge'
    | 'head-too-low'
    | 'strip-too-short'
    | 'odd-folds'
    | 'folds-out-of-order'
    | 'pocket-hidden'
    | 'no-length';
  field: 'pockets' | 'depth' | 'step' | 'lift' | 'head' | 'height' | 'length' | 'folds';
  index?: number;
  amount?: number;
};

export type PleatResult = { ok: true; value: PleatPlan } | { ok: false; fault: PleatFault };

/** What both ways of giving pleats share. All in mm. */
export type Strip = {
  /** Seam allowance at the panel's bottom and top edge. */
  allowance: { bottom: number; top: number };
  /** Length of the strip, when it is given. */
  length?: number;
  /** Height of the folded panel from raw edge to raw edge, when it is given. */
  height?: number;
  from?: 'bottom' | 'top';
};

export type PleatSettings = Strip & {
  pockets: number;
  depth: number;
  step: number;
  /** From the bottom stitch line to the lowest pocket's bottom; 0 if left out. */
  lift?: number;
  /** From the highest pocket's top to the raw edge, when it is given. */
  head?: number;
  bottoms?: 'stepped' | 'level';
};

export type PleatFolds = Strip & {
  /** Along the strip from the raw edge named by `from`, in the order mountain, valley from the bottom. */
  folds: readonly number[];
};

/** The sums of a wish: where a fold lies from the bottom raw edge, asked for from fold 1 on, and how high the panel is. */
export type PleatSums = { fold(n: number): number; panelHeight(): number };

/** Less than this is no difference: half the tolerance of "the same length" would already be too fine to sew. */
const NONE = 1e-6;

const fail = (code: PleatFault['code'], field: PleatFault['field'], more: Partial<PleatFault> = {}): PleatResult => ({
  ok: false,
  fault: { code, field, ...more },
});

/**
 * The fold lines for the pockets one wishes for.
 *
 * Without `length` the strip is as long as it has to be. Without `head` and `height` the panel ends at the seam
 * allowance above the last pocket, or, when the length is given, where the strip ends. `sums` works the sums of pleats
 * out in the names of a project; without it the same sums are worked out for the wish alone.
 *
 * @example
 * planPleats({ pockets: 2, depth: 50, step: 20, allowance: { bottom: 6, top: 6 } }).value.stripLength // => 282
 * planPleats({ pockets: 2, depth: 50, step: 20, allowance: { bottom: 6, top: 6 } }).value.folds.map((f) => f.at) // => [56, 106, 176, 226]
 */
export function planPleats(wish: PleatSettings, sums: PleatSums = sumsOf(wish)): PleatResult {
  const { pockets: count, depth, step, allowance, lift = 0, bottoms = 'stepped' } = wish;
  if (!Number.isInteger(count) || count < 1) return fail('pockets-not-whole', 'pockets');
  if (count > MOST_POCKETS) return fail('too-many-pockets', 'pockets');
  if (!(depth > NONE)) return fail('no-depth', 'depth', { amount: -depth });
  if (!(step > NONE) && count > 1) return fail('no-step', 'step', { amount: -step });
  if (lift < -allowance.bottom) return fail('below-bottom-edge', 'lift', { amount: -allowance.bottom - lift });

  const folds = Array.from({ length: 2 * count }, (_, i) => sums.fold(i + 1));
  const heights = heightsOf(folds);
  const highest = heights.at(-2)!;
  const head = wish.head ?? (wish.height === undefined && wish.length === undefined ? allowance.top : undefined);
  if (head !== undefined && head < allowance.top - NONE) {
    return fail('head-too-low', 'head', { amount: allowance.top - head });
  }
  // With a height of its own the panel may be trimmed; then its end is no size that has a name.
  const top = head === undefined ? undefined : wish.height === undefined ? sums.panelHeight() : highest + head;
  return assemble(folds, heights, bottoms, { ...wish, top });
}

/** The same sums for a wish alone. Its lengths stand in them as they are. */
function sumsOf({ pockets, depth, step, lift = 0, head, allowance, bottoms }: PleatSettings): PleatSums {
  const terms: PleatTerms = {
    bottom: millimetres(allowance.bottom),
    top: millimetres(allowance.top),
    pockets: numberTerm(pockets),
    depth: millimetres(depth),
    step: millimetres(step),
    lift: millimetres(lift),
    head: head === undefined ? undefined : millimetres(head),
    isLevel: bottoms === 'level',
  };
  const value = ({ text, tree }: Term) => {
    const found = evaluate({ text, tree, names: [] }, { get: () => undefined });
    return found.ok ? found.value.value : NaN;
  };
  let last = 0;
  const of: PartTerm = (part) => (part.what === 'pocket depth' ? pocketDepthTerm(terms, part.n) : millimetres(last));
  return {
    fold: (n) => (last = value(foldTerm(terms, n, of))),
    panelHeight: () => value(panelHeightTerm(terms)),
  };
}

function millimetres(value: number): Term {
  const text = `${value} mm`;
  const tree: Node = { kind: 'length', value, edition: 'metric', start: 0, end: text.length };
  return { text, tree, loose: false, sayable: true };
}

/** How high each fold lies in the folded panel: the ways go up and down by turns. */
function heightsOf(folds: readonly number[]): number[] {
  let [at, height] = [0, 0];
  return folds.map((fold, i) => {
    height += i % 2 === 0 ? fold - at : at - fold;
    at = fold;
    return height;
  });
}

/**
 * The pockets that given fold lines make.
 *
 * @example
 * planFolds({ folds: [56, 106, 176, 226], length: 282, allowance: { bottom: 6, top: 6 } }).value.pockets.map((p) => p.depth) // => [50, 50]
 * planFolds({ folds: [56, 106, 176, 226], length: 282, allowance: { bottom: 6, top: 6 } }).value.panelHeight // => 82
 */
export function planFolds(strip: PleatFolds): PleatResult {
  const { length, from = 'bottom' } = strip;
  if (strip.folds.length % 2 === 1) return fail('odd-folds', 'folds');
  if (strip.folds.length > 2 * MOST_POCKETS) return fail('too-many-pockets', 'folds');
  if (from === 'top' && length === undefined) return fail('no-length', 'length');
  const at = from === 'top' ? strip.folds.map((fold) => length! - fold) : [...strip.folds];

  const heights = heightsOf(at);
  let before = 0;
  for (const [i, fold] of at.entries()) {
    if (!(fold > before + NONE)) return fail('folds-out-of-order', 'folds', { index: i, amount: before - fold });
    const height = heights[i]!;
    if (height < -NONE) return fail('below-bottom-edge', 'folds', { index: i, amount: -height });
    before = fold;
    const inFront = i % 2 === 0 ? heights[i - 2] : undefined;
    if (inFront !== undefined && !(height > inFront + NONE)) {
      return fail('pocket-hidden', 'folds', { index: i, amount: inFront - height });
    }
  }
  if (length === undefined && strip.height === undefined) return fail('no-length', 'length');
  if (length !== undefined && length < before + NONE)
    return fail('strip-too-short', 'length', { amount: before - length });
  return assemble(at, heights, undefined, strip);
}

/** Whether pockets given by their folds are of one depth, or all end at one height. */
function evenness(tops: readonly number[], valleys: readonly number[]): PleatPlan['bottoms'] {
  const same = (values: readonly number[]) => values.every((value) => Math.abs(value - values[0]!) < NONE);
  if (same(tops.map((top, k) => top - valleys[k]!))) return 'stepped';
  return same(valleys) ? 'level' : 'free';
}

/**
 * Folds the strip at its lines, and sees to length, height and trimming. `top` is where the strip's own top edge is
 * wished.
 */
function assemble(
  lines: readonly number[],
  heights: readonly number[],
  wished: PleatSettings['bottoms'],
  strip: Strip & { top?: number | undefined },
): PleatResult {
  const tops = heights.filter((_, i) => i % 2 === 0);
  const valleys = heights.filter((_, i) => i % 2 === 1);
  const folds = lines.map((at, i): PleatFold => ({
    at,
    kind: i % 2 === 0 ? 'mountain' : 'valley',
    height: heights[i]!,
    pocket: Math.floor(i / 2) + 1,
  }));
  const runs: StripRun[] = [];
  let at = 0;
  let height = 0;
  const go = (end: number, to: number) => {
    runs.push({ start: at, end, from: height, to });
    at = end;
    height = to;
  };
  for (const fold of folds) go(fold.at, fold.height);
  const highest = tops.at(-1)!;
  const lastFold = at;

  // The strip's own end, in the folded panel: where its length takes it, or where the wish puts it.
  const end = strip.length === undefined ? (strip.top ?? strip.height!) : height + (strip.length - lastFold);
  const panelHeight = strip.height ?? strip.top ?? end;
  const least = highest + strip.allowance.top;
  if (panelHeight < least - NONE) {
    return strip.height === undefined && strip.length !== undefined
      ? fail('strip-too-short', 'length', { amount: least - panelHeight })
      : fail('head-too-low', 'height', { amount: least - panelHeight });
  }
  if (end < panelHeight - NONE) {
    const field = strip.length === undefined ? 'head' : 'length';
    return fail(field === 'head' ? 'head-too-low' : 'strip-too-short', field, { amount: panelHeight - end });
  }
  go(at + Math.abs(panelHeight - height), panelHeight);
  const trim = Math.max(0, end - panelHeight);

  const pockets = tops.map((top, k): Pocket => {
    const below = k === 0 ? strip.allowance.bottom : tops[k - 1]!;
    return { n: k + 1, top, bottom: valleys[k]!, depth: top - valleys[k]!, reveal: top - below };
  });
  return {
    ok: true,
    value: {
      pockets,
      folds,
      runs,
      bottoms: wished ?? evenness(tops, valleys),
      from: strip.from ?? 'bottom',
      stripLength: strip.length ?? at + trim,
      panelHeight,
      trim: trim < NONE ? 0 : trim,
      layersAt: (where) =>
        runs.filter((run) => where > Math.min(run.from, run.to) && where < Math.max(run.from, run.to)).length,
    },
  };
}
