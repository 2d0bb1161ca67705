import { grainArrow } from '../drawing/marks.ts';
import { darts, folds, lies, near, notches, outlines } from '../drawing/piece.ts';
import { frameOf } from '../drawing/frame.ts';
import { letteringBox, letteringWidth } from '../drawing/lettering.ts';
import { lengthWriter } from '../drawing/lengths.ts';
import { bounds } from '../geometry/readings.ts';
import { rotate, rotatePoint, translate } from '../geometry/transform.ts';
import { stiffens } from '../project/lists.ts';
import { orderOf } from './alike.ts';
import { cropped, line } from './place.ts';
import { around, roomIn } from './room.ts';
import { LEADING } from './type.ts';
import type { Frame } from '../drawing/frame.ts';
import type { PathShape, Shape, TextShape } from '../drawing/scene.ts';
import type { Outline } from '../geometry/outline.ts';
import type { Box } from '../geometry/readings.ts';
import type { Point } from '../geometry/point.ts';
import type { Grain, Pattern, Piece } from '../project/pattern.ts';
import type { Alike } from './alike.ts';
import { nestShapes, nestWords } from './nested.ts';
import type { Drawn, SizeLine } from './nested.ts';
import type { LetteringRoom } from './room.ts';
import type { Type } from './type.ts';

/** A piece as it lies on the paper, which way its top points then, and all the pieces that the template is for. */
export type TemplatePiece = { readonly piece: Drawn; readonly turned: boolean; readonly all: Alike };

const turnedGrain: Readonly<Record<Grain, Grain>> = {
  lengthwise: 'crosswise',
  crosswise: 'lengthwise',
  bias: 'bias',
  any: 'any',
};

/** The piece turned a quarter to the left; its lower left corner is at the origin again. */
export function quarterTurn(piece: Drawn): Drawn {
  const origin = { x: 0, y: 0 };
  const home = { x: piece.size.height, y: 0 };
  const ring = (outline: Outline) => translate(rotate(outline, 90), home);
  const point = (place: Point): Point => {
    const { x, y } = rotatePoint(place, 90, origin);
    return { x: x + home.x, y: y + home.y };
  };
  const turnedDarts = (all: Piece['darts']) =>
    all.map((dart) => ({
      ...dart,
      middle: point(dart.middle),
      along: rotatePoint(dart.along, 90, origin),
      inward: rotatePoint(dart.inward, 90, origin),
    }));
  const turned = (one: SizeLine) => ({ ...one, cutOutline: ring(one.cutOutline), darts: turnedDarts(one.darts) });
  return {
    ...piece,
    outline: ring(piece.outline),
    cutOutline: ring(piece.cutOutline),
    size: { width: piece.size.height, height: piece.size.width },
    grain: turnedGrain[piece.grain],
    folds: piece.folds.map((fold) => ({ ...fold, from: point(fold.from), to: point(fold.to) })),
    notches: piece.notches.map((notch) => ({ ...notch, at: point(notch.at) })),
    ...(piece.nest && { nest: piece.nest.map(turned) }),
    darts: turnedDarts(piece.darts),
  };
}

/** A line of the words on a template. */
export type WordLine = { readonly text: string; readonly strong?: boolean };

/** The words on a template: its names, how many to cut of what, and its sizes. */
export function templateWords({ piece, turned, all }: TemplatePiece, pattern: Pattern): WordLine[] {
  const { set } = lengthWriter(pattern);
  const size = (width: number, height: number) => (turned ? [height, width] : [width, height]).map(set).join(' × ');
  const [cut, sewn] = [bounds(piece.cutOutline), bounds(piece.outline)];
  const lines: WordLine[] = [
    ...all.map(({ label }) => ({ text: label, strong: true })),
    { text: `${orderOf(all, pattern.materials)}.` },
    ...(piece.nest ?? [{ size: '', cutOutline: piece.cutOutline }]).map((one) => {
      const { width, height } = bounds(one.cutOutline);
      return { text: `Cut size ${size(width, height)}${one.size === '' ? '' : `: ${one.size}`}` };
    }),
  ];
  if (!piece.nest && !near(cut, sewn)) lines.push({ text: `Stitch line ${size(sewn.width, sewn.height)}` });
  if (!stiffens(piece, pattern.materials)) lines.push({ text: `Right side up. Top of piece ${turned ? '←' : '↑'}` });
  const faces = all.flatMap(({ insetFrom }) => pattern.pieces[insetFrom ?? '']?.label ?? []);
  if (stiffens(piece, pattern.materials) && faces.length > 0)
    lines.push({ text: `For the wrong side of: ${faces.join(', ')}` });
  return lines;
}

