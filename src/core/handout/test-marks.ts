import { wrap } from '../drawing/lettering.ts';
import { box, polyline } from '../drawing/path.ts';
import { MM_PER_INCH } from '../measure/index.ts';
import { line } from './place.ts';
import { LEADING } from './type.ts';
import type { Command } from '../drawing/path.ts';
import type { Shape } from '../drawing/scene.ts';
import type { Type } from './type.ts';

/** The sentence that stands on every sheet at true scale. */
export const PRINT_AT_FULL_SIZE =
  'Print at 100 %, never “fit to page”. Then measure: both lines and both squares must be right before you cut.';

/** From the upper tick of the inch line down to the metric line. */
const RULERS = 12;

const sentence = (width: number, type: Type): string[] => wrap(PRINT_AT_FULL_SIZE, type.small, width - MM_PER_INCH - 5);

/** How high the test marks stand in a room of some width, in mm: the inch square, or more where the type is large. */
export function testHeight(width: number, type: Type): number {
  return Math.max(MM_PER_INCH, sentence(width, type).length * type.small * LEADING + RULERS + 1);
}

/**
 * A square and a line in either unit, to be measured before anything is cut: 1 in and 2 cm; 4 in and 100 mm.
 *
 * @param x left end
 * @param low lower end
 * @param width the room there is
 */
export function testMarks(x: number, low: number, width: number, type: Type): Shape[] {
  const inch = MM_PER_INCH;
  const small = 20;
  const from = x + inch + 5;
  const [inchLine, metricLine] = [low - RULERS + 3, low - 0.2];
  const top = low - testHeight(width, type);
  return [
    { kind: 'path', name: 'test square inch', role: 'dimension', path: box(x, low - inch, inch, inch) },
    { kind: 'path', name: 'test square metric', role: 'dimension', path: box(x, low - small, small, small) },
    { kind: 'path', name: 'test line inch', role: 'dimension', path: ruler(from, inchLine, inch, 4) },
    { kind: 'path', name: 'test line metric', role: 'dimension', path: ruler(from, metricLine, 10, 10) },
    line('test square inch text', '1 in', x + inch - 0.8, low - inch + 1.05 * type.small, type.small, {
      anchor: 'end',
    }),
    line('test square metric text', '2 cm', x + 0.8, low - 1.2, type.small),
    line('test line inch text', '4 in', from + 4 * inch + 2, inchLine, type.small),
    line('test line metric text', '100 mm', from + 100 + 2, metricLine, type.small),
    ...sentence(width, type).map((text, i) =>
      line(`test ${i + 1}`, text, from, top + type.small * (0.76 + i * LEADING), type.small),
    ),
  ];
}

/** A line with a tick at each of its parts, the long ones at both ends. */
function ruler(x: number, y: number, part: number, count: number): Command[] {
  const path = [...polyline({ x, y }, { x: x + part * count, y })];
  for (let i = 0; i <= count; i++) {
    const high = i === 0 || i === count ? 3 : 1.4;
    path.push(...polyline({ x: x + part * i, y: y - high }, { x: x + part * i, y }));
  }
  return path;
}
