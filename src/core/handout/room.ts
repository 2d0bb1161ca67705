import { letteringBox } from '../drawing/lettering.ts';
import { contains } from '../geometry/readings.ts';
import { meet } from './place.ts';
import type { TextShape } from '../drawing/scene.ts';
import type { Outline } from '../geometry/outline.ts';
import type { Box } from '../geometry/readings.ts';
import type { Point } from '../geometry/point.ts';

/** Where lettering may stand on a sheet: inside a limit and an outline, clear of what is there already. */
export type LetteringRoom = {
  /** Keeps a place free from now on. */
  take: (box: Box) => void;
  isFree: (box: Box) => boolean;
  /** The first of the places where the lettering is clear of all else, and keeps it. */
  set: (wanted: Iterable<TextShape[]>) => TextShape[];
};

/** The blank round lettering, in mm. */
const BLANK = 0.8;

/** @param outline in mm of the sheet, y up or down alike */
export function roomIn(limit: Box, outline: Outline): LetteringRoom {
  const taken: Box[] = [];
  const isFree = (box: Box): boolean => {
    const grown = { x: box.x - BLANK, y: box.y - BLANK, width: box.width + 2 * BLANK, height: box.height + 2 * BLANK };
    const inside =
      grown.x >= limit.x &&
      grown.y >= limit.y &&
      grown.x + grown.width <= limit.x + limit.width &&
      grown.y + grown.height <= limit.y + limit.height;
    return (
      inside && !taken.some((other) => meet(grown, other)) && rim(grown).every((point) => contains(outline, point))
    );
  };
  return {
    take: (box) => void taken.push(box),
    isFree,
    set(wanted) {
      for (const lines of wanted) {
        const boxes = lines.map(letteringBox);
        if (!isFree(around(boxes))) continue;
        taken.push(...boxes);
        return lines;
      }
      return [];
    },
  };
}

/** The corners of a box and the middles of its sides. */
function rim({ x, y, width, height }: Box): Point[] {
  const points: Point[] = [];
  for (const across of [0, 0.5, 1]) {
    for (const down of [0, 0.5, 1]) points.push({ x: x + across * width, y: y + down * height });
  }
  return points;
}

/** The box round several. */
export function around(boxes: readonly Box[]): Box {
  const left = Math.min(...boxes.map(({ x }) => x));
  const top = Math.min(...boxes.map(({ y }) => y));
  const right = Math.max(...boxes.map(({ x, width }) => x + width));
  const low = Math.max(...boxes.map(({ y, height }) => y + height));
  return { x: left, y: top, width: right - left, height: low - top };
}
