import { sides } from '../geometry/outline.ts';
import { arcOf } from '../geometry/arc.ts';
import type { Outline } from '../geometry/outline.ts';
import type { Point } from '../geometry/point.ts';

/** One stroke of the pen on a sheet, in mm: move, line, Bézier curve, or back to where the last move went. */
export type Command =
  | readonly ['M' | 'L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/** What the pen draws in one go. Commands, not a string, so that a page can draw it as well as a screen. */
export type Path = readonly Command[];

/** Where the cloth's millimetres land on the sheet. */
export type Onto = (point: Point) => Point;

/** A straight line, or several in a row, through points of the sheet. */
export function polyline(...points: readonly Point[]): Command[] {
  return points.map(({ x, y }, i) => [i === 0 ? 'M' : 'L', x, y]);
}

/** A rectangle on the sheet from its upper left corner. */
export function box(x: number, y: number, width: number, height: number): Command[] {
  return [['M', x, y], ['L', x + width, y], ['L', x + width, y + height], ['L', x, y + height], ['Z']];
}

/** An outline of cloth as a closed path on the sheet; arcs become Bézier curves of at most a quarter turn. */
export function closed(outline: Outline, onto: Onto): Command[] {
  const first = outline[0];
  if (!first) return [];
  const start = onto(first.from);
  const path: Command[] = [['M', start.x, start.y]];
  for (const side of sides(outline)) {
    if (side.bulge === 0) {
      const to = onto(side.to);
      path.push(['L', to.x, to.y]);
    } else {
      const { centre, radius, start: from, sweep } = arcOf(side);
      path.push(...curves(centre, radius, from, sweep, onto));
    }
  }
  path.push(['Z']);
  return path;
}

/**
 * An arc as Bézier curves, without the move to its start. Angles in radians, counter-clockwise with y up.
 * The handle of (4/3) tan(sweep/4) keeps a quarter turn within 0.03 % of its radius.
 */
export function curves(centre: Point, radius: number, start: number, sweep: number, onto: Onto): Command[] {
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9));
  const step = sweep / count;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  return Array.from({ length: count }, (_, i) => {
    const [a, b] = [start + i * step, start + (i + 1) * step];
    const p = onto({
      x: centre.x + radius * Math.cos(a) - handle * Math.sin(a),
      y: centre.y + radius * Math.sin(a) + handle * Math.cos(a),
    });
    const q = onto({
      x: centre.x + radius * Math.cos(b) + handle * Math.sin(b),
      y: centre.y + radius * Math.sin(b) - handle * Math.cos(b),
    });
    const r = onto({ x: centre.x + radius * Math.cos(b), y: centre.y + radius * Math.sin(b) });
    return ['C', p.x, p.y, q.x, q.y, r.x, r.y];
  });
}

/** All points that a path names, handles of curves among them: its box is never smaller than the path. */
export function pathPoints(path: Path): Point[] {
  return path.flatMap((command) => {
    const points: Point[] = [];
    for (let i = 1; i + 1 < command.length; i += 2) {
      points.push({ x: command[i] as number, y: command[i + 1] as number });
    }
    return points;
  });
}

/**
 * The path in the notation of SVG's `d`, to a hundredth of a millimetre, level and upright lines in their short form.
 *
 * @example
 * pathText([['M', 0, 0], ['L', 10.004, 5], ['L', 3, 5], ['Z']]) // => 'M0 0L10 5H3Z'
 */
export function pathText(path: Path): string {
  let text = '';
  let [x, y]: (string | undefined)[] = [];
  for (const [letter, ...numbers] of path) {
    const figures = numbers.map(figure);
    const [toX, toY] = figures.slice(-2);
    if (letter === 'L' && toY === y) text += `H${toX}`;
    else if (letter === 'L' && toX === x) text += `V${toY}`;
    else text += letter + figures.join(' ');
    [x, y] = [toX, toY];
  }
  return text;
}

/** A length on the sheet to a hundredth; put together from whole numbers, several times as fast as from a fraction. */
export function figure(n: number): string {
  const hundredths = Math.abs(Math.round(n * 100));
  const rest = hundredths % 100;
  const sign = hundredths && n < 0 ? '-' : '';
  return (
    sign + Math.floor(hundredths / 100) + ((rest && (rest < 10 ? '.0' : '.') + (rest % 10 ? rest : rest / 10)) || '')
  );
}
