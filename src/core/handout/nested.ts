/** Pieces with a cut line for each size, one inside the other. */
import { bounds, straightened, union } from '../geometry/index.ts';
import { CHORD } from '../cloth/cut.ts';
import { awayFrom } from '../cloth/ring.ts';
import { closed, polyline } from '../drawing/path.ts';
import { cropped, line, meet } from './place.ts';
import { dartLines } from '../project/darts.ts';
import { distance, plus, times } from '../geometry/point.ts';
import { letteringBox, letteringWidth } from '../drawing/lettering.ts';
import { sides } from '../geometry/index.ts';
import type { Frame } from '../drawing/frame.ts';
import type { Point } from '../geometry/index.ts';
import type { Pattern, Piece } from '../project/pattern.ts';
import type { Box } from '../geometry/readings.ts';
import type { Shape, ShapeRole, TextShape } from '../drawing/scene.ts';
import type { Type } from './type.ts';

/** The cut line of a piece in one size, and its darts. */
export type SizeLine = Pick<Piece, 'cutOutline' | 'darts'> & { readonly size: string; readonly role: ShapeRole };

/** A piece as its template draws it; with `nest`, one line for each size in place of its cut line and stitch line. */
export type Drawn = Piece & { readonly nest?: readonly SizeLine[] };

const roles = ['size 1', 'size 2', 'size 3', 'size 4', 'size 5', 'size 6'] as const;
export const sizeRole = (i: number): ShapeRole => roles[i % roles.length]!;

/**
 * The pieces of a project in all its sizes: those that are alike in each as they are, the others nested at their lower left
 * corner. Those with fold lines are left out and named, since the lines of several sizes could not be told apart.
 *
 * @param patterns one for each size, in their order
 */
export function nestedPieces(patterns: readonly Pattern[]): { pieces: Record<string, Drawn>; leftOut: Piece[] } {
  const pieces: Record<string, Drawn> = {};
  const leftOut: Piece[] = [];
  for (const [name, piece] of Object.entries(patterns[0]?.pieces ?? {})) {
    const all = patterns.flatMap((pattern) => pattern.pieces[name] ?? []);
    if (all.every((one) => isSame(one, piece))) pieces[name] = piece;
    else if (all.some(({ folds }) => folds.length > 0)) leftOut.push(piece);
    else pieces[name] = nested(patterns, name);
  }
  return { pieces, leftOut };
}

const isSame = (a: Piece, b: Piece): boolean =>
  a.cutOutline.length === b.cutOutline.length &&
  a.cutOutline.every(({ from, bulge }, i) => {
    const other = b.cutOutline[i]!;
    return distance(from, other.from) < 0.01 && Math.abs(bulge - other.bulge) < 1e-6;
  }) &&
  JSON.stringify([a.folds, a.notches, a.darts]) === JSON.stringify([b.folds, b.notches, b.darts]);

function nested(patterns: readonly Pattern[], name: string): Drawn {
  const all = patterns.flatMap((pattern, i) => {
    const piece = pattern.pieces[name];
    return piece ? [{ piece, size: pattern.sizes?.chosen ?? '', role: sizeRole(i) }] : [];
  });
  const area = ({ size: { width, height } }: Piece) => width * height;
  const sorted = all.map(({ piece }) => piece).toSorted((a, b) => area(a) - area(b));
  const [smallest, largest] = [sorted[0]!, sorted.at(-1)!];
  const [outer] = union(all.map(({ piece }) => straightened(piece.cutOutline, CHORD)));
  const cutOutline = outer ?? largest.cutOutline;
  const { width, height } = bounds(cutOutline);
  return {
    ...largest,
    cutOutline,
    // Its words stand where the smallest has room for them.
    outline: smallest.cutOutline,
    size: { width, height },
    notches: all.flatMap(({ piece }) =>
      piece.notches.map(({ label, ...notch }) =>
        label === undefined || piece !== largest ? notch : { ...notch, label },
      ),
    ),
    darts: [],
    nest: all.map(({ piece: { cutOutline, darts }, size, role }) => ({ size, role, cutOutline, darts })),
  };
}

/** The cut line of each size, and the legs of its darts. */
export const nestShapes = (nest: readonly SizeLine[], frame: Frame): Shape[] =>
  nest.map(({ size, role, cutOutline, darts }) => ({
    kind: 'path',
    name: `cut line ${size}`,
    role,
    path: [
      ...closed(cutOutline, frame.onto),
      ...darts.flatMap((dart) => dartLines(dart).legs.flatMap((leg) => polyline(...leg.map(frame.onto)))),
    ],
  }));

/** Nearer than this to the line of another size, in mm, a name could be that one’s. */
const APART = 3;

/** The name of each size beside its line, inside it, where no other line runs. */
export function nestWords(
  nest: readonly SizeLine[],
  window: Box,
  frame: Frame,
  type: Type,
  taken: readonly Box[],
): TextShape[] {
  const paths = nestShapes(nest, frame).flatMap((shape) => (shape.kind === 'path' ? [shape.path] : []));
  const all = [...taken];
  return nest.flatMap(({ size, cutOutline }): TextShape[] => {
    const others = nest.filter((one) => one.size !== size).map((one) => straightened(one.cutOutline, CHORD));
    const [width, high] = [letteringWidth(size, type.small), type.small];
    for (const side of sides(straightened(cutOutline, CHORD)).toSorted((a, b) => length(b) - length(a))) {
      const way = times({ x: side.to.x - side.from.x, y: side.to.y - side.from.y }, 1 / (length(side) || 1));
      const inward = { x: -way.y, y: way.x };
      const off = Math.abs(inward.x) * (width / 2 + 1) + Math.abs(inward.y) * (high / 2 + 1);
      for (const share of [0.3, 0.7, 0.2, 0.8, 0.4, 0.6, 0.1, 0.9]) {
        const on = plus(side.from, times(way, share * length(side)));
        if (others.some((other) => awayFrom(other, on) < APART)) continue;
        const at = frame.onto(plus(on, times(inward, off)));
        const text = line(`size ${size}`, size, at.x, at.y + 0.36 * high, high, { anchor: 'middle', strong: true });
        const box = letteringBox(text);
        const isHere =
          box.x >= window.x &&
          box.y >= window.y &&
          box.x + box.width <= window.x + window.width &&
          box.y + box.height <= window.y + window.height;
        if (!isHere || paths.some((path) => cropped(path, box).length > 0) || all.some((one) => meet(one, box)))
          continue;
        all.push(box);
        return [text];
      }
    }
    return [];
  });
}

const length = ({ from, to }: { from: Point; to: Point }): number => distance(from, to);
