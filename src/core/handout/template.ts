import { grainArrow } from '../drawing/marks.ts';
import { cutOrder, folds, lies, near, notches, outlines } from '../drawing/piece.ts';
import { frameOf } from '../drawing/frame.ts';
import { letteringWidth } from '../drawing/lettering.ts';
import { writer } from '../drawing/lengths.ts';
import { bounds } from '../geometry/readings.ts';
import { rotate, rotatePoint, translate } from '../geometry/transform.ts';
import { cropped, line } from './place.ts';
import { around, roomIn } from './room.ts';
import { LEADING } from './type.ts';
import type { Frame } from '../drawing/frame.ts';
import type { Shape, TextShape } from '../drawing/scene.ts';
import type { Outline } from '../geometry/outline.ts';
import type { Box } from '../geometry/readings.ts';
import type { Point } from '../geometry/point.ts';
import type { Grain, Pattern, Piece } from '../project/pattern.ts';
import type { Room } from './room.ts';
import type { Type } from './type.ts';

/** A piece as it lies on the paper, and which way its top points then. */
export type Lying = { readonly piece: Piece; readonly turned: boolean };

const turnedGrain: Readonly<Record<Grain, Grain>> = {
  lengthwise: 'crosswise',
  crosswise: 'lengthwise',
  bias: 'bias',
  any: 'any',
};

/** The piece turned a quarter to the left; its lower left corner is at the origin again. */
export function quarterTurn(piece: Piece): Piece {
  const origin = { x: 0, y: 0 };
  const home = { x: piece.size.height, y: 0 };
  const ring = (outline: Outline) => translate(rotate(outline, 90), home);
  const point = (place: Point): Point => {
    const { x, y } = rotatePoint(place, 90, origin);
    return { x: x + home.x, y: y + home.y };
  };
  return {
    ...piece,
    outline: ring(piece.outline),
    cutOutline: ring(piece.cutOutline),
    size: { width: piece.size.height, height: piece.size.width },
    grain: turnedGrain[piece.grain],
    folds: piece.folds.map((fold) => ({ ...fold, from: point(fold.from), to: point(fold.to) })),
    notches: piece.notches.map((notch) => ({ ...notch, at: point(notch.at) })),
  };
}

/** The words on a template: its name, how many to cut of what, and its sizes. */
export function words({ piece, turned }: Lying, pattern: Pattern): string[] {
  const { set } = writer(pattern);
  const size = (width: number, height: number) => (turned ? [height, width] : [width, height]).map(set).join(' × ');
  const [cut, sewn] = [bounds(piece.cutOutline), bounds(piece.outline)];
  const lines = [piece.label, `${cutOrder(piece, pattern.materials)}.`, `Cut size ${size(cut.width, cut.height)}`];
  if (!near(cut, sewn)) lines.push(`Stitch line ${size(sewn.width, sewn.height)}`);
  const stiffened = piece.insetFrom === undefined ? undefined : pattern.pieces[piece.insetFrom];
  const kind = pattern.materials[piece.material]?.material?.kind;
  if (stiffened) lines.push(`For the wrong side of: ${stiffened.label}`);
  else if (kind !== 'interfacing' && kind !== 'batting')
    lines.push(`Right side up. Top of piece ${turned ? '←' : '↑'}`);
  return lines;
}

/** How high the words stand, and how wide, in mm. */
export function wordsSize(lines: readonly string[], type: Type): { width: number; height: number } {
  const sizes = lines.map((_, i) => (i === 0 ? nameSize(type) : type.small));
  return {
    width: Math.max(...lines.map((text, i) => letteringWidth(text, sizes[i]!))),
    height: sizes.reduce((sum, size) => sum + size * LEADING, 0),
  };
}

const nameSize = ({ small }: Type): number => 1.3 * small;

/** The words with their upper left corner at a place of the sheet. */
export function setWords(lines: readonly string[], at: Point, type: Type): TextShape[] {
  let y = at.y;
  return lines.map((text, i) => {
    const size = i === 0 ? nameSize(type) : type.small;
    y += size * LEADING;
    return line(`words ${i + 1}`, text, at.x, y - 0.3 * size, size, i === 0 ? { strong: true } : {});
  });
}

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
export type Shown = {
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
export function drawTemplate(lying: Lying, pattern: Pattern, shown: Shown, type: Type, prefix: string): Shape[] {
  const { piece } = lying;
  const cut = bounds(piece.cutOutline);
  const plain = near(cut, bounds(piece.outline));
  const frame = frameOf(cut, 1, shown.at.x, shown.at.y);
  const seen = overlapOf(shown.window, { x: frame.left, y: frame.top, width: cut.width, height: cut.height });
  const arrow = grainLine(piece, frame);
  const lines: Shape[] = [
    ...folds(piece, frame),
    ...arrow,
    ...notches(piece, cut, frame),
    ...outlines(piece, plain, frame),
  ].flatMap((shape): Shape[] => {
    if (shape.kind !== 'path') return [];
    const path = cropped(shape.path, shown.window);
    return path.length === 0 ? [] : [{ ...shape, path }];
  });

  // Inside the stitch line, on the sheet.
  const onSheet = piece.outline.map((edge) => ({ ...edge, from: frame.onto(edge.from), bulge: -edge.bulge }));
  const room = roomIn(shown.limit, onSheet);
  shown.taken.forEach(room.take);
  for (const shape of arrow)
    if (shape.kind === 'path')
      room.take(
        boxOf(
          shape.path.flatMap((c) => (c[0] === 'Z' ? [] : [{ x: c[1], y: c[2] }])),
          1,
        ),
      );
  for (const { from, to } of piece.folds) room.take(boxOf([frame.onto(from), frame.onto(to)], 0.4));
  for (const { at } of piece.notches) room.take(boxOf([frame.onto(at)], 2.6));

  const all = words(lying, pattern);
  const texts = [all, all.slice(0, 2)].flatMap((some) => {
    const size = wordsSize(some, type);
    return [...outward(seen, size)].map((at) => setWords(some, at, type));
  });
  const lettering = [
    ...room.set(texts),
    ...foldWords(lying, pattern, seen, frame, type, room),
    ...notchWords(piece, frame, type, room),
  ];
  return [...lines, ...lettering].map((shape) => ({ ...shape, name: `${prefix} ${shape.name}` }));
}

/** Whether the words find a place inside the piece. */
export function hasRoomForWords(lying: Lying, pattern: Pattern, type: Type): boolean {
  const { width, height } = bounds(lying.piece.cutOutline);
  const whole = { x: 0, y: 0, width, height };
  const shapes = drawTemplate(
    lying,
    pattern,
    { window: whole, at: { x: 0, y: 0 }, limit: whole, taken: [] },
    type,
    'trial',
  );
  return shapes.some(({ name }) => name === 'trial words 1');
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
function grainLine(piece: Piece, frame: Frame): Shape[] {
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
function foldWords({ piece }: Lying, pattern: Pattern, seen: Box, frame: Frame, type: Type, room: Room): TextShape[] {
  const { set } = writer(pattern);
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
function notchWords(piece: Piece, frame: Frame, type: Type, room: Room): TextShape[] {
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
