/**
 * A step's drawing shows each ply and each row of its works where they lie: told from its shapes and from the plies. Where
 * works are sewn or laid together a corner is folded back in the drawing; the last picture of a play has none.
 */
import { drawStep } from '../../../src/core/index.ts';
import { worksShown } from '../../../src/core/drawing/step.ts';
import { away, inside, takenBy } from './laws.ts';
import type { Pattern, Point, Scene, Shape, Step } from '../../../src/core/index.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

/** On the sheet, in mm: a fifth of the thinnest line that is drawn. */
const NEAR = 0.03;
/** How far a drawn zigzag leaves its row. */
const ZIGZAG = 1;

const surfaces = ['right side', 'wrong side', 'lining', 'lining, wrong side', 'interfacing'];
const edges = ['raw edge', 'fold edge', 'seam', 'leader', 'hidden'];
const rows = ['stitch', 'basting', 'zigzag', 'hand stitch'];

type PathShape = Extract<Shape, { kind: 'path' }>;

/** The rings or lines of a path, as points. */
function linesIn({ path }: PathShape): Point[][] {
  const lines: Point[][] = [];
  for (const command of path) {
    if (command[0] === 'M') lines.push([{ x: command[1], y: command[2] }]);
    else if (command[0] === 'L') lines.at(-1)!.push({ x: command[1], y: command[2] });
    else if (command[0] === 'Z') lines.at(-1)!.push(lines.at(-1)![0]!);
  }
  return lines;
}

function awayFrom(p: Point, line: readonly Point[]): number {
  let least = Infinity;
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [line[i]!, line[i + 1]!];
    const [x, y] = [b.x - a.x, b.y - a.y];
    const size = x * x + y * y;
    const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / size));
    least = Math.min(least, Math.hypot(p.x - a.x - x * t, p.y - a.y - y * t));
  }
  return least;
}

/** What the drawing of a step leaves out, or shows elsewhere. */
export function drawn(step: Step, pattern: Pattern, side: 'front' | 'back', points: readonly Point[]): string[] {
  const { materials, edition, grid } = pattern;
  const setting = { materials, edition, grid, side };
  const [scene, last] = [drawStep(step, setting), drawStep(step, { ...setting, at: 1 })];
  const found = [...soundScene(scene), ...soundScene(last)];
  const shown = worksShown(step, setting);
  for (const { name, work, rows } of shown)
    found.push(...workDrawn(scene, name, work, name === 'sewn' ? 'front' : side, pattern, points, rows));
  const after = shown.find(({ name }) => name === 'after');
  found.push(...workDrawn(last, 'after', step.after, side, pattern, points, after?.rows ?? new Set()));
  if (!after && shown.length !== 1) found.push('after is not shown');
  // What is shown is what the step took and made: a corner that is folded back for the drawing keeps its cloth.
  const works = Object.keys(step.before).length === step.takes.length ? takenBy(step) : undefined;
  for (const { name, work } of shown) {
    const nth = /^before (\d+)$/u.exec(name)?.[1];
    const own = name === 'after' ? step.after : name === 'sewn' ? undefined : works?.[Number(nth) - 1];
    if (own && Math.abs(clothIn(own) - clothIn(work)) > 1e-3 * clothIn(own)) found.push(`${name} shows other cloth`);
  }
  const sewn = shown.find(({ name }) => name === 'sewn')?.work;
  const piecesOf = (work: Work) => [...new Set(work.plies.map(({ piece }) => piece))].sort().join(', ');
  if (sewn && piecesOf(sewn) !== piecesOf(step.after)) found.push('other pieces are shown as they were sewn');
  return found.slice(0, 3);
}

/** A scene has no number that is none, and no two shapes of one name. */
function soundScene(scene: Scene): string[] {
  const found: string[] = [];
  const numbers = scene.shapes.flatMap((shape) => (shape.kind === 'path' ? shape.path.flat() : [shape.x, shape.y]));
  if (numbers.some((one) => typeof one === 'number' && !Number.isFinite(one)))
    found.push('a shape has a number that is none');
  if (/NaN|Infinity|undefined/u.test(scene.text.join(' '))) found.push(`the drawing says ${scene.text.join(' ')}`);
  const names = scene.shapes.map(({ name }) => name);
  if (new Set(names).size < names.length) found.push('two shapes have one name');
  return found;
}

/** The area of all plies, in mm². */
const clothIn = ({ plies }: Work): number =>
  plies.reduce((sum, { outline }) => {
    const twice = outline.reduce((all, { from: a }, i) => {
      const b = outline[(i + 1) % outline.length]!.from;
      return all + a.x * b.y - a.y * b.x;
    }, 0);
    return sum + Math.abs(twice) / 2;
  }, 0);