/** How high the words stand, and how wide, in mm. */
export function wordsSize(lines: readonly WordLine[], type: Type): { width: number; height: number } {
  return {
    width: Math.max(...lines.map((one) => letteringWidth(one.text, sizeOf(one, type)))),
    height: lines.reduce((sum, one) => sum + sizeOf(one, type) * LEADING, 0),
  };
}

const sizeOf = ({ strong }: WordLine, { small }: Type): number => (strong ? 1.3 : 1) * small;

/** The words with their upper left corner at a place of the sheet. */
export function setWords(lines: readonly WordLine[], at: Point, type: Type): TextShape[] {
  let y = at.y;
  return lines.map((one, i) => {
    const size = sizeOf(one, type);
    y += size * LEADING;
    return line(`words ${i + 1}`, one.text, at.x, y - 0.3 * size, size, one.strong ? { strong: true } : {});
  });
}

/** The words as one sentence. */
export const spoken = (lines: readonly WordLine[]): string => `${lines.map(({ text }) => text).join(', ')}.`;

/** Places for a block of a size, from the middle of a box outward. */
function* outward(box: Box, size: { width: number; height: number }): Generator<Point> {
  const [across, down] = [box.width - size.width, box.height - size.height];
  const step = Math.max(3, across / 40, down / 40);
  if (across < 0 || down < 0) return;
  const places: { x: number; y: number; far: number }[] = [];
  for (let x = 0; x <= across; x += step) {
    for (let y = 0; y <= down; y += step) {
      places.push({ x: box.x + x, y: box.y + y, far: Math.abs(x - across / 2) + Math.abs(y - down / 2) });
    }
  }
  yield* places.sort((a, b) => a.far - b.far);
}

/** What of a template stands on one sheet. */
export type TemplatePart = {
  /** The part of the sheet that shows the piece, in mm of the sheet. */
  readonly window: Box;
  /** Where on the sheet the upper left corner of the piece's box lies; it may be beyond the sheet. */
  readonly at: Point;
  /** Where lettering may stand, in mm of the sheet. */
  readonly limit: Box;
  /** What stands there already. */
  readonly taken: readonly Box[];
};

/** The lines of a piece at true scale, as far as one sheet shows them, with lettering where it covers no line. */
export function drawTemplate(
  lying: TemplatePiece,
  pattern: Pattern,
  shown: TemplatePart,
  type: Type,
  prefix: string,
): Shape[] {
  const { piece } = lying;
  const { frame, seen, arrow, room } = roomOn(lying, shown);
  const wide = roomOn(lying, shown, 2.2 * type.small).room;
  const cut = bounds(piece.cutOutline);
  const plain = near(cut, bounds(piece.outline));
  const lines: Shape[] = [
    ...folds(piece, frame),
    ...arrow,
    ...notches(piece, cut, frame),
    ...darts(piece, frame),
    ...(piece.nest ? nestShapes(piece.nest, frame) : outlines(piece, plain, frame)),
  ].flatMap((shape): Shape[] => {
    if (shape.kind !== 'path') return [];
    const path = cropped(shape.path, shown.window);
    return path.length === 0 ? [] : [{ ...shape, path }];
  });
  const sizes = piece.nest ? nestWords(piece.nest, shown.window, frame, type, shown.taken) : [];
  for (const one of sizes) for (const { take } of [room, wide]) take(letteringBox(one));
  const lettering = [
    ...sizes,
    ...placeWords(templateWords(lying, pattern), seen, wide, room, type),
    ...foldWords(lying, pattern, seen, frame, type, room),
    ...notchWords(piece, frame, type, room),
  ];
  return [...lines, ...lettering].map((shape) => ({ ...shape, name: `${prefix} ${shape.name}` }));
}

