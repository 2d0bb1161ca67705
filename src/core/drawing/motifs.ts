import { box, curves, polyline } from './path.ts';
import type { Command, Path } from './path.ts';

/** The marks that tell surfaces apart where colour cannot. */
export type Motif =
  | 'sprigs'
  | 'buds'
  | 'bars'
  | 'grain'
  | 'hatch'
  | 'wide hatch'
  | 'cross hatch'
  | 'bold hatch'
  | 'hatch back'
  | 'crosses'
  | 'dots'
  | 'waves'
  | 'weave'
  | 'strokes'
  | 'specks'
  | 'lines'
  | 'close lines'
  | 'checks'
  | 'close checks';

/** One tile of a motif in mm, repeated in both directions; `line` in mm strokes the marks, without it they are filled. */
export type MotifTile = {
  readonly width: number;
  readonly height: number;
  readonly path: Path;
  readonly line?: number;
};

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
const diagonal = (size: number, isBack = false): Command[] => {
  const p = (x: number, y: number) => ({ x: isBack ? size - x : x, y });
  return [
    ...polyline(p(0, size), p(size, 0)),
    ...polyline(p(-0.3, 0.3), p(0.3, -0.3)),
    ...polyline(p(size - 0.3, size + 0.3), p(size + 0.3, size - 0.3)),
  ];
};

/** A bud on its stem. */
const bud = (x: number, y: number): Command[] => [
  ['M', x + 0.4, y - 0.3],
  ...curves({ x, y: y - 0.3 }, 0.4, 0, 2 * Math.PI, (p) => p),
  ['Z'],
  ...polyline({ x, y: y + 0.1 }, { x, y: y + 0.9 }),
];

/** An upright bar with a foot, so that it shows which way is up. */
const bar = (x: number, y: number): Command[] => [
  ...polyline({ x, y: y - 0.8 }, { x, y: y + 0.8 }),
  ...polyline({ x: x - 0.4, y: y + 0.8 }, { x: x + 0.4, y: y + 0.8 }),
];

const crease = (x: number, y: number): Command[] =>
  polyline({ x: x - 0.35, y: y - 0.1 }, { x, y: y + 0.15 }, { x: x + 0.4, y: y - 0.05 });

const wave = (width: number, y: number): Command[] => [
  ['M', 0, y],
  ['C', width / 4, y - 0.9, width / 4, y - 0.9, width / 2, y],
  ['C', (width * 3) / 4, y + 0.9, (width * 3) / 4, y + 0.9, width, y],
];

const level = (width: number, y: number): Command[] => polyline({ x: 0, y }, { x: width, y });

const checks = (size: number): Command[] => [
  ...level(size, size / 2),
  ...polyline({ x: size / 2, y: 0 }, { x: size / 2, y: size }),
];

/** The sprigs, buds and bars of right sides point up the cloth, so that a piece turned round shows it. */
export const motifs: Readonly<Record<Motif, MotifTile>> = {
  sprigs: { width: 4.4, height: 4.4, path: staggered(4.4, sprig), line: 0.22 },
  buds: { width: 5.2, height: 5.2, path: staggered(5.2, bud), line: 0.22 },
  bars: { width: 4.8, height: 4.8, path: staggered(4.8, bar), line: 0.22 },
  grain: { width: 2.4, height: 2.4, path: staggered(2.4, crease), line: 0.18 },
  hatch: { width: 1.9, height: 1.9, path: diagonal(1.9), line: 0.18 },
  'wide hatch': { width: 3.2, height: 3.2, path: diagonal(3.2), line: 0.2 },
  'cross hatch': { width: 3.2, height: 3.2, path: [...diagonal(3.2), ...diagonal(3.2, true)], line: 0.16 },
  'bold hatch': { width: 2.6, height: 2.6, path: diagonal(2.6), line: 0.4 },
  'hatch back': { width: 1.9, height: 1.9, path: diagonal(1.9, true), line: 0.18 },
  crosses: { width: 3.8, height: 3.8, path: staggered(3.8, cross), line: 0.2 },
  dots: { width: 1.8, height: 1.8, path: staggered(1.8, dot) },
  waves: { width: 5, height: 2.6, path: wave(5, 1.3), line: 0.18 },
  weave: { width: 2, height: 1.2, path: polyline({ x: 0.2, y: 0.6 }, { x: 1.4, y: 0.6 }), line: 0.16 },
  strokes: { width: 1.6, height: 3, path: box(0.7, 0.8, 0.2, 1.4) },
  specks: { width: 4, height: 4, path: staggered(4, dot) },
  lines: { width: 3, height: 1.7, path: level(3, 0.85), line: 0.16 },
  'close lines': { width: 3, height: 0.85, path: level(3, 0.425), line: 0.2 },
  checks: { width: 1.8, height: 1.8, path: checks(1.8), line: 0.2 },
  'close checks': { width: 0.9, height: 0.9, path: checks(0.9), line: 0.24 },
};
