import { LINE, lettering } from './dimension.ts';
import { box } from './path.ts';
import type { Box, Point } from '../geometry/index.ts';
import type { Shape } from './scene.ts';

/** The room of a plate of some width about its middle, in mm of the sheet. */
export const plateAt = ({ x, y }: Point, width: number): Box => ({
  x: x - width / 2,
  y: y - LINE / 2,
  width,
  height: LINE,
});

/** A length to look at now, in the middle of a plate that keeps the pattern of the cloth off it. */
export function plateLabel(name: string, plateName: string, text: string, { x, y, width, height }: Box): Shape[] {
  const label = lettering(name, text, x + width / 2, y + height / 2, 1);
  return [
    { kind: 'path', name: plateName, role: 'plate', path: box(x, y, width, height) },
    { ...label, anchor: 'middle', now: true },
  ];
}
