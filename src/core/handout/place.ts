import { pathPoints } from '../drawing/path.ts';
import type { Command, Path } from '../drawing/path.ts';
import type { Shape, TextShape } from '../drawing/scene.ts';
import type { Box } from '../geometry/readings.ts';
import type { Point } from '../geometry/point.ts';

/** Shapes moved to another place of the sheet, and made larger by `factor`; their names get a word before them. */
export function placedShapes(shapes: readonly Shape[], by: Point, factor = 1, prefix = ''): Shape[] {
  const onto = ({ x, y }: Point): Point => ({ x: by.x + factor * x, y: by.y + factor * y });
  return shapes.map((shape): Shape => {
    const name = prefix === '' ? shape.name : `${prefix} ${shape.name}`;
    if (shape.kind === 'text') return { ...shape, ...onto(shape), name, size: shape.size * factor };
    return { ...shape, name, path: shape.path.map((command) => through(command, onto)) };
  });
}

function through(command: Command, onto: (point: Point) => Point): Command {
  if (command[0] === 'Z') return command;
  if (command[0] !== 'C') {
    const { x, y } = onto({ x: command[1], y: command[2] });
    return [command[0], x, y];
  }
  const p = onto({ x: command[1], y: command[2] });
  const q = onto({ x: command[3], y: command[4] });
  const r = onto({ x: command[5], y: command[6] });
  return ['C', p.x, p.y, q.x, q.y, r.x, r.y];
}

/** One line of lettering on its baseline. */
export function line(
  name: string,
  text: string,
  x: number,
  y: number,
  size: number,
  more: Partial<Pick<TextShape, 'anchor' | 'strong'>> = {},
): TextShape {
  return { kind: 'text', name, text, x, y, size, anchor: 'start', ...more };
}

/** Whether two boxes share more than their rims. */
export const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** The part of a line that lies within a box, as an open path; an outline that lies wholly inside stays closed. */
export function cropped(path: Path, box: Box): Path {
  const [right, low] = [box.x + box.width, box.y + box.height];
  const inside = ({ x, y }: Point): boolean => x >= box.x && x <= right && y >= box.y && y <= low;
  if (pathPoints(path).every(inside)) return path;
  const kept: Command[] = [];
  let pen: Point | undefined;
  const keep = (from: Point, command: Command, to: Point) => {
    if (!pen || Math.hypot(pen.x - from.x, pen.y - from.y) > 1e-9) kept.push(['M', from.x, from.y]);
    kept.push(command);
    pen = to;
  };
  for (const piece of strokes(path)) {
    const cuts = crossings(piece, box);
    for (let i = 1; i < cuts.length; i++) {
      const [a, b] = [cuts[i - 1]!, cuts[i]!];
      if (b - a < 1e-12 || !inside(at(piece, (a + b) / 2))) continue;
      const part = between(piece, a, b);
      const [from, to] = [part[0]!, part.at(-1)!];
      const command: Command =
        part.length === 2 ? ['L', to.x, to.y] : ['C', part[1]!.x, part[1]!.y, part[2]!.x, part[2]!.y, to.x, to.y];
      keep(from, command, to);
    }
  }
  return kept;
}

/** A straight stroke by its two ends, or a Bézier curve by its four points. */
type Stroke = readonly Point[];

function strokes(path: Path): Stroke[] {
  const found: Stroke[] = [];
  let [start, here]: Point[] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  for (const command of path) {
    const from = here!;
    if (command[0] === 'Z') here = start!;
    else if (command[0] === 'C') here = { x: command[5], y: command[6] };
    else here = { x: command[1], y: command[2] };
    if (command[0] === 'M') start = here;
    else if (command[0] === 'C')
      found.push([from, { x: command[1], y: command[2] }, { x: command[3], y: command[4] }, here]);
    else found.push([from, here]);
  }
  return found;
}

const mix = (a: Point, b: Point, t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });

/** de Casteljau: the point at a share of the way. */
function at(stroke: Stroke, t: number): Point {
  let points = stroke;
  while (points.length > 1) points = points.slice(1).map((point, i) => mix(points[i]!, point, t));
  return points[0]!;
}

/** The part of a stroke between two shares of its way. */
function between(stroke: Stroke, a: number, b: number): Stroke {
  const after = split(stroke, a)[1];
  return split(after, a >= 1 ? 1 : (b - a) / (1 - a))[0];
}

function split(stroke: Stroke, t: number): [Stroke, Stroke] {
  const [before, after]: Point[][] = [[], []];
  let points: Stroke = stroke;
  for (;;) {
    before!.push(points[0]!);
    after!.unshift(points.at(-1)!);
    if (points.length === 1) return [before!, after!];
    points = points.slice(1).map((point, i) => mix(points[i]!, point, t));
  }
}

/** Where a stroke crosses the lines that bound a box, as shares of its way, with both its ends. */
function crossings(stroke: Stroke, box: Box): number[] {
  const found = [0, 1];
  for (const [axis, bound] of [
    ['x', box.x],
    ['x', box.x + box.width],
    ['y', box.y],
    ['y', box.y + box.height],
  ] as const) {
    // Enough steps to part the three crossings that a curve of at most a quarter turn can have.
    const steps = stroke.length === 2 ? 1 : 24;
    const beyond = (t: number) => at(stroke, t)[axis] - bound;
    for (let i = 0; i < steps; i++) {
      let [low, high] = [i / steps, (i + 1) / steps];
      const [before, after] = [beyond(low), beyond(high)];
      if (before === 0) found.push(low);
      if (before * after >= 0) continue;
      if (steps === 1) {
        found.push(before / (before - after));
        continue;
      }
      const rising = after > 0;
      for (let turn = 0; turn < 50; turn++) {
        const middle = (low + high) / 2;
        if (beyond(middle) > 0 === rising) high = middle;
        else low = middle;
      }
      found.push((low + high) / 2);
    }
  }
  return found.sort((a, b) => a - b);
}
