/** The stitch line and the cut line of a piece, with notches and folds. */
import {
  addAllowance,
  area,
  bounds,
  circle,
  crossesOver,
  clipToBox,
  cornerNames,
  curvedOutline,
  halfCircle,
  leftOf,
  lineThrough,
  nearestOn,
  pointAlong,
  rectangle,
  reflect,
  removeAllowance,
  sideLength,
  sides,
  translate,
  withCorners,
} from '../geometry/index.ts';
import { distance } from '../geometry/point.ts';
import { formatNumber, type Place, quote, plainName, SAME } from '../measure/index.ts';
import {
  mirroredName,
  otherHalf,
  unknownEdge,
  type CompiledPiece,
  type Edges,
  type OutlinePoint,
  type PieceShape,
} from './shapes.ts';
import type { Compiled } from './compile.ts';
import type { CornerShape, DrawnPoint, GeometryFault, Outline, Point, Side, Way } from '../geometry/index.ts';
import type { FoldLine, Notch, Size } from './pattern.ts';
import type { Evaluator } from './evaluator.ts';
import type { RawValue } from './raw-value.ts';
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

/** The bulge of an arc that is but two degrees short of a circle. */
const FULL = 1 / Math.tan(Math.PI / 360);

const NONE: Replaced = new Map();

