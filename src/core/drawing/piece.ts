import { bounds } from '../geometry/readings.ts';
import { dartLines } from '../project/darts.ts';
import { across, heights, tags } from './dimension.ts';
import { lengthWriter } from './lengths.ts';
import { grainArrow, notchWedge } from './marks.ts';
import { closed, polyline } from './path.ts';
import { fitOf, LEAST, layOutSheet, roomBeside } from './sheet.ts';
import { clothWords, hasNoSides, surfaceOf } from './surface.ts';
import type { Point } from '../geometry/point.ts';
import type { Box } from '../geometry/readings.ts';
import type { FoldLine, Pattern, Piece } from '../project/pattern.ts';
import type { DimensionLine, DimensionTag } from './dimension.ts';
import type { Frame } from './frame.ts';
import type { Command } from './path.ts';
import type { PieceSetting } from './surface.ts';
import type { ShapeRole, Scene, Shape } from './scene.ts';

/**
 * A piece to cut, lying right side up: its cut line and stitch line with the allowance between them, grain, folds,
 * notches, and its sizes.
 */
export function drawPiece(piece: Piece, setting: PieceSetting): Scene {
  const { set } = lengthWriter(setting);
  const [cut, sewn] = [bounds(piece.cutOutline), bounds(piece.outline)];
  const plain = near(cut, sewn);
  const numbered = piece.folds.map((fold, i) => ({ fold, number: i + 1 }));
  const level = numbered.filter(({ fold }) => lies(fold));
  const upright = numbered.filter(({ fold }) => !lies(fold) && fold.pleat === undefined);

  const cutHeight = heights({ name: 'cut height', marks: [cut.y, cut.y + cut.height], labels: [set(cut.height)] });
  const sewnHeight = plain ? [] : [heights(chainOf('height', cut, sewn, 'y', set))];
  const fold = level.map(({ fold, number }) => foldTag(fold, number, set));
  const foldTags = tags('folds', fold);
  // Where the words beside folds would make the piece small, only numbers stay there and the words go below it.
  const fit = fitOf(setting);
  const room = roomBeside([foldTags, cutHeight, ...sewnHeight], setting);
  const wanted = Math.min(0.5 * fit.width, Math.max(LEAST, (0.8 * fit.height * cut.width) / cut.height));
  const terse = level.length > 0 && room < wanted;
  const beside = terse
    ? tags(
        'folds',
        fold.map((tag) => ({ ...tag, label: '' })),
      )
    : foldTags;
  const right = level.length === 0 ? sewnHeight : [beside];
  const left = level.length === 0 ? [cutHeight] : [...sewnHeight, cutHeight];
  const notes = terse ? level.map(({ fold, number }) => foldNote(fold, number, set)) : [];
  const fromSides = upright.map(({ fold, number }): DimensionLine =>
    across({
      name: `fold ${number}`,
      marks: fold.edge === 'right' ? [fold.from.x, cut.x + cut.width] : [cut.x, fold.from.x],
      labels: [set(fold.at)],
    }),
  );
  const cutWidth = across({ name: 'cut width', marks: [cut.x, cut.x + cut.width], labels: [set(cut.width)] });
  const surface = surfaceOf(piece, setting.materials);
  const pleats = firstPleat(piece, cut, set);
  if (pleats.repeat !== undefined) notes.push(pleats.repeat);
  return layOutSheet(
    {
      title: piece.label,
      lines: [cutOrder(piece, setting.materials)],
      cloth: cut,
      left,
      right,
      above: [...fromSides, ...pleats.chain, ...(plain ? [] : [across(chainOf('width', cut, sewn, 'x', set))])],
      below: [cutWidth],
      draw: (frame) => [
        ...surfaces(piece, surface, plain, frame),
        ...folds(piece, frame),
        ...grain(piece, cut, frame),
        ...notches(piece, cut, frame),
        ...darts(piece, frame),
        ...outlines(piece, plain, frame),
      ],
      notes,
      words: clothWords(setting.materials),
      text: describe(piece, cut, sewn, setting),
    },
    setting,
  );
}

/** Whether cut line and stitch line are one. */
export const near = (a: Box, b: Box): boolean => Math.abs(a.width - b.width) + Math.abs(a.height - b.height) < 1e-6;

/** Whether a fold runs across the piece rather than up it. */
export const lies = (fold: FoldLine): boolean => Math.abs(fold.from.y - fold.to.y) <= Math.abs(fold.from.x - fold.to.x);

/** Cut 2 of lining. */
export function cutOrder(piece: Piece, materials: Pattern['materials'] = {}): string {
  const from = materials[piece.material]?.label ?? piece.material;
  // In the middle of a sentence: Lining becomes lining, PUL stays.
  const within = from.replace(/^\p{Lu}(?!\p{Lu})/u, (letter) => letter.toLowerCase());
  return `Cut ${piece.count}${within === '' ? '' : ` of ${within}`}`;
}

