import type { Transform } from '../geometry/transform.ts';
import type { SeenFrom } from '../cloth/visible.ts';

/**
 * How far the upward direction of a piece is turned where it lies, clockwise in whole degrees from 0 up to 359, as it
 * is seen from one side.
 *
 * @example
 * turnedUp(asCut, 'front') // => 0
 */
export function turnedUp({ c, d }: Transform, side: SeenFrom): number {
  const degrees = Math.round((Math.atan2(side === 'front' ? c : -c, d) * 180) / Math.PI);
  return (degrees + 360) % 360;
}