/** Whether the words find a place inside the piece. */
export function hasRoomForWords(lying: TemplatePiece, pattern: Pattern, type: Type): boolean {
  const { width, height } = bounds(lying.piece.cutOutline);
  const whole = { x: 0, y: 0, width, height };
  const { seen, room } = roomOn(lying, { window: whole, at: { x: 0, y: 0 }, limit: whole, taken: [] });
  return placeWords(templateWords(lying, pattern), seen, room, room, type).length > 0;
}

/**
 * Where a piece lies on a sheet, and the room for lettering inside its stitch line, clear of all its other lines.
 *
 * @param besideFolds the blank on both sides of a fold, in mm
 */
function roomOn({ piece }: TemplatePiece, { at, window, limit, taken }: TemplatePart, besideFolds = 0.4) {
  const cut = bounds(piece.cutOutline);
  const frame = frameOf(cut, 1, at.x, at.y);
  const seen = overlapOf(window, { x: frame.left, y: frame.top, width: cut.width, height: cut.height });
  const arrow = grainLine(piece, frame);
  const onSheet = piece.outline.map((edge) => ({ ...edge, from: frame.onto(edge.from), bulge: -edge.bulge }));
  const room = roomIn(limit, onSheet);
  taken.forEach(room.take);
  for (const { path } of arrow)
    room.take(
      boxOf(
        path.flatMap((c) => (c[0] === 'Z' ? [] : [{ x: c[1], y: c[2] }])),
        1,
      ),
    );
  for (const { from, to } of piece.folds) room.take(boxOf([frame.onto(from), frame.onto(to)], besideFolds));
  for (const { at } of piece.notches) room.take(boxOf([frame.onto(at)], 2.6));
  return { frame, seen, arrow, room };
}

/**
 * All the words, as near the middle of a piece as there is room, and away from folds, which have words of their own;
 * where there is no such place, its names and how many to cut.
 */
function placeWords(
  all: readonly WordLine[],
  seen: Box,
  wide: LetteringRoom,
  room: LetteringRoom,
  type: Type,
): TextShape[] {
  const names = all.filter(({ strong }) => strong).length;
  for (const some of [all, all.slice(0, names + 1)]) {
    for (const one of [wide, room]) {
      const lines = one.set(places(some, seen, type));
      if (lines.length === 0) continue;
      if (one !== room) lines.forEach((line) => room.take(letteringBox(line)));
      return lines;
    }
  }
  return [];
}

function* places(lines: readonly WordLine[], seen: Box, type: Type): Generator<TextShape[]> {
  for (const at of outward(seen, wordsSize(lines, type))) yield setWords(lines, at, type);
}

function overlapOf(a: Box, b: Box): Box {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  return {
    x,
    y,
    width: Math.min(a.x + a.width, b.x + b.width) - x,
    height: Math.min(a.y + a.height, b.y + b.height) - y,
  };
}

function boxOf(points: readonly Point[], blank: number): Box {
  const { x, y, width, height } = around(points.map((point) => ({ ...point, width: 0, height: 0 })));
  return { x: x - blank, y: y - blank, width: width + 2 * blank, height: height + 2 * blank };
}