/** Allowance, finished size, allowance: a chain that adds up to the cut size. */
function chainOf(name: string, cut: Box, sewn: Box, axis: 'x' | 'y', set: (mm: number) => string) {
  const size = axis === 'x' ? 'width' : 'height';
  const marks = [cut[axis], sewn[axis], sewn[axis] + sewn[size], cut[axis] + cut[size]];
  const labels = marks.slice(1).map((mark, i) => (mark - marks[i]! < 1e-6 ? '' : set(mark - marks[i]!)));
  return { name, marks, labels };
}

/**
 * The distances of the folds of the first upright pleat, on to the second, and in words how the others follow: as many
 * numbers as there is room for.
 */
function firstPleat(
  { edgePleats, folds }: Piece,
  cut: Box,
  set: (mm: number) => string,
): { chain: DimensionLine[]; repeat?: string } {
  if (edgePleats?.from !== 'left') return { chain: [] };
  const at = (pleat: number) => folds.filter((fold) => fold.pleat === pleat).map(({ from }) => from.x);
  const [first, second] = [at(1), at(2)];
  const marks = [cut.x, ...first, ...second.slice(0, 1)];
  const labels = marks.slice(1).map((mark, i) => set(mark - marks[i]!));
  const chain = [across({ name: 'first pleat', marks, labels })];
  if (second.length === 0) return { chain };
  const which = edgePleats.count === 2 ? 'The second pleat is' : `Pleats 2 to ${edgePleats.count} are`;
  return {
    chain,
    repeat: `${which} marked alike, ${set(second[0]! - first[0]!)} from each fold to the same of the next.`,
  };
}

/** The words beside a fold: its number, its name, and how far it lies from its edge. */
function foldTag(fold: FoldLine, number: number, set: (mm: number) => string): DimensionTag {
  const label = fold.label === undefined ? set(fold.at) : `${fold.label}, ${set(fold.at)}`;
  return { name: `fold ${number}`, at: fold.from.y, number: String(number), label };
}

/** The same in a note: 1: hem fold, 30 mm from the bottom edge. */
const foldNote = (fold: FoldLine, number: number, set: (mm: number) => string): string =>
  `${number}: ${foldTag(fold, number, set).label} from the ${fold.edge} edge.`;

function surfaces(piece: Piece, surface: ShapeRole, plain: boolean, frame: Frame): Shape[] {
  const inside = closed(piece.outline, frame.onto);
  const body: Shape = { kind: 'path', name: 'surface', role: surface, path: inside };
  if (plain) return [body];
  return [{ kind: 'path', name: 'allowance', role: 'allowance', path: closed(piece.cutOutline, frame.onto) }, body];
}

/** The cut line and, where there is an allowance, the stitch line. */
export function outlines(piece: Piece, plain: boolean, frame: Frame): Shape[] {
  const cut: Shape = { kind: 'path', name: 'cut line', role: 'cut', path: closed(piece.cutOutline, frame.onto) };
  if (plain) return [cut];
  return [{ kind: 'path', name: 'stitch line', role: 'stitch', path: closed(piece.outline, frame.onto) }, cut];
}

export function folds(piece: Piece, frame: Frame): Shape[] {
  return (['valley', 'mountain'] as const).flatMap((kind): Shape[] => {
    const path = piece.folds
      .filter((fold) => fold.kind === kind)
      .flatMap(({ from, to }) => polyline(frame.onto(from), frame.onto(to)));
    return path.length === 0 ? [] : [{ kind: 'path', name: `${kind} folds`, role: kind, path }];
  });
}

function grain(piece: Piece, cut: Box, frame: Frame): Shape[] {
  if (piece.grain === 'any') return [];
  const way = grainWays[piece.grain];
  const { x, y } = frame.onto(besideFolds(piece, cut));
  const [width, height] = [frame.right - frame.left, frame.bottom - frame.top];
  const reach = Math.min(18, 0.3 * (way.x === 0 ? height : way.y === 0 ? width : Math.min(width, height)));
  const path = grainArrow(
    { x: x - reach * way.x, y: y - reach * way.y },
    { x: x + reach * way.x, y: y + reach * way.y },
  );
  return [{ kind: 'path', name: 'grain', role: 'grain', path }];
}

/** On the sheet, where y runs down. */
const grainWays = {
  lengthwise: { x: 0, y: 1 },
  crosswise: { x: 1, y: 0 },
  bias: { x: Math.SQRT1_2, y: -Math.SQRT1_2 },
} as const;

