import type { PieceOrder } from './orders.ts';

/**
 * Rectangles to lay in a box, in whole units (`length-units.ts`), so that sums are exact. The box has a width; its height is
 * open, or capped by what a search aims at.
 */
export type RectangleKind = {
  /** Across the box and up it, as it lies unturned. */
  width: number;
  height: number;
  count: number;
  /** May be turned by a quarter. */
  turns: boolean;
  /** Must lie against the left side, where the cloth is folded. */
  atFold?: boolean;
  /** Where on the repeat its bottom must lie: bottom ≡ `phase` modulo `every`. */
  repeat?: { every: number; phase: number };
};

/** One rectangle laid: its lower left corner, and whether it was turned. */
export type LaidRectangle = { kind: number; x: number; y: number; turned: boolean };

/** A way of laying rectangles: its result depends on nothing but the order. */
export type Layer = {
  /**
   * Lays in an order (`orders.ts`) in a box of a width, under a cap, and gives the area wasted below the cap; 0 when all
   * rectangles were laid. Stops as soon as more than `limit` is wasted, and gives that.
   */
  lay: (order: PieceOrder, width: number, cap: number, limit: number) => number;
  /** How high the last layout reached. */
  height: () => number;
  /** The rectangles of the last layout. */
  laid: () => LaidRectangle[];
};

/** The area of all rectangles of a box together. */
export const rectangleArea = (kinds: readonly RectangleKind[]): number =>
  kinds.reduce((sum, kind) => sum + kind.width * kind.height * kind.count, 0);

/** How far above the floor a rectangle must begin so that it lies right on the repeat. */
export function liftOf({ repeat }: RectangleKind, floor: number): number {
  if (!repeat) return 0;
  return (((repeat.phase - floor) % repeat.every) + repeat.every) % repeat.every;
}