/** Draws a piece. What stands in the way is reported. */
export function drawLines(evaluator: Evaluator, piece: CompiledPiece): Lines | undefined {
  switch (piece.shape?.kind) {
    case 'size':
    case 'finished':
      return drawRectangle(evaluator, piece);
    case 'like':
      return piece.shape.isMirrored
        ? drawMirrored(evaluator, piece.shape.piece)
        : drawLike(evaluator, piece, piece.shape.piece, piece.shape.inset);
    case 'outline':
      return drawOutline(evaluator, piece);
    case 'circle':
    case 'half circle':
      return drawCircle(evaluator, piece, piece.shape);
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

/** The corners of an outline before any is shaped, each with the edges that meet there. An edge so called is none. */
function replacedBy(outline: Outline): Replaced {
  const before = (i: number) => outline[(i + outline.length - 1) % outline.length]!.name;
  const own = new Set(outline.map(({ name }) => name));
  return new Map(
    cornerNames(outline).flatMap((name, i) => (own.has(name) ? [] : [[name, [before(i), outline[i]!.name]]])),
  );
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
    const named = corner.at?.map((at) => plainName(at).replaceAll(' ', '-'));
    const wanted = named && Object.fromEntries(named.map((at) => [at, shape]));
    const result = settled(evaluator, corner.place, withCorners(shaped, wanted ?? shape));
    if (!result) return undefined;
    shaped = result;
  }
  return shaped;
}

/** The mirror image of a piece, left for right. */
function drawMirrored(evaluator: Evaluator, like: string): Lines | undefined {
  const other = evaluator.lines(evaluator.compiled.pieces.get(like)!);
  if (!other) return undefined;
  const { x, width } = bounds(other.cut);
  const turned = (line: Outline): Outline =>
    reflect(line, { at: { x: x + width / 2, y: 0 }, angle: 90 }).map((one) => ({
      ...one,
      name: mirroredName(one.name),
    }));
  const allowance = Object.entries(other.allowance).map(([name, by]): [string, number] => [mirroredName(name), by]);
  const replaced = [...other.replaced].map(([name, [before, after]]): [string, [string, string]] => [
    mirroredName(name),
    [mirroredName(after), mirroredName(before)],
  ]);
  return {
    stitch: turned(other.stitch),
    cut: turned(other.cut),
    allowance: Object.fromEntries(allowance),
    replaced: replaced.length === 0 ? NONE : new Map(replaced),
  };
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
  const place: Place = [...piece.place, 'outline'];
  const half = drawPoints(evaluator, piece, piece.shape.points);
  const { onFold } = piece.shape;
  const drawn = half && onFold ? unfolded(evaluator, piece, half, onFold) : half;
  if (!drawn) return undefined;
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
  return withAllowance(evaluator, piece, drawn, place);
}

function drawCircle(
  evaluator: Evaluator,
  piece: CompiledPiece,
  { kind, diameter: rawValue }: Extract<PieceShape, { kind: 'circle' | 'half circle' }>,
): Lines | undefined {
  const diameter = evaluator.length(rawValue);
  if (diameter === undefined) return undefined;
  if (!(diameter > 0)) {
    const message = `The diameter of ${quote(piece.label)} comes to ${evaluator.say(diameter)}. There is nothing to cut.`;
    evaluator.report({ severity: 'error', place: rawValue.place, code: 'nothing-left', message, amount: -diameter });
    return undefined;
  }
  const drawn = kind === 'circle' ? circle(diameter, 'edge') : halfCircle(diameter, 'bottom', 'curve');
  return withAllowance(evaluator, piece, drawn, sizePlace(piece));
}

/** The outline that the points of a file give; what is no point and no arc is reported. */
function drawPoints(evaluator: Evaluator, piece: CompiledPiece, asked: readonly OutlinePoint[]): Outline | undefined {
  const read = ({ x: across, y: up }: Pick<OutlinePoint, 'x' | 'y'>): Point | undefined => {
    const [x, y] = [evaluator.quantity(across), evaluator.quantity(up)];
    const [a, b] = [x && coordinate(evaluator, across, x), y && coordinate(evaluator, up, y)];
    return a === undefined || b === undefined ? undefined : { x: a, y: b };
  };
  const ends = asked.map(read);
  if (ends.includes(undefined)) return undefined;
  const points: DrawnPoint[] = [];
  for (const [i, { edge, way }] of asked.entries()) {
    const at = ends[i]!;
    const name = edge ?? `edge ${i + 1}`;
    if (way === undefined) {
      points.push({ at, name });
    } else if (Array.isArray(way)) {
      const through = way.map(read);
      if (through.includes(undefined)) return undefined;
      points.push({ at, name, way: { through: through as Point[] } });
    } else {
      const arc = arcFor(evaluator, way, distance(at, ends[(i + 1) % ends.length]!));
      if (!arc) return undefined;
      points.push({ at, name, way: arc });
    }
  }
  const twice = points.some(({ at, way }, i) => {
    const { at: to } = points[(i + 1) % points.length]!;
    const round = [at, ...(way && 'through' in way ? way.through : []), to];
    return way && round.some((p, k) => k > 0 && distance(p, round[k - 1]!) <= SAME);
  });
  const refuse = (message: string, fix: string): undefined => {
    evaluator.report({ severity: 'error', place: [...piece.place, 'outline'], code: 'curve-unclear', message, fix });
  };
  const called = quote(piece.label);
  if (twice) {
    const message = `Two neighbouring points of a curve of ${called} are the same, so that it has no way there.`;
    return refuse(message, 'Leave one of the two out.');
  }
  const drawn = curvedOutline(points);
  // A curve that turns back on itself comes to arcs of a whole circle, or of none.
  if (drawn.every(({ from, bulge }) => Math.abs(bulge) < FULL && Number.isFinite(from.x + from.y))) return drawn;
  return refuse(
    `A curve of ${called} has no way through its points.`,
    'Move a point of the curve, or put one more between.',
  );
}

/** An arc over a chord, so many mm long. Faults: one that is no length, and one that would be more than half a circle. */
function arcFor(
  evaluator: Evaluator,
  { kind, size: rawValue, isInward }: Extract<OutlinePoint['way'], { kind: string }>,
  chord: number,
): Way | undefined {
  const size = evaluator.length(rawValue);
  if (size === undefined) return undefined;
  const refuse = (message: string, fix: string, amount: number): undefined => {
    evaluator.report({ severity: 'error', place: rawValue.place, code: 'no-arc', message, fix, amount });
  };
  if (!(size > 0)) {
    return refuse(`This comes to ${evaluator.say(size)}.`, 'An arc into the piece says “bends: in”.', -size);
  }
  const [most, across] = [chord / 2, `${evaluator.say(chord)} apart`];
  if (kind === 'rise') {
    if (size <= most + SAME) return { rise: (isInward ? -1 : 1) * Math.min(size, most) };
    const message = `The ends of this edge lie ${across}: an arc over them rises by ${evaluator.say(most)} at most, as half a circle.`;
    return refuse(message, 'Check the two, or put a point on the way.', size - most);
  }
  if (size >= most - SAME) return { radius: (isInward ? -1 : 1) * Math.max(size, most) };
  const message = `The ends of this edge lie ${across}, which no circle of a radius of ${evaluator.say(size)} reaches over.`;
  return refuse(message, `Make the radius ${evaluator.say(most)} or more.`, most - size);
}

/** Both halves of an outline that lies on the fold of the cloth with one edge. */
function unfolded(
  evaluator: Evaluator,
  piece: CompiledPiece,
  half: Outline,
  { edge, place }: { edge: string; place: Place },
): Outline | undefined {
  const ring = sides(half);
  const on = ring.flatMap((side, i) => (plainName(side.name) === plainName(edge) ? [i] : []));
  const [at] = on;
  if (on.length > 1 && on.every((i) => ring[i]!.bulge === 0)) {
    const message = `${quote(piece.label)} has ${on.length} edges called ${quote(edge)}, and one lies on the fold.`;
    const fix = 'Call the others something else.';
    evaluator.report({ severity: 'error', place, code: 'name-twice', message, fix });
    return undefined;
  }
  if (at === undefined || on.length > 1 || ring[at]!.bulge !== 0) {
    const message = `The edge ${quote(edge)} of ${quote(piece.label)} is curved: only a straight edge lies on the fold.`;
    evaluator.report({ severity: 'error', place, code: 'fold-curved', message, fix: 'Name a straight edge.' });
    return undefined;
  }
  const line = lineThrough(ring[at]!.from, ring[at]!.to);
  const own = [...half.slice(at + 1), ...half.slice(0, at)];
  if (own.some(({ from }) => leftOf(line, from) < -SAME)) {
    const message = `${quote(piece.label)} lies on both sides of its edge ${quote(edge)}, which is to lie on the fold.`;
    const fix = 'Give the outline of one half.';
    evaluator.report({ severity: 'error', place, code: 'fold-inside', message, fix });
    return undefined;
  }
  const [first, last] = [own[0]!.name, own.at(-1)!.name];
  const kept = (name: string) => (name === first || name === last ? name : otherHalf(name));
  // The mirror image, walked from the end of the fold round to its beginning.
  const image = reflect(half, line);
  const from = image.findIndex((one) => one.name === ring[at]!.name);
  const other = [...image.slice(from + 1), ...image.slice(0, from)].map((one) => ({ ...one, name: kept(one.name) }));
  const whole = withoutSeams([...own, ...other]);
  const start = whole.findIndex(({ name }) => name === first);
  return [...whole.slice(start), ...whole.slice(0, start)];
}

/** The ring without points at which an edge runs on straight under its own name. */
function withoutSeams(ring: Outline): Outline {
  const around = sides(ring);
  return ring.filter((one, i) => {
    const before = around[(i + around.length - 1) % around.length]!;
    const { to } = around[i]!;
    const isStraight = one.bulge === 0 && before.bulge === 0 && one.name === before.name;
    return !isStraight || Math.abs(leftOf(lineThrough(before.from, one.from), to)) > SAME;
  });
}

/** An outline with its corners shaped as the stitch line, and the cut line outside it. */
function withAllowance(evaluator: Evaluator, piece: CompiledPiece, drawn: Outline, place: Place): Lines | undefined {
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

/**
 * The marks on the cut edge. A length is measured along it; a share is one of the stitch line, where edges meet that are
 * sewn together, and its mark lies beside that point.
 */
export function drawNotches(evaluator: Evaluator, piece: CompiledPiece, lines: Pick<Lines, 'stitch' | 'cut'>): Notch[] {
  const [ring, stitch] = [sides(lines.cut), sides(lines.stitch)];
  return piece.notches.flatMap(({ on, at, label, place }): Notch[] => {
    const run = edgeRun(ring, on);
    const [side] = run;
    if (!side) {
      const known = ring.map((one) => one.name);
      const finding = unknownEdge(on, known, piece.label, [...place, 'on']);
      evaluator.report({ ...finding, start: 0, end: on.length });
      return [];
    }
    if (runsOf(ring, on) > 1) {
      const message = `${quote(piece.label)} has edges called ${quote(side.name)} that lie apart.`;
      const fix = 'Give each a name of its own.';
      evaluator.report({ severity: 'error', place: [...place, 'on'], code: 'name-twice', message, fix });
      return [];
    }
    const called = label !== undefined && { label };
    if (at === 'middle' || 'share' in at) {
      const share = shareOf(evaluator, at);
      if (share === undefined) return [];
      const sewn = edgeRun(stitch, on);
      const own = sewn.length > 0 ? sewn : run;
      const beside = fromLowEnd(own, share * runLength(own));
      const near = run.map((one) => nearestOn(one, beside));
      const off = (p: Point) => distance(p, beside);
      return [{ edge: side.name, at: near.reduce((best, one) => (off(one) < off(best) ? one : best)), ...called }];
    }
    const size = runLength(run);
    const along = evaluator.length(at);
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
    return [{ edge: side.name, at: fromLowEnd(run, along), ...called }];
  });
}

/** The share of its edge at which a notch lies. One that is none is reported. */
function shareOf(evaluator: Evaluator, at: 'middle' | { share: RawValue }): number | undefined {
  if (at === 'middle') return 1 / 2;
  const share = evaluator.number(at.share);
  if (share === undefined || (share >= 0 && share <= 1)) return share;
  const message = `This comes to ${formatNumber(share)}. A share of an edge lies between 0 and 1.`;
  evaluator.report({
    severity: 'error',
    place: at.share.place,
    code: 'no-share',
    message,
    fix: 'Write 1/4 for a quarter.',
  });
  return undefined;
}

export const runLength = (run: readonly Side[]): number => run.reduce((sum, one) => sum + sideLength(one), 0);

/** How often an edge begins; not at all where it goes all round. */
const runsOf = (ring: readonly Side[], name: string): number =>
  ring.filter((side, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    return plainName(side.name) === plainName(name) && plainName(before.name) !== plainName(name);
  }).length;

/** The sides of an edge in order. Where it goes all round, it begins where the outline does. */
export function edgeRun(ring: readonly Side[], name: string): Side[] {
  const isOf = (side: Side) => plainName(side.name) === plainName(name);
  const start = ring.findIndex((side, i) => isOf(side) && !isOf(ring[(i + ring.length - 1) % ring.length]!));
  const round = start <= 0 ? ring : [...ring.slice(start), ...ring.slice(0, start)];
  const end = round.findIndex((side) => !isOf(side));
  return round.slice(0, end < 0 ? round.length : end);
}

/** The point so far along an edge from its left or lower end, or from the beginning of a ring, measured along the edge. */
export function fromLowEnd(run: readonly Side[], along: number): Point {
  const [{ from }, { to }] = [run[0]!, run.at(-1)!];
  const isRing = distance(from, to) <= SAME;
  const level = Math.abs(to.x - from.x) >= Math.abs(to.y - from.y);
  const forward = isRing || (level ? from.x <= to.x : from.y <= to.y);
  const sizes = run.map(sideLength);
  let left = forward ? along : sizes.reduce((sum, size) => sum + size, 0) - along;
  let at = 0;
  while (at < run.length - 1 && left > sizes[at]!) left -= sizes[at++]!;
  return pointAlong(run[at]!, Math.min(1, left / sizes[at]!));
}

/** Fold lines from edge to edge of the box round the cut line: the pleats’, then the file’s own. */
export function drawFolds(evaluator: Evaluator, piece: CompiledPiece, size: Size): FoldLine[] {
  const [pleats, along] = [evaluator.plan(piece), evaluator.along(piece)];
  const folds: FoldLine[] = (pleats?.folds ?? []).map(({ at, kind, pocket }) => {
    const mark = pleats!.from === 'top' ? size.height - at : at;
    return { kind, edge: pleats!.from, at: mark, ...across(pleats!.from, mark, size), pocket };
  });
  for (const { at, kind, pleat } of along?.folds ?? []) {
    folds.push({ kind, edge: along!.from, at, ...across(along!.from, at, size), pleat });
  }
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
