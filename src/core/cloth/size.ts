import type { Box } from '../geometry/index.ts';
import type { Ply, Work } from './work.ts';

/** The size of a work lying flat, in mm; `depth` is what boxed corners give it. */
export type Size = { width: number; height: number; depth: number };

/** The upright box round plies. */
export function boxOf(plies: readonly Ply[]): Box {
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { outline } of plies) {
    for (const { from } of outline) {
      left = Math.min(left, from.x);
      right = Math.max(right, from.x);
      low = Math.min(low, from.y);
      high = Math.max(high, from.y);
    }
  }
  return left > right
    ? { x: 0, y: 0, width: 0, height: 0 }
    : { x: left, y: low, width: right - left, height: high - low };
}

/**
 * How large the work is now. A boxed corner gives twice its square as depth, and the work then stands on the corner of
 * its seams: it is measured from there, not from allowances that stand out beside it until it is turned.
 *
 * @example
 * size(cut({ piece: 'flap', material: 'linen', outline: rectangle(80, 60) }).value) // => { width: 80, height: 60, depth: 0 }
 */
export function size(work: Work): Size {
  const box = boxOf(work.plies);
  let [left, right, low, high, depth] = [box.x, box.x + box.width, box.y, box.y + box.height, 0];
  for (const { kind, square = 0, at, corner } of work.marks) {
    if (kind !== 'box' || !corner) continue;
    if (corner.x < at.x) left = Math.max(left, at.x);
    else right = Math.min(right, at.x);
    if (corner.y < at.y) low = Math.max(low, at.y);
    else high = Math.min(high, at.y);
    depth = Math.max(depth, 2 * square);
  }
  return { width: right - left, height: high - low, depth };
}
