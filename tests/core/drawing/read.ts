/** Measuring a finished drawing, as one would with a ruler on the paper. */
import { formatLength, letteringBox, parseLength } from '../../../src/core/index.ts';
import type { Box, Edition, Path, PathShape, Point, Scene, Shape, TextShape } from '../../../src/core/index.ts';

export const isText = (shape: Shape): shape is TextShape => shape.kind === 'text';
export const isPath = (shape: Shape): shape is PathShape => shape.kind === 'path';

export const texts = (scene: Scene): TextShape[] => scene.shapes.filter(isText);
export const paths = (scene: Scene): PathShape[] => scene.shapes.filter(isPath);

export function pathNamed(scene: Scene, name: string): Path {
  const shape = paths(scene).find((shape) => shape.name === name);
  if (!shape)
    throw new Error(
      `The drawing has no ${name}, only ${paths(scene)
        .map((shape) => shape.name)
        .join()}`,
    );
  return shape.path;
}

export function textNamed(scene: Scene, name: string): string {
  const shape = texts(scene).find((shape) => shape.name === name);
  if (!shape)
    throw new Error(
      `The drawing has no ${name}, only ${texts(scene)
        .map((shape) => shape.name)
        .join()}`,
    );
  return shape.text;
}

/** The ends of the straight lines and curves of a path. */
export const stops = (path: Path): Point[] =>
  path.flatMap((command) => {
    if (command[0] === 'Z') return [];
    return command[0] === 'C' ? [{ x: command[5], y: command[6] }] : [{ x: command[1], y: command[2] }];
  });

/** A path as straight lines; a curve is taken in sixteen steps. */
export function segments(path: Path): [Point, Point][] {
  const lines: [Point, Point][] = [];
  let start: Point = { x: 0, y: 0 };
  let here = start;
  for (const command of path) {
    if (command[0] === 'C') {
      const [, ax, ay, bx, by, x, y] = command;
      const from = here;
      for (let i = 1; i <= 16; i++) {
        const t = i / 16;
        const u = 1 - t;
        const at = (p: number, a: number, b: number, q: number) =>
          u * u * u * p + 3 * u * u * t * a + 3 * u * t * t * b + t * t * t * q;
        const to = { x: at(from.x, ax, bx, x), y: at(from.y, ay, by, y) };
        lines.push([here, to]);
        here = to;
      }
      continue;
    }
    const to = command[0] === 'Z' ? start : { x: command[1], y: command[2] };
    if (command[0] === 'M') start = to;
    else lines.push([here, to]);
    here = to;
  }
  return lines;
}

/** The area inside a path's rings, holes left out, in mm² of the sheet. */
export function areaOf(path: Path): number {
  const twice = segments(path).reduce((sum, [a, b]) => sum + a.x * b.y - b.x * a.y, 0);
  return Math.abs(twice) / 2;
}

/** How long all lines of a path are together, in mm of the sheet. */
export const lengthOf = (path: Path): number =>
  segments(path).reduce((sum, [a, b]) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0);

export function boxOf(points: readonly Point[]): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** How far two boxes reach into each other, in mm; 0 or less when they do not. */
export const overlap = (a: Box, b: Box): number =>
  Math.min(
    Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x),
    Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y),
  );

/** Whether a straight line runs through a box, by clipping it to each of its sides. */
export function crosses([a, b]: readonly [Point, Point], box: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, way, low, high] of [
    [a.x, b.x - a.x, box.x, box.x + box.width],
    [a.y, b.y - a.y, box.y, box.y + box.height],
  ] as const) {
    if (way === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [one, other] = [(low - start) / way, (high - start) / way];
    from = Math.max(from, Math.min(one, other));
    to = Math.min(to, Math.max(one, other));
  }
  return from < to;
}

/** A box of lettering less its rim, which the font leaves white. */
export function core(shape: TextShape): Box {
  const { x, y, width, height } = letteringBox(shape);
  return { x: x + 0.1, y: y + 0.2, width: width - 0.2, height: height - 0.7 };
}

/** What makes a drawing hard to read, in words; nothing if it is well. */
export function faults(scene: Scene): string[] {
  const found: string[] = [];
  const names = scene.shapes.map(({ name }) => name);
  names.filter((name, i) => names.indexOf(name) !== i).forEach((name) => found.push(`${name} is there twice`));
  const boxes = texts(scene).map((shape) => ({ shape, box: letteringBox(shape), core: core(shape) }));
  boxes.forEach(({ shape, box }, i) => {
    const title = `${shape.name} “${shape.text}”`;
    // 12 px on a screen and 9 pt on paper are the same length.
    if (shape.size < 12 * (25.4 / 96)) found.push(`${title} is too small`);
    const outside = Math.max(-box.x, -box.y, box.x + box.width - scene.width, box.y + box.height - scene.height);
    if (outside > 0.01) found.push(`${title} stands ${outside.toFixed(2)} mm outside`);
    for (const other of boxes.slice(i + 1)) {
      if (overlap(box, other.box) > 0.01) found.push(`${title} overlaps ${other.shape.name} “${other.shape.text}”`);
    }
  });
  for (const { name, role, path } of paths(scene)) {
    const { x, y, width, height } = boxOf(stops(path));
    if (![x, y, width, height].every(Number.isFinite)) found.push(`${name} is nowhere`);
    const outside = Math.max(-x, -y, x + width - scene.width, y + height - scene.height);
    if (outside > 0.01) found.push(`${name} reaches ${outside.toFixed(2)} mm outside`);
    if (role === 'trimmed' || role === 'allowance' || role === 'interfacing' || role.endsWith('side')) continue;
    for (const line of segments(path)) {
      const struck = boxes.find(({ core }) => crosses(line, core))?.shape;
      if (struck) found.push(`${name} runs through ${struck.name} “${struck.text}”`);
    }
  }
  return found;
}

/** The lengths that the labels of a drawing show and its text does not say. */
export function unsaid(scene: Scene, edition: Edition): string[] {
  const said = scene.text.join(' ');
  return texts(scene)
    .filter(
      ({ name }) =>
        !/^(title|line|note|legend|scale bar|caption|part|layer|thickest)/.test(name) && !name.endsWith('number'),
    )
    .map(({ text }) => text.replace(/^.*, /, ''))
    .filter((text) => {
      const about = text.startsWith('≈') ? 'about ' : '';
      const read = parseLength(text.replace('≈', '').trim(), edition);
      return !read.ok || !said.includes(about + formatLength(read.value, edition, { style: 'spoken' }));
    });
}
