import { change, kindOf, shuffle, undo, type PieceOrder } from './orders.ts';
import type { LaidRectangle, Layer } from './box.ts';
import type { Random } from './random.ts';

/** What a search has found: a layout, how high it reaches, and how many layouts were tried so far. */
export type Found = { height: number; laid: LaidRectangle[]; tries: number };

/** A way of laying, and how often it has its turn beside the others. */
export type LayerShare = { layer: Layer; share: number };

export type Search = {
  width: number;
  /** No layout is lower than this: the search ends when it reaches it. */
  bound: number;
  /** A layout to begin with. */
  known?: Found;
  /** The orders to begin with. */
  starts: PieceOrder[];
  /** What a change may alter in an entry of each kind. */
  ways: Uint8Array;
  random: Random;
  /** The search ends after so many layouts. */
  tries: number;
  /** Asked now and then: should the search end? */
  stop: () => boolean;
};

/** The layout that wastes least in a box that may be too small for all. */
export type Fullest = { height: number; laid: LaidRectangle[]; tries: number; wasted: number };

/**
 * Looks for layouts that leave less and less out of a box of fixed height, and yields each. It ends when all went in,
 * or the box is full. Also yields the number of tries now and then.
 */
export function* fullest(manners: LayerShare[], cap: number, search: Search): Generator<Fullest | number, void, void> {
  const { width, random, stop } = search;
  let tries = 0;
  let least = Infinity;
  const lines = manners.flatMap(({ layer }) => search.starts.map((start) => ({ layer, order: start.slice() })));
  const found = (layer: Layer, wasted: number): Fullest => {
    least = wasted;
    return { height: layer.height(), laid: layer.laid(), tries, wasted };
  };
  const changes = canChange(search);
  for (let patience = 64; ; patience *= 2) {
    for (const { layer, order } of lines) {
      let current = layer.lay(order, width, cap, Infinity);
      if (current < least) yield found(layer, current);
      if (current === 0) return;
      for (let idle = 0; idle < patience && changes; idle++) {
        if (tries >= search.tries) return;
        if ((++tries & 63) === 0) {
          yield tries;
          if (stop()) return;
        }
        const changed = change(order, search.ways, random);
        if (!changed) continue;
        const wasted = layer.lay(order, width, cap, current);
        if (wasted > current) undo(order, changed);
        else {
          if (wasted < current) idle = 0;
          current = wasted;
          if (current < least) yield found(layer, current);
          if (current === 0) return;
        }
      }
    }
    if (!changes) return;
  }
}

/**
 * Looks for lower and lower layouts, and yields each. Between the bound and the lowest layout found a height is aimed
 * at, halfway; a local search then looks for an order that wastes little enough under that cap. What fails is tried
 * again with twice the time (the plan of Wei et al. 2017, Comput. Oper. Res. 80:113-127).
 *
 * Also yields the number of tries now and then, so that the caller can show that the work goes on.
 */
export function* shortest(manners: LayerShare[], search: Search): Generator<Found | number, void, void> {
  const { width, bound, random, stop } = search;
  let tries = 0;
  let best = search.known;

  for (const start of search.starts) {
    for (const { layer } of manners) {
      tries++;
      if (layer.lay(start, width, Infinity, Infinity) > 0) continue;
      if (best && layer.height() >= best.height) continue;
      best = { height: layer.height(), laid: layer.laid(), tries };
      yield best;
      if (best.height <= bound) return;
    }
  }
  if (!best || !canChange(search)) return;

  // Every manner keeps orders of its own: what one has learnt does not suit another.
  const lines = manners.map((manner) => ({ ...manner, orders: search.starts.map((order) => order.slice()), spent: 0 }));
  // When all heights have failed for so long, one order after the other begins anew, by chance: a way out of where it is stuck.
  const longest = Math.max(512, 40 * search.starts[0]!.length);
  let stuck = 0;
  const anew = (): void => {
    for (const { orders } of lines) shuffle(orders[stuck % orders.length]!, search.ways, random);
    stuck++;
  };
  let patience = 64;
  let low = bound;
  let turn = 0;
  while (tries < search.tries && !stop()) {
    const cap = Math.max(bound, Math.floor((low + best.height - 1) / 2));
    // Whose turn is longest overdue.
    const line = lines.reduce((a, b) => (b.spent / b.share < a.spent / a.share ? b : a));
    const { layer } = line;
    const order = line.orders[turn++ % line.orders.length]!;
    const began = tries;
    let current = layer.lay(order, width, cap, Infinity);
    tries++;
    for (let idle = 0; current > 0 && idle < patience && tries < search.tries; idle++) {
      if ((++tries & 63) === 0) {
        yield tries;
        if (stop()) break;
      }
      const changed = change(order, search.ways, random);
      if (!changed) continue;
      const wasted = layer.lay(order, width, cap, current);
      if (wasted > current) undo(order, changed);
      else {
        if (wasted < current) idle = 0;
        current = wasted;
      }
    }
    line.spent += tries - began;
    if (current === 0) {
      best = { height: layer.height(), laid: layer.laid(), tries };
      yield best;
      if (best.height <= bound) return;
      if (low >= best.height) low = bound;
    } else {
      low = cap + 1;
      if (low >= best.height) {
        low = bound;
        if (patience < longest) patience *= 2;
        else anew();
      }
    }
  }
}

/** Whether there is more than one order at all. */
const canChange = ({ starts, ways }: Search): boolean =>
  starts.some((order) => order.some((entry) => entry !== order[0] || ways[kindOf(entry)]! > 0));
