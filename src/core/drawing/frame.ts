import type { Box } from '../geometry/readings.ts';
import type { Point } from '../geometry/point.ts';
import type { Onto } from './path.ts';

/** Where what is drawn to scale lies on its sheet. */
export type Frame = {
  /** mm on the sheet for 1 mm of cloth. */
  readonly scale: number;
  /** The box of what is drawn to scale, in mm of the sheet. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Across and up in the cloth, to the sheet's x and y. */
  x: (across: number) => number;
  y: (height: number) => number;
  readonly onto: Onto;
};

/**
 * Puts a box of cloth on the sheet with its upper left corner at `left`, `top`.
 *
 * @example
 * frameOf({ x: 0, y: 0, width: 100, height: 50 }, 0.5, 10, 20).onto({ x: 100, y: 0 }) // => { x: 60, y: 45 }
 */
export function frameOf(cloth: Box, scale: number, left: number, top: number): Frame {
  const x = (across: number) => left + (across - cloth.x) * scale;
  const y = (height: number) => top + (cloth.y + cloth.height - height) * scale;
  return {
    scale,
    left,
    right: left + cloth.width * scale,
    top,
    bottom: top + cloth.height * scale,
    x,
    y,
    onto: (point: Point) => ({ x: x(point.x), y: y(point.y) }),
  };
}
