/** What a page lets its readers point at, drawn for paper: each line and part with its mark, to be ticked below. */
import { polyline } from '../drawing/path.ts';
import { letteringWidth } from '../drawing/lettering.ts';
import { blank, together } from './blocks.ts';
import { line } from './place.ts';
import type { Command } from '../drawing/path.ts';
import type { Shape } from '../drawing/scene.ts';
import type { Point } from '../geometry/index.ts';
import { clearMarks, type Pointing } from '../questions/pointing.ts';
import type { Block } from './flow.ts';
import type { Type } from './type.ts';

/** The room it takes at most, in mm. A strip of cloth may be higher. */
const ROOM = { width: 70, height: 50, strip: 95 };
const INDENT = 4;

/** The figure, which stays with what follows; nothing where its parts carry no marks. */
export function pointingFigure(pointing: Pointing, type: Type, name: string): Block[] {
  const { cloth, spots } = pointing;
  if (spots.every(({ tag }) => tag === undefined)) return [];
  const points = cloth.flat();
  const [left, low] = [Math.min(...points.map(({ x }) => x)), Math.min(...points.map(({ y }) => y))];
  const width = Math.max(...points.map(({ x }) => x)) - left;
  const height = Math.max(...points.map(({ y }) => y)) - low;
  const scale = Math.min(ROOM.width / width, (height > 2 * width ? ROOM.strip : ROOM.height) / height);
  const letters = type.small;
  const levels = clearMarks(pointing, (1.05 * letters) / scale);
  const draw = (x: number, y: number): Shape[] => {
    const onto = (point: Point): Point => ({
      x: x + INDENT + (point.x - left) * scale,
      y: y + letters / 2 + (height - (point.y - low)) * scale,
    });
    const ring = (all: readonly (readonly Point[])[]): Command[] =>
      all.flatMap((one) => [...polyline(...one.map(onto)), ['Z'] as const]);
    return [
      ...spots.map((spot, i): Shape => ({
        ...{ kind: 'path', name: `${name} spot ${i + 1}`, role: 'dimension' },
        path: 'line' in spot ? polyline(...spot.line.map(onto)) : ring(spot.rings),
      })),
      { kind: 'path', name: `${name} cloth`, role: 'cut', path: ring(cloth) },
      ...spots.flatMap((spot, i): Shape[] => {
        if (spot.tag === undefined) return [];
        const at = onto({ x: spot.at.x, y: levels.get(spot.key) ?? spot.at.y });
        const beside = 'line' in spot ? 1.5 : -letteringWidth(spot.tag, letters) / 2;
        return [
          line(`${name} mark ${i + 1}`, spot.tag, at.x + beside, at.y + 0.35 * letters, letters, { strong: true }),
        ];
      }),
    ];
  };
  return together([{ height: height * scale + letters, draw }, blank(0.5 * type.text)]);
}