/** A place for the grain's arrow: the middle of the piece, or where the folds leave the most room near it. */
function besideFolds(piece: Piece, cut: Box): Point {
  const middle = { x: cut.x + cut.width / 2, y: cut.y + cut.height / 2 };
  if (piece.folds.length === 0 || piece.grain === 'bias') return middle;
  if (piece.grain === 'lengthwise') return { ...middle, x: cut.x + cut.width / 4 };
  const heights = [cut.y, ...piece.folds.map((fold) => fold.from.y), cut.y + cut.height].sort((a, b) => a - b);
  const centres = heights.slice(1).map((height, i) => (height + heights[i]!) / 2);
  return { ...middle, y: centres.reduce((a, b) => (Math.abs(b - middle.y) < Math.abs(a - middle.y) ? b : a)) };
}

export function notches(piece: Piece, cut: Box, frame: Frame): Shape[] {
  const path: Command[] = piece.notches.flatMap(({ at }) => {
    const place = frame.onto(at);
    const centre = frame.onto({ x: cut.x + cut.width / 2, y: cut.y + cut.height / 2 });
    // A notch stands square to its edge; on an edge that is not upright or level the middle of the piece is near enough.
    const [left, low] = [Math.abs(at.x - cut.x) < 1e-6, Math.abs(at.y - cut.y) < 1e-6];
    const [right, high] = [Math.abs(at.x - cut.x - cut.width) < 1e-6, Math.abs(at.y - cut.y - cut.height) < 1e-6];
    if (low || high) return notchWedge(place, { x: 0, y: low ? -1 : 1 });
    if (left || right) return notchWedge(place, { x: left ? 1 : -1, y: 0 });
    const size = Math.hypot(centre.x - place.x, centre.y - place.y) || 1;
    return notchWedge(place, { x: (centre.x - place.x) / size, y: (centre.y - place.y) / size });
  });
  return path.length === 0 ? [] : [{ kind: 'path', name: 'notches', role: 'notch', path }];
}

/** The legs of darts, along which they are sewn, and the fold between them. */
export function darts(piece: Piece, frame: Frame): Shape[] {
  if (piece.darts.length === 0) return [];
  const [legs, middles]: [Command[], Command[]] = [[], []];
  for (const dart of piece.darts) {
    const lines = dartLines(dart);
    for (const leg of lines.legs) legs.push(...polyline(...leg.map(frame.onto)));
    middles.push(...polyline(frame.onto(dart.middle), frame.onto(lines.point)));
  }
  return [
    { kind: 'path', name: 'dart legs', role: 'stitch', path: legs },
    { kind: 'path', name: 'dart folds', role: 'valley', path: middles },
  ];
}

function describe(piece: Piece, cut: Box, sewn: Box, setting: PieceSetting): string[] {
  const { say } = lengthWriter(setting);
  const surface = surfaceOf(piece, setting.materials);
  const text = [
    `${piece.label}${hasNoSides(surface) ? '' : ', right side up'}. ${cutOrder(piece, setting.materials)}.`,
    `Cut size: ${say(cut.width)} wide, ${say(cut.height)} high.`,
  ];
  if (!near(cut, sewn)) text.push(`Between the stitch lines: ${say(sewn.width)} wide, ${say(sewn.height)} high.`);
  text.push(...allowances(piece, say));
  if (piece.grain !== 'any') text.push(grainWords[piece.grain]);
  piece.folds.forEach((fold, i) => {
    const label = fold.label === undefined ? '' : ` (${fold.label})`;
    text.push(`Fold ${i + 1}${label}: a ${fold.kind} fold, ${say(fold.at)} from the ${fold.edge} edge.`);
  });
  for (const { edge, width, length } of piece.darts)
    text.push(`A dart on the ${edge} edge, ${say(width)} wide on the stitch line and ${say(length)} long.`);
  piece.notches.forEach(({ edge, label }) => {
    text.push(`A notch on the ${edge} edge${label === undefined ? '' : `: ${label}`}.`);
  });
  return text;
}

/** The allowances, in one phrase when they are all one. */
function allowances({ allowance }: Piece, say: (mm: number) => string): string[] {
  const edges = Object.entries(allowance);
  const [first] = edges;
  if (!first || edges.every(([, mm]) => mm <= 0)) return [];
  if (edges.every(([, mm]) => mm === first[1])) return [`Seam allowance: ${say(first[1])} on every edge.`];
  return [`Seam allowance: ${edges.map(([edge, mm]) => `${edge} ${mm > 0 ? say(mm) : 'none'}`).join(', ')}.`];
}

const grainWords = {
  lengthwise: 'The grain runs up the piece.',
  crosswise: 'The grain runs across the piece.',
  bias: 'The grain runs at 45 degrees: the piece lies on the bias.',
};