/** What the drawing of one work in a scene leaves out, or shows elsewhere. */
export function workDrawn(
  scene: Scene,
  name: string,
  work: Work,
  side: 'front' | 'back',
  { materials }: Pattern,
  points: readonly Point[],
  sewn: ReadonlySet<number>,
): string[] {
  const found: string[] = [];
  const shapes = scene.shapes.flatMap((shape) =>
    shape.kind === 'path' && shape.name.startsWith(`${name} `) ? [{ ...shape, lines: linesIn(shape) }] : [],
  );
  const faces = shapes.filter(({ role }) => surfaces.includes(role));
  const all = faces.flatMap(({ lines }) => lines.flat());
  if (all.length === 0) return [`${name} is not drawn`];
  const corners = work.plies.flatMap(({ outline }) => outline.map(({ from }) => from));
  const [box, sheet] = [spanOf(corners), spanOf(all)];
  const { scale } = scene;
  if (Math.abs(sheet.width - box.width * scale) > NEAR || Math.abs(sheet.height - box.height * scale) > NEAR)
    found.push(`${name} is drawn ${sheet.width} x ${sheet.height} and is ${box.width * scale} x ${box.height * scale}`);
  const onto = ({ x, y }: Point): Point => ({
    x: sheet.x + (side === 'front' ? x - box.x : box.x + box.width - x) * scale,
    y: sheet.y + (box.y + box.height - y) * scale,
  });

  const lines = shapes.filter(({ role }) => edges.includes(role)).flatMap((shape) => shape.lines);
  const pinked = shapes.filter(({ role }) => role === 'pinked').flatMap((shape) => shape.lines);
  for (const { id, piece, outline, fusedTo } of work.plies) {
    const lacks = outline.find(({ from, fold }, i) => {
      if (fusedTo !== undefined && fold === undefined) return false;
      const to = outline[(i + 1) % outline.length]!.from;
      if (Math.hypot(to.x - from.x, to.y - from.y) * scale < 0.3) return false;
      return [0.13, 0.5, 0.87].some((t) => {
        const p = onto({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t });
        return lines.every((line) => awayFrom(p, line) > NEAR) && pinked.every((line) => awayFrom(p, line) > ZIGZAG);
      });
    });
    if (lacks) found.push(`${name}: the edge ${lacks.name} of ply ${id} of ${piece} is not drawn`);
  }

  for (const p of points) {
    if (work.plies.some(({ outline }) => away(p, outline) * scale < 2 * NEAR)) continue;
    const there = work.plies.filter(({ outline }) => inside(outline, p));
    const ply = side === 'front' ? there.at(-1) : there[0];
    const at = onto(p);
    const covering = faces.filter(
      ({ lines: all }) =>
        all.filter((ring) =>
          inside(
            ring.slice(0, -1).map((from) => ({ from })),
            at,
          ),
        ).length %
          2 ===
        1,
    );
    const role = ply && materials[ply.material]?.material;
    const isRight = ply && (ply.face === 'right') === (side === 'front');
    const expected = !ply
      ? 'nothing'
      : role?.kind === 'interfacing'
        ? 'interfacing'
        : isRight
          ? role?.lining
            ? 'lining'
            : 'right side'
          : role?.lining
            ? 'lining, wrong side'
            : 'wrong side';
    const roles = covering.map((one) => one.role).join(' and ') || 'nothing';
    if (roles !== expected)
      found.push(`${name}: ${roles} is drawn where ${expected} of ${ply?.piece ?? 'nothing'} lies`);
  }

  const sewnRows = shapes.filter(({ role, now }) => rows.includes(role) && now).flatMap((shape) => shape.lines);
  for (const { id, kind, runs } of work.stitches) {
    if (!sewn.has(id)) continue;
    // A zigzag is drawn to either side of its row.
    const near = kind === 'zigzag' || kind === 'overlock' ? ZIGZAG : NEAR;
    const lacks = runs.some(({ from, to }) =>
      [0.2, 0.5, 0.8].some((t) => {
        const p = onto({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t });
        return sewnRows.every((line) => awayFrom(p, line) > near);
      }),
    );
    if (lacks) found.push(`${name}: row ${id} (${kind}) is not drawn where it was sewn`);
  }
  return found;
}

function spanOf(points: readonly Point[]): { x: number; y: number; width: number; height: number } {
  let [x, y, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const p of points) {
    [x, y] = [Math.min(x, p.x), Math.min(y, p.y)];
    [right, top] = [Math.max(right, p.x), Math.max(top, p.y)];
  }
  return { x, y, width: right - x, height: top - y };
}
