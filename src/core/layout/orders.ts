import type { Random } from './random.ts';

/**
 * The order in which rectangles are tried. Each entry is eight times the number of a kind, plus `TURNED` where it is
 * first tried turned by a quarter. For straight cuts also plus `UP` where the first cut beside it runs up the cloth, and
 * plus `FAR` where that cut leaves room for one more rectangle between it and this one.
 */
export type PieceOrder = Int32Array;

export const TURNED = 1;
export const UP = 2;
export const FAR = 4;

/** The kind of an entry. */
export const kindOf = (entry: number): number => entry >> 3;

/** A longer order costs time and wins nothing: alike rectangles share entries beyond this many. */
const LONGEST = 400;

type Sized = { width: number; height: number; count: number; turns: boolean };

/** Orders worth beginning with: by height, width, area and girth, the largest first. */
export function firstOrders(kinds: readonly Sized[]): PieceOrder[] {
  const total = kinds.reduce((sum, kind) => sum + kind.count, 0);
  const each = Math.max(1, Math.ceil(total / LONGEST));
  const entries = kinds.flatMap((kind, k) => Array<number>(Math.ceil(kind.count / each)).fill(8 * k));
  const by = (size: (kind: Sized) => number): PieceOrder =>
    Int32Array.from([...entries].sort((a, b) => size(kinds[kindOf(b)]!) - size(kinds[kindOf(a)]!) || a - b));
  return [by((s) => s.height), by((s) => s.width), by((s) => s.width * s.height), by((s) => s.width + s.height)];
}

/** A small change of an order that can be taken back: two entries that change places, or the bits one entry alters. */
export type OrderChange = { a: number; b: number } | { a: number; bits: number };

/**
 * Changes an order a little: two entries change places, or one is laid another way, as far as `ways` lets its kind.
 * Gives undefined where that changes nothing.
 */
export function change(order: PieceOrder, ways: Uint8Array, random: Random): OrderChange | undefined {
  const a = random.below(order.length);
  const way = ways[kindOf(order[a]!)]!;
  if (way > 0 && random.below(4) === 0) {
    const bits = way === TURNED ? way : (1 << random.below(3)) & way;
    if (bits === 0) return undefined;
    order[a]! ^= bits;
    return { a, bits };
  }
  const b = random.below(order.length);
  if (order[a] === order[b]) return undefined;
  swap(order, a, b);
  return { a, b };
}

/** Puts an order into any other, its entries laid any way that `ways` lets them. */
export function shuffle(order: PieceOrder, ways: Uint8Array, random: Random): void {
  for (let a = order.length - 1; a >= 0; a--) {
    swap(order, a, random.below(a + 1));
    order[a]! ^= random.below(8) & ways[kindOf(order[a]!)]!;
  }
}

/** Takes a change back. */
export function undo(order: PieceOrder, change: OrderChange): void {
  if ('bits' in change) order[change.a]! ^= change.bits;
  else swap(order, change.a, change.b);
}

function swap(order: PieceOrder, a: number, b: number): void {
  const kept = order[a]!;
  order[a] = order[b]!;
  order[b] = kept;
}