/** The grain's arrow, up to 80 mm long, a quarter in from the left or low down, where it leaves the middle free. */
function grainLine(piece: Piece, frame: Frame): PathShape[] {
  if (piece.grain === 'any') return [];
  const box = bounds(piece.outline);
  const reach = Math.min(40, 0.36 * (piece.grain === 'lengthwise' ? box.height : box.width));
  const way = { lengthwise: { x: 0, y: 1 }, crosswise: { x: 1, y: 0 }, bias: { x: Math.SQRT1_2, y: Math.SQRT1_2 } }[
    piece.grain
  ];
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const centre =
    piece.grain === 'lengthwise'
      ? { ...middle, x: box.x + box.width * 0.12 }
      : piece.grain === 'crosswise'
        ? { ...middle, y: clearHeight(piece, box) }
        : middle;
  const end = (sign: 1 | -1) => frame.onto({ x: centre.x + sign * reach * way.x, y: centre.y + sign * reach * way.y });
  return [{ kind: 'path', name: 'grain', role: 'grain', path: grainArrow(end(-1), end(1)) }];
}

/** The middle between two folds, low on the piece, so that the arrow lies on none of them. */
function clearHeight(piece: Piece, box: Box): number {
  const wanted = box.y + box.height * 0.12;
  const heights = [box.y, ...piece.folds.filter(lies).map((fold) => fold.from.y), box.y + box.height].sort(
    (a, b) => a - b,
  );
  const next = heights.findIndex((height) => height > wanted);
  const [low, high] = [heights[next - 1] ?? box.y, heights[next] ?? box.y + box.height];
  return Math.min(high - 2.5, Math.max(low + 2.5, wanted));
}

/** Beside each fold its number and how far it lies from its raw edge. */
function foldWords(
  { piece }: TemplatePiece,
  pattern: Pattern,
  seen: Box,
  frame: Frame,
  type: Type,
  room: LetteringRoom,
): TextShape[] {
  const { set } = lengthWriter(pattern);
  return piece.folds.flatMap((fold, i) => {
    const name = piece.folds.length > 1 ? `${fold.label ?? 'fold'} ${i + 1}` : (fold.label ?? 'fold');
    const long = `${name} (${fold.kind}): ${set(fold.at)} from ${fold.edge}`;
    const at = frame.onto({ x: (fold.from.x + fold.to.x) / 2, y: (fold.from.y + fold.to.y) / 2 });
    const texts = [long, set(fold.at)];
    const places = texts.flatMap((text) => {
      const width = letteringWidth(text, type.small);
      const [before, after] = [-0.22 * type.small - 1.4, 0.76 * type.small + 1.4];
      if (lies(fold)) {
        const starts = [seen.x + 4, seen.x + (seen.width - width) / 2, seen.x + seen.width - width - 4];
        for (let x = seen.x + 4; x + width < seen.x + seen.width; x += 4) starts.push(x);
        return [before, after].flatMap((down) =>
          starts.map((x) => [line(`fold ${i + 1}`, text, x, at.y + down, type.small)]),
        );
      }
      const heights: number[] = [];
      for (let y = seen.y + 4 + type.small; y < seen.y + seen.height; y += type.small) heights.push(y);
      return [at.x + 1.4, at.x - 1.4 - width].flatMap((x) =>
        heights.map((y) => [line(`fold ${i + 1}`, text, x, y, type.small)]),
      );
    });
    return room.set(places);
  });
}

/** The words of a notch, below it or beside it. */
function notchWords(piece: Piece, frame: Frame, type: Type, room: LetteringRoom): TextShape[] {
  return piece.notches.flatMap((notch, i) => {
    if (notch.label === undefined) return [];
    const text = notch.label;
    const at = frame.onto(notch.at);
    const width = letteringWidth(text, type.small);
    const places: TextShape[][] = [];
    for (let far = 3; far < 24; far += 1) {
      for (const [x, y] of [
        [at.x - width / 2, at.y + far + type.small],
        [at.x - width / 2, at.y - far],
        [at.x + far, at.y + type.small / 3],
        [at.x - far - width, at.y + type.small / 3],
      ] as const) {
        places.push([line(`notch ${i + 1}`, text, x, y, type.small)]);
      }
    }
    return room.set(places);
  });
}
