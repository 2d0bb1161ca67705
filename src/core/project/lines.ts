/** The stitch line and the cut line of a piece, with notches and folds. */
import {
  addAllowance,
  bounds,
  polygon,
  rectangle,
  removeAllowance,
  sides,
  translate,
  withCorners,
} from '../geometry/index.ts';
import { quote } from '../measure/index.ts';
import { plainName } from './names.ts';
import { unknownEdge, type CompiledPiece, type Edges } from './shapes.ts';
import type { CornerShape, GeometryFault, Outline, Point, Side } from '../geometry/index.ts';
import type { FoldLine, Notch, Place, Size } from './pattern.ts';
import type { Reckoning } from './reckon.ts';
import type { Result } from '../measure/index.ts';

/** Both lines, moved so that the box round the cut line starts at the origin, and what lies between them. */
export type Lines = { stitch: Outline; cut: Outline; allowance: Record<string, number> };

/** Draws a piece. What stands in the way is reported. */
export function drawLines(reckoning: Reckoning, piece: CompiledPiece): Lines | undefined {
  switch (piece.shape?.kind) {
    case 'size':
    case 'finished':
      return drawRectangle(reckoning, piece);
    case 'like':
      return drawLike(reckoning, piece, piece.shape.piece, piece.shape.inset);
    case 'outline':
      return drawOutline(reckoning, piece);
    default:
      return undefined;
  }
}

function drawRectangle(reckoning: Reckoning, piece: CompiledPiece): Lines | undefined {
  const width = reckoning.part(piece.name, { what: 'width' });
  const length = reckoning.part(piece.name, { what: 'length' });
  const around = reckoning.sides(piece);
  if (width === undefined || length === undefined || !around) return undefined;
  if (!(width > 0) || !(length > 0)) {
    const [what, size] = width > 0 ? ['height', length] : ['width', width];
    const message = `The ${what} of ${quote(piece.label)} comes to ${reckoning.say(size)}. There is nothing to cut.`;
    reckoning.report({ severity: 'error', place: sizePlace(piece), code: 'nothing-left', message, amount: -size });
    return undefined;
  }
  const trim = reckoning.plan(piece)?.trim ?? 0;
  const inside = { width: width - around.left - around.right, height: length - around.bottom - around.top - trim };
  if (!(inside.width > 0) || !(inside.height > 0)) {
    const what = inside.width > 0 ? 'height' : 'width';
    const message = `The seam allowances of ${quote(piece.label)} use up all of its ${what}.`;
    const amount = Math.abs(inside[what]);
    reckoning.report({ severity: 'error', place: sizePlace(piece), code: 'nothing-left', message, amount });
    return undefined;
  }
  const square = rectangle(inside.width, inside.height, { x: around.left, y: around.bottom });
  if (piece.corners.length === 0) {
    return { stitch: square, cut: rectangle(width, length), allowance: { ...around } };
  }
  const stitch = shapeCorners(reckoning, piece, square);
  const allowance = stitch && allowanceOf(stitch, (edge) => around[edge as keyof typeof around]);
  const out = allowance && { ...allowance, ...(trim > 0 && { top: allowance.top! + trim }) };
  const cut = out && settled(reckoning, piece.place, addAllowance(stitch!, out));
  return cut && { stitch: stitch!, cut, allowance };
}

/** An edge that a shaped corner adds has the larger allowance of its two neighbours. */
function allowanceOf(outline: Outline, by: (edge: string) => number | undefined): Record<string, number> {
  const around = outline.map((edge) => by(edge.name));
  return Object.fromEntries(
    outline.map((edge, i) => {
      const before = around[(i + outline.length - 1) % outline.length] ?? 0;
      const after = around[(i + 1) % outline.length] ?? 0;
      return [edge.name, around[i] ?? Math.max(before, after)];
    }),
  );
}

function shapeCorners(reckoning: Reckoning, piece: CompiledPiece, square: Outline): Outline | undefined {
  let shaped = square;
  for (const corner of piece.corners) {
    const size = reckoning.length(corner.size);
    if (size === undefined) return undefined;
    const shape: CornerShape = corner.kind === 'rounded' ? { rounded: size } : { cut: size };
    const wanted = corner.at && Object.fromEntries(corner.at.map((at) => [plainName(at).replaceAll(' ', '-'), shape]));
    const result = settled(reckoning, corner.place, withCorners(shaped, wanted ?? shape));
    if (!result) return undefined;
    shaped = result;
  }
  return shaped;
}

function drawLike(
  reckoning: Reckoning,
  piece: CompiledPiece,
  like: string,
  inset: Edges | undefined,
): Lines | undefined {
  const other = reckoning.lines(reckoning.compiled.pieces.get(like)!);
  if (!other) return undefined;
  if (!inset && !piece.allowance) return other;
  const smaller = inset ? edgeLengths(reckoning, other.cut, inset) : {};
  if (!smaller) return undefined;
  const cut = settled(reckoning, [...piece.place, inset ? 'inset' : 'like'], removeAllowance(other.cut, smaller));
  if (!cut) return undefined;
  const allowance = piece.allowance ? edgeLengths(reckoning, cut, piece.allowance) : allowanceOf(cut, () => 0);
  const stitch = allowance && settled(reckoning, [...piece.place, 'allowance'], removeAllowance(cut, allowance));
  return stitch && atOrigin({ stitch, cut, allowance });
}

