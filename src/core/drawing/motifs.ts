import { box, curves, polyline } from './path.ts';
import type { Command, Path } from './path.ts';

/** The marks that tell surfaces apart where colour cannot. */
export type Motif = 'sprigs' | 'hatch' | 'crosses' | 'dots' | 'strokes';

/** One tile of a motif in mm, repeated in both directions; `line` in mm strokes the marks, without it they are filled. */
export type Tile = { readonly width: number; readonly height: number; readonly path: Path; readonly line?: number };

const sprig = (x: number, y: number): Command[] =>
  polyline({ x: x - 0.6, y: y + 0.35 }, { x, y: y - 0.35 }, { x: x + 0.6, y: y + 0.35 });

const dot = (x: number, y: number): Command[] => [
  ['M', x + 0.26, y],
  ...curves({ x, y }, 0.26, 0, 2 * Math.PI, (p) => p),
  ['Z'],
];

const cross = (x: number, y: number): Command[] => [
  ...polyline({ x: x - 0.5, y }, { x: x + 0.5, y }),
  ...polyline({ x, y: y - 0.5 }, { x, y: y + 0.5 }),
];

/** Two marks a tile, the second half a tile on, so that rows are staggered as in a printed cloth. */
const staggered = (size: number, mark: (x: number, y: number) => Command[]): Command[] => [
  ...mark(size / 4, size / 4),
  ...mark((size * 3) / 4, (size * 3) / 4),
];

/** A diagonal through the tile, and its two neighbours' corners, so that the seams of the tiles do not show. */
const diagonal = (size: number): Command[] => [
  ...polyline({ x: 0, y: size }, { x: size, y: 0 }),
  ...polyline({ x: -0.3, y: 0.3 }, { x: 0.3, y: -0.3 }),
  ...polyline({ x: size - 0.3, y: size + 0.3 }, { x: size + 0.3, y: size - 0.3 }),
];

/** The right side's sprigs point up the cloth, so that a piece turned round shows it. */
export const motifs: Readonly<Record<Motif, Tile>> = {
  sprigs: { width: 4.4, height: 4.4, path: staggered(4.4, sprig), line: 0.22 },
  hatch: { width: 1.9, height: 1.9, path: diagonal(1.9), line: 0.18 },
  crosses: { width: 3.8, height: 3.8, path: staggered(3.8, cross), line: 0.2 },
  dots: { width: 1.8, height: 1.8, path: staggered(1.8, dot) },
  strokes: { width: 1.6, height: 3, path: box(0.7, 0.8, 0.2, 1.4) },
};
