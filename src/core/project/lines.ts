/** The stitch line and the cut line of a piece, with notches and folds. */
import {
  addAllowance,
  area,
  bounds,
  crossesOver,
  clipToBox,
  cornerNames,
  pointAlong,
  polygon,
  rectangle,
  removeAllowance,
  sideLength,
  sides,
  translate,
  withCorners,
} from '../geometry/index.ts';
import { type Place, quote, plainName } from '../measure/index.ts';
import { unknownEdge, type CompiledPiece, type Edges } from './shapes.ts';
import type { Compiled } from './compile.ts';
import type { CornerShape, GeometryFault, Outline, Point, Side } from '../geometry/index.ts';
import type { FoldLine, Notch, Size } from './pattern.ts';
import type { Evaluator } from './evaluator.ts';
import type { Result } from '../measure/index.ts';

/** By the name of a shaped corner's edge: the two edges that met in the corner before it was shaped. */
type Replaced = ReadonlyMap<string, readonly [before: string, after: string]>;

/** Both lines, moved so that the box round the cut line starts at the origin, and what lies between them. */
export type Lines = {
  stitch: Outline;
  cut: Outline;
  allowance: Record<string, number>;
  replaced: Replaced;
  /** Of a piece that is like another: how much smaller it is cut at each side of the box round it, in mm. */
  inset?: Record<'left' | 'right' | 'bottom' | 'top', number>;
};

/** An outline that encloses less than so much across, in mm, is a line. */
const LINE = 0.5;

const NONE: Replaced = new Map();

/** Draws a piece. What stands in the way is reported. */
export function drawLines(evaluator: Evaluator, piece: CompiledPiece): Lines | undefined {
  switch (piece.shape?.kind) {
    case 'size':
    case 'finished':
      return drawRectangle(evaluator, piece);
    case 'like':
      return drawLike(evaluator, piece, piece.shape.piece, piece.shape.inset);
    case 'outline':
      return drawOutline(evaluator, piece);
    default:
      return undefined;
  }
}

function drawRectangle(evaluator: Evaluator, piece: CompiledPiece): Lines | undefined {
  const width = evaluator.part(piece.name, { what: 'width' });
  const length = evaluator.part(piece.name, { what: 'length' });
  const around = evaluator.sides(piece);
  if (width === undefined || length === undefined || !around) return undefined;
  if (!(width > 0) || !(length > 0)) {
    const [what, size] = width > 0 ? ['height', length] : ['width', width];
    const message = `The ${what} of ${quote(piece.label)} comes to ${evaluator.say(size)}. There is nothing to cut.`;
    evaluator.report({ severity: 'error', place: sizePlace(piece), code: 'nothing-left', message, amount: -size });
    return undefined;
  }
  const trim = evaluator.plan(piece)?.trim ?? 0;
  const inside = { width: width - around.left - around.right, height: length - around.bottom - around.top - trim };
  if (!(inside.width > 0) || !(inside.height > 0)) {
    const what = inside.width > 0 ? 'height' : 'width';
    const message = `The seam allowances of ${quote(piece.label)} use up all of its ${what}.`;
    const amount = Math.abs(inside[what]);
    evaluator.report({ severity: 'error', place: sizePlace(piece), code: 'nothing-left', message, amount });
    return undefined;
  }
  const square = rectangle(inside.width, inside.height, { x: around.left, y: around.bottom });
  if (piece.corners.length === 0) {
    return { stitch: square, cut: rectangle(width, length), allowance: { ...around }, replaced: NONE };
  }
  const stitch = shapeCorners(evaluator, piece, square);
  if (!stitch) return undefined;
  const replaced = replacedBy(square);
  const allowance = amounts(stitch, replaced, (edge) => around[edge as keyof typeof around], Math.max);
  const out = trim > 0 && allowance.top !== undefined ? { ...allowance, top: allowance.top + trim } : allowance;
  const moved = settled(evaluator, piece.place, addAllowance(stitch, out));
  if (!moved) return undefined;
  const cut = clipToBox(named(moved, stitch, replaced), { x: 0, y: 0, width, height: length });
  return { stitch, cut, allowance: { ...around, ...allowance }, replaced };
}

/** The corners of an outline before any is shaped, each with the edges that meet there. */
function replacedBy(outline: Outline): Replaced {
  const before = (i: number) => outline[(i + outline.length - 1) % outline.length]!.name;
  return new Map(cornerNames(outline).map((name, i) => [name, [before(i), outline[i]!.name]]));
}