function drawOutline(reckoning: Reckoning, piece: CompiledPiece): Lines | undefined {
  if (piece.shape?.kind !== 'outline') return undefined;
  const points: Point[] = [];
  for (const point of piece.shape.points) {
    const [x, y] = [reckoning.quantity(point.x), reckoning.quantity(point.y)];
    const [across, up] = [x && coordinate(reckoning, point.x, x), y && coordinate(reckoning, point.y, y)];
    if (across === undefined || up === undefined) return undefined;
    points.push({ x: across, y: up });
  }
  const names = piece.shape.points.map((point, i) => point.edge ?? `edge ${i + 1}`);
  const place: Place = [...piece.place, 'outline'];
  if (crossesItself(points)) {
    const message = `The outline of ${quote(piece.label)} crosses itself.`;
    reckoning.report({
      severity: 'error',
      place,
      code: 'outline-crosses',
      message,
      mend: 'List the points in order round the edge.',
    });
    return undefined;
  }
  const stitch = shapeCorners(reckoning, piece, polygon(points, names));
  const allowance =
    stitch && (piece.allowance ? edgeLengths(reckoning, stitch, piece.allowance) : allowanceOf(stitch, () => 0));
  const cut = allowance && settled(reckoning, place, addAllowance(stitch, allowance));
  return cut && atOrigin({ stitch: stitch!, cut, allowance });
}

/** A coordinate is a length; a plain nought needs no unit. */
function coordinate(
  reckoning: Reckoning,
  written: Parameters<Reckoning['length']>[0],
  { value, dimension }: { value: number; dimension: number },
): number | undefined {
  return dimension === 0 && value === 0 ? 0 : reckoning.length(written);
}

function crossesItself(points: readonly Point[]): boolean {
  const n = points.length;
  const turn = (a: Point, b: Point, c: Point) => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const [a, b, c, d] = [points[i]!, points[(i + 1) % n]!, points[j]!, points[(j + 1) % n]!];
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return true;
    }
  }
  return false;
}

/** The lengths at the edges of any outline. */
function edgeLengths(reckoning: Reckoning, outline: Outline, edges: Edges): Record<string, number> | undefined {
  const lengths = new Map<string, number>();
  for (const { name } of outline) {
    const isCorner = name.endsWith(' corner');
    const named = edges.byName.size > 0 ? edges.byName.get(plainName(name)) : undefined;
    const written = named ?? (isCorner ? undefined : edges.others);
    if (!written && isCorner) continue;
    const length = written ? reckoning.length(written) : 0;
    if (length === undefined) return undefined;
    lengths.set(name, length);
  }
  return allowanceOf(outline, (edge) => lengths.get(edge));
}

function atOrigin({ stitch, cut, allowance }: Lines): Lines {
  const { x, y } = bounds(cut);
  if (x === 0 && y === 0) return { stitch, cut, allowance };
  const by = { x: -x, y: -y };
  return { stitch: translate(stitch, by), cut: translate(cut, by), allowance };
}

/** The outline, or its fault as a finding. */
function settled(reckoning: Reckoning, place: Place, result: Result<Outline, GeometryFault>): Outline | undefined {
  if (result.ok) return result.value;
  const { code, message } = result.fault;
  reckoning.report({ severity: 'error', place, code, message });
  return undefined;
}

/** Where the file says how large a piece is. */
export function sizePlace(piece: CompiledPiece): Place {
  return piece.shape ? [...piece.place, piece.shape.kind] : piece.place;
}

/** The marks on the cut edge. */
export function drawNotches(reckoning: Reckoning, piece: CompiledPiece, cut: Outline): Notch[] {
  const ring = sides(cut);
  return piece.notches.flatMap(({ on, at, label, place }): Notch[] => {
    const side = ring.find((one) => plainName(one.name) === plainName(on));
    if (!side) {
      const known = ring.map((one) => one.name);
      const finding = unknownEdge(on, known, piece.label, [...place, 'on']);
      reckoning.report({ ...finding, start: 0, end: on.length });
      return [];
    }
    const size = Math.hypot(side.to.x - side.from.x, side.to.y - side.from.y);
    const along = at === 'middle' ? size / 2 : reckoning.length(at);
    if (along === undefined) return [];
    if (along > size) {
      const message = `The ${side.name} edge of ${quote(piece.label)} is only ${reckoning.say(size)} long.`;
      reckoning.report({
        severity: 'error',
        place: [...place, 'at'],
        code: 'off-the-edge',
        message,
        amount: along - size,
      });
      return [];
    }
    return [{ edge: side.name, at: pointAlong(side, along / size), ...(label !== undefined && { label }) }];
  });
}

/** The point a share of the way along a straight edge from its left or lower end. */
function pointAlong({ from, to }: Side, share: number): Point {
  const level = Math.abs(to.x - from.x) >= Math.abs(to.y - from.y);
  const forward = level ? from.x <= to.x : from.y <= to.y;
  const [start, end] = forward ? [from, to] : [to, from];
  return { x: start.x + (end.x - start.x) * share, y: start.y + (end.y - start.y) * share };
}

/** Fold lines from edge to edge of the box round the cut line: the pleats’, then the file’s own. */
export function drawFolds(reckoning: Reckoning, piece: CompiledPiece, size: Size): FoldLine[] {
  const pleats = reckoning.plan(piece);
  const folds: FoldLine[] = (pleats?.folds ?? []).map(({ at, kind, pocket }) => {
    const mark = pleats!.from === 'top' ? size.height - at : at;
    return { kind, edge: pleats!.from, at: mark, ...across(pleats!.from, mark, size), pocket };
  });
  for (const { edge, kind, at: written, label } of piece.folds) {
    const at = reckoning.length(written);
    if (at === undefined) continue;
    const room = edge === 'bottom' || edge === 'top' ? size.height : size.width;
    if (at > room) {
      const message = `This fold lies beyond ${quote(piece.label)}, which measures only ${reckoning.say(room)} that way.`;
      reckoning.report({ severity: 'error', place: written.place, code: 'off-the-edge', message, amount: at - room });
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
