/** What a page lets its readers point at, drawn for paper: each line and part with its mark or its name, to be ticked below. */
import { polyline } from '../drawing/path.ts';
import { letteringWidth } from '../drawing/lettering.ts';
import { blank, together } from './blocks.ts';
import { line } from './place.ts';
import type { Command } from '../drawing/path.ts';
import type { Shape } from '../drawing/scene.ts';
import type { Point } from '../geometry/index.ts';
import { clearMarks, type Pointing, type PointingTarget } from '../questions/pointing.ts';
import type { Block } from './flow.ts';
import type { Type } from './type.ts';

/** The room it takes at most, in mm. A strip of cloth may be higher. */
const ROOM = { width: 70, height: 50, strip: 95 };
const INDENT = 4;
/** Between a line and its name. */
const BESIDE = 1.5;

/** The figure, which stays with what follows. A part without a mark has its name beside it. */
export function pointingFigure(pointing: Pointing, type: Type, name: string): Block[] {
  const { cloth, spots } = pointing;
  const points = cloth.flat();
  const [left, low] = [Math.min(...points.map(({ x }) => x)), Math.min(...points.map(({ y }) => y))];
  const width = Math.max(...points.map(({ x }) => x)) - left;
  const height = Math.max(...points.map(({ y }) => y)) - low;
  const scale = Math.min(ROOM.width / width, (height > 2 * width ? ROOM.strip : ROOM.height) / height);
  const letters = type.small;
  const levels = clearMarks(pointing, (1.05 * letters) / scale);
  const isNamed = spots.some(({ tag }) => tag === undefined);
  /** Names stand outside, at every side. */
  const aside = isNamed ? Math.max(...spots.map(({ label }) => letteringWidth(label, letters))) + BESIDE : 0;
  const above = isNamed ? letters + BESIDE : letters / 2;
  const draw = (x: number, y: number): Shape[] => {
    const onto = (point: Point): Point => ({
      x: x + INDENT + aside + (point.x - left) * scale,
      y: y + above + (height - (point.y - low)) * scale,
    });
    const middle = onto({ x: left + width / 2, y: low + height / 2 });
    const ring = (all: readonly (readonly Point[])[]): Command[] =>
      all.flatMap((one) => [...polyline(...one.map(onto)), ['Z'] as const]);
    return [
      ...spots.map((spot, i): Shape => ({
        ...{ kind: 'path', name: `${name} spot ${i + 1}`, role: 'dimension' },
        path: 'line' in spot ? polyline(...spot.line.map(onto)) : ring(spot.rings),
      })),
      { kind: 'path', name: `${name} cloth`, role: 'cut', path: ring(cloth) },
      ...spots.map((spot, i): Shape => {
        const called = `${name} mark ${i + 1}`;
        const at = onto({ x: spot.at.x, y: levels.get(spot.key) ?? spot.at.y });
        if (spot.tag === undefined) return nameBeside(called, spot, onto, middle, letters);
        const beside = 'line' in spot ? BESIDE : -letteringWidth(spot.tag, letters) / 2;
        return line(called, spot.tag, at.x + beside, at.y + 0.35 * letters, letters, { strong: true });
      }),
    ];
  };
  return together([{ height: height * scale + 2 * above, draw }, blank(0.5 * type.text)]);
}

/** The name of an edge outside the middle of it: above, below, or at one side. */
function nameBeside(
  name: string,
  spot: PointingTarget,
  onto: (point: Point) => Point,
  middle: Point,
  letters: number,
): Shape {
  const ends = 'line' in spot ? [spot.line[0]!, spot.line.at(-1)!].map(onto) : [onto(spot.at)];
  const [x, y] = [ends.reduce((sum, end) => sum + end.x, 0), ends.reduce((sum, end) => sum + end.y, 0)].map(
    (sum) => sum / ends.length,
  ) as [number, number];
  const [across, down] = [x - middle.x, y - middle.y];
  const lies = ends.length > 1 && Math.abs(ends[0]!.x - ends[1]!.x) > Math.abs(ends[0]!.y - ends[1]!.y);
  if (lies) {
    const baseline = down < 0 ? y - BESIDE : y + BESIDE + 0.75 * letters;
    return line(name, spot.label, x, baseline, letters, { anchor: 'middle' });
  }
  const anchor = across < 0 ? 'end' : 'start';
  return line(name, spot.label, x + (across < 0 ? -BESIDE : BESIDE), y + 0.35 * letters, letters, { anchor });
}