/**
 * An amount for every edge. An edge that stands for a shaped corner takes that of the edges it replaced, whether they
 * are still there or used up by their corners; `pick` says which of the two. Any other edge without an amount is a step
 * between its neighbours.
 */
function amounts(
  outline: Outline,
  replaced: Replaced,
  by: (edge: string) => number | undefined,
  pick: (a: number, b: number) => number,
): Record<string, number> {
  const around = outline.map(({ name }) => {
    const own = by(name);
    const edges = own === undefined ? replaced.get(name) : undefined;
    return edges ? pick(by(edges[0]) ?? 0, by(edges[1]) ?? 0) : own;
  });
  return Object.fromEntries(
    outline.map((edge, i) => {
      const before = around[(i + outline.length - 1) % outline.length] ?? 0;
      const after = around[(i + 1) % outline.length] ?? 0;
      return [edge.name, around[i] ?? pick(before, after)];
    }),
  );
}

/**
 * The cut line with its own edges by name: where an edge was used up by its corners, and the cut line has a straight
 * part there after all, that part has the edge's name again.
 */
function named(cut: Outline, stitch: Outline, replaced: Replaced): Outline {
  const names = new Set(stitch.map(({ name }) => name));
  return cut.map((edge, i) => {
    if (names.has(edge.name)) return edge;
    const before = replaced.get(cut[(i + cut.length - 1) % cut.length]!.name)?.[1];
    const after = replaced.get(cut[(i + 1) % cut.length]!.name)?.[0];
    const name = [before, after].find((one) => one !== undefined && !names.has(one));
    return name === undefined ? edge : { ...edge, name };
  });
}

function shapeCorners(evaluator: Evaluator, piece: CompiledPiece, square: Outline): Outline | undefined {
  let shaped = square;
  for (const corner of piece.corners) {
    const size = evaluator.length(corner.size);
    if (size === undefined) return undefined;
    const shape: CornerShape = corner.kind === 'rounded' ? { rounded: size } : { cut: size };
    const wanted = corner.at && Object.fromEntries(corner.at.map((at) => [plainName(at).replaceAll(' ', '-'), shape]));
    const result = settled(evaluator, corner.place, withCorners(shaped, wanted ?? shape));
    if (!result) return undefined;
    shaped = result;
  }
  return shaped;
}

function drawLike(
  evaluator: Evaluator,
  piece: CompiledPiece,
  like: string,
  inset: Edges | undefined,
): Lines | undefined {
  const other = evaluator.lines(evaluator.compiled.pieces.get(like)!);
  if (!other) return undefined;
  if (!inset && !piece.allowance) return { ...other, inset: { left: 0, right: 0, bottom: 0, top: 0 } };
  const { replaced } = other;
  const cut = inset ? moveIn(evaluator, piece, other.cut, replaced, inset, 'inset') : { line: other.cut };
  if (!cut) return undefined;
  const smaller = between(other.cut, cut.line);
  if (!piece.allowance) {
    const allowance = Object.fromEntries(cut.line.map(({ name }) => [name, 0]));
    return atOrigin({ stitch: cut.line, cut: cut.line, allowance, replaced, inset: smaller });
  }
  const stitch = moveIn(evaluator, piece, cut.line, replaced, piece.allowance, 'allowance');
  return stitch && atOrigin({ stitch: stitch.line, cut: cut.line, allowance: stitch.by, replaced, inset: smaller });
}

/** How far the box round one line lies inside that round another, at each side. */
function between(outer: Outline, inner: Outline): NonNullable<Lines['inset']> {
  const [a, b] = [bounds(outer), bounds(inner)];
  return {
    left: b.x - a.x,
    right: a.x + a.width - b.x - b.width,
    bottom: b.y - a.y,
    top: a.y + a.height - b.y - b.height,
  };
}

/**
 * A line so much inside another at each edge. At a shaped corner the smaller of the two amounts holds, and the sides
 * are where their own amounts bring them: so the box round it is what the sum of its sides says.
 */
function moveIn(
  evaluator: Evaluator,
  piece: CompiledPiece,
  outline: Outline,
  replaced: Replaced,
  edges: Edges,
  what: 'inset' | 'allowance',
): { line: Outline; by: Record<string, number> } | undefined {
  const by = edgeLengths(evaluator, outline, edges, replaced, Math.min);
  const sides = isRectangle(evaluator.compiled, piece) && replaced !== NONE ? evaluator.edges(edges) : undefined;
  // The sides of a rectangle go no farther in than their corners at first, so that no corner is eaten by a side.
  const first = by && (sides ? noFartherThanCorners(outline, replaced, by) : by);
  const moved = first && settled(evaluator, [...piece.place, what], removeAllowance(outline, first));
  if (!moved) return undefined;
  const line = named(moved, outline, replaced);
  if (!sides) return { line, by };
  const { x, y, width, height } = bounds(outline);
  const box = {
    x: x + sides.left,
    y: y + sides.bottom,
    width: width - sides.left - sides.right,
    height: height - sides.bottom - sides.top,
  };
  return { line: clipToBox(line, box), by };
}

