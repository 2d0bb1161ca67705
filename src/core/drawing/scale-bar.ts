import { MM_PER_INCH } from '../measure/index.ts';
import { LINE, lettering } from './dimension.ts';
import { lengthWriter } from './lengths.ts';
import { polyline } from './path.ts';
import type { Edition, Grid } from '../measure/index.ts';
import type { Shape } from './scene.ts';

/** Lengths that are easy to step off with a ruler, in mm, and into how many parts each is marked. */
const bars: Record<Edition, { length: number; parts: number }[]> = {
  metric: [1, 10, 100, 1000].flatMap((power) => [
    { length: power, parts: 5 },
    { length: 2 * power, parts: 2 },
    { length: 5 * power, parts: 5 },
  ]),
  inch: [
    ...[1 / 8, 1 / 4, 1 / 2, 1, 2, 4].map((inches) => ({ length: inches * MM_PER_INCH, parts: 4 })),
    ...[6, 12, 24, 36, 72].map((inches) => ({ length: inches * MM_PER_INCH, parts: 6 })),
  ],
};

/** A ruler to the drawing's scale, as long as the room allows. */
export function scaleBar(
  setting: { edition: Edition; grid?: Grid },
  scale: number,
  room: { x: number; y: number; width: number },
): Shape[] {
  const all = bars[setting.edition];
  const { length, parts } = all.findLast(({ length }) => length * scale <= room.width) ?? all[0]!;
  const size = length * scale;
  const middle = room.y + LINE / 2;
  const path = [...polyline({ x: room.x, y: middle }, { x: room.x + size, y: middle })];
  for (let i = 0; i <= parts; i++) {
    const x = room.x + (size * i) / parts;
    const long = i === 0 || i === parts;
    path.push(...polyline({ x, y: middle - (long ? 1.3 : 0.6) }, { x, y: middle }));
  }
  return [
    { kind: 'path', name: 'scale bar', role: 'scale bar', path },
    lettering('scale bar text', lengthWriter(setting).set(length), room.x + size + 1.6, middle, 1),
  ];
}