function noFartherThanCorners(
  outline: Outline,
  replaced: Replaced,
  by: Record<string, number>,
): Record<string, number> {
  return Object.fromEntries(
    outline.map(({ name }) => {
      const corners = [...replaced].flatMap(([corner, edges]) => (edges.includes(name) ? (by[corner] ?? []) : []));
      return [name, Math.min(by[name]!, ...corners)];
    }),
  );
}

/** Whether a piece, or the one it is like, was a rectangle before its corners were shaped. */
export const isRectangle = (compiled: Compiled, piece: CompiledPiece): boolean => {
  const kind = rootOf(compiled, piece)?.shape?.kind;
  return kind === 'size' || kind === 'finished';
};

/**
 * Whether the box round a piece is always the sum of its sides. It is not where the piece lies inside one with shaped
 * corners: a curve set in may end before it has come to its full width.
 */
export const boxIsSum = (compiled: Compiled, piece: CompiledPiece): boolean =>
  isRectangle(compiled, piece) && (piece.shape?.kind !== 'like' || rootOf(compiled, piece)!.corners.length === 0);

/** The piece that another is like in the end, itself if it is like none; undefined for those that are like each other. */
function rootOf(compiled: Compiled, piece: CompiledPiece): CompiledPiece | undefined {
  let root: CompiledPiece | undefined = piece;
  for (let seen = 0; root?.shape?.kind === 'like' && seen <= compiled.pieces.size; seen++)
    root = compiled.pieces.get(root.shape.piece);
  return root?.shape?.kind === 'like' ? undefined : root;
}

function drawOutline(evaluator: Evaluator, piece: CompiledPiece): Lines | undefined {
  if (piece.shape?.kind !== 'outline') return undefined;
  const points: Point[] = [];
  for (const point of piece.shape.points) {
    const [x, y] = [evaluator.quantity(point.x), evaluator.quantity(point.y)];
    const [across, up] = [x && coordinate(evaluator, point.x, x), y && coordinate(evaluator, point.y, y)];
    if (across === undefined || up === undefined) return undefined;
    points.push({ x: across, y: up });
  }
  const names = piece.shape.points.map((point, i) => point.edge ?? `edge ${i + 1}`);
  const place: Place = [...piece.place, 'outline'];
  const drawn = polygon(points, names);
  if (crossesOver(drawn)) {
    const message = `The outline of ${quote(piece.label)} crosses itself.`;
    evaluator.report({
      severity: 'error',
      place,
      code: 'outline-crosses',
      message,
      fix: 'List the points in order round the edge.',
    });
    return undefined;
  }
  const box = bounds(drawn);
  // Points on one line, or on their way there and back, enclose nothing to cut.
  if (area(drawn) <= LINE * Math.max(box.width, box.height)) {
    const message = `The points of ${quote(piece.label)} lie on one line, ${evaluator.say(box.width)} x ${evaluator.say(box.height)}. There is nothing to cut.`;
    const fix = 'Give the points across and up: [0 in, 0 in], [8 in, 0 in], [8 in, 3 in].';
    evaluator.report({ severity: 'error', place, code: 'outline-flat', message, fix });
    return undefined;
  }
  const stitch = shapeCorners(evaluator, piece, drawn);
  if (!stitch) return undefined;
  const replaced = piece.corners.length === 0 ? NONE : replacedBy(drawn);
  const allowance = piece.allowance
    ? edgeLengths(evaluator, stitch, piece.allowance, replaced, Math.max)
    : Object.fromEntries(stitch.map(({ name }) => [name, 0]));
  const moved = allowance && settled(evaluator, place, addAllowance(stitch, allowance));
  return moved && atOrigin({ stitch, cut: named(moved, stitch, replaced), allowance, replaced });
}

/** A coordinate is a length; a plain nought needs no unit. */
function coordinate(
  evaluator: Evaluator,
  rawValue: Parameters<Evaluator['length']>[0],
  { value, dimension }: { value: number; dimension: number },
): number | undefined {
  return dimension === 0 && value === 0 ? 0 : evaluator.length(rawValue);
}

/** The lengths at the edges of any outline. */
function edgeLengths(
  evaluator: Evaluator,
  outline: Outline,
  edges: Edges,
  replaced: Replaced,
  pick: (a: number, b: number) => number,
): Record<string, number> | undefined {
  const lengths = new Map<string, number | undefined>();
  const rawValue = (name: string) => edges.byName.get(plainName(name)) ?? edges.others;
  const own = outline.flatMap(({ name }) => replaced.get(name) ?? [name]);
  for (const name of own) {
    const value = rawValue(name);
    lengths.set(name, value ? evaluator.length(value) : 0);
  }
  if ([...lengths.values()].includes(undefined)) return undefined;
  return amounts(outline, replaced, (edge) => lengths.get(edge), pick);
}

function atOrigin(lines: Lines): Lines {
  const { x, y } = bounds(lines.cut);
  if (x === 0 && y === 0) return lines;
  const by = { x: -x, y: -y };
  return { ...lines, stitch: translate(lines.stitch, by), cut: translate(lines.cut, by) };
}

/** The outline, or its fault as a finding. */
function settled(evaluator: Evaluator, place: Place, result: Result<Outline, GeometryFault>): Outline | undefined {
  if (result.ok) return result.value;
  const { code, message } = result.fault;
  evaluator.report({ severity: 'error', place, code, message });
  return undefined;
}

/** Where the file says how large a piece is. */
export function sizePlace(piece: CompiledPiece): Place {
  return piece.shape ? [...piece.place, piece.shape.kind] : piece.place;
}

/** The marks on the cut edge. */
export function drawNotches(evaluator: Evaluator, piece: CompiledPiece, cut: Outline): Notch[] {
  const ring = sides(cut);
  return piece.notches.flatMap(({ on, at, label, place }): Notch[] => {
    const side = ring.find((one) => plainName(one.name) === plainName(on));
    if (!side) {
      const known = ring.map((one) => one.name);
      const finding = unknownEdge(on, known, piece.label, [...place, 'on']);
      evaluator.report({ ...finding, start: 0, end: on.length });
      return [];
    }
    const size = sideLength(side);
    const along = at === 'middle' ? size / 2 : evaluator.length(at);
    if (along === undefined) return [];
    if (along > size) {
      const message = `The ${side.name} edge of ${quote(piece.label)} is only ${evaluator.say(size)} long.`;
      evaluator.report({
        severity: 'error',
        place: [...place, 'at'],
        code: 'off-the-edge',
        message,
        amount: along - size,
      });
      return [];
    }
    return [{ edge: side.name, at: fromLowEnd(side, along / size), ...(label !== undefined && { label }) }];
  });
}

/** The point a share of the way along an edge from its left or lower end, measured along the edge itself. */
function fromLowEnd(side: Side, share: number): Point {
  const { from, to } = side;
  const level = Math.abs(to.x - from.x) >= Math.abs(to.y - from.y);
  const forward = level ? from.x <= to.x : from.y <= to.y;
  return pointAlong(side, forward ? share : 1 - share);
}

/** Fold lines from edge to edge of the box round the cut line: the pleats’, then the file’s own. */
export function drawFolds(evaluator: Evaluator, piece: CompiledPiece, size: Size): FoldLine[] {
  const pleats = evaluator.plan(piece);
  const folds: FoldLine[] = (pleats?.folds ?? []).map(({ at, kind, pocket }) => {
    const mark = pleats!.from === 'top' ? size.height - at : at;
    return { kind, edge: pleats!.from, at: mark, ...across(pleats!.from, mark, size), pocket };
  });
  for (const { edge, kind, at: rawValue, label } of piece.folds) {
    const at = evaluator.length(rawValue);
    if (at === undefined) continue;
    const room = edge === 'bottom' || edge === 'top' ? size.height : size.width;
    if (at > room) {
      const message = `This fold lies beyond ${quote(piece.label)}, which measures only ${evaluator.say(room)} that way.`;
      evaluator.report({ severity: 'error', place: rawValue.place, code: 'off-the-edge', message, amount: at - room });
      continue;
    }
    folds.push({ kind, edge, at, ...across(edge, at, size), ...(label !== undefined && { label }) });
  }
  return folds;
}

function across(edge: FoldLine['edge'], at: number, { width, height }: Size): { from: Point; to: Point } {
  switch (edge) {
    case 'bottom':
      return { from: { x: 0, y: at }, to: { x: width, y: at } };
    case 'top':
      return { from: { x: 0, y: height - at }, to: { x: width, y: height - at } };
    case 'left':
      return { from: { x: at, y: 0 }, to: { x: at, y: height } };
    case 'right':
      return { from: { x: width - at, y: 0 }, to: { x: width - at, y: height } };
  }
}
