import { LINE, TYPE } from './dimension.ts';
import { letteringWidth, wrap } from './lettering.ts';
import type { Point } from '../geometry/point.ts';

/** Something drawn to scale, its size in mm of cloth, with a caption over it. */
export type Cell = { readonly width: number; readonly height: number; readonly caption: string };

/** Cells put together. All but `scale` in mm of cloth, from the lower left corner of the whole. */
export type Arranged = {
  readonly order: CellOrder;
  /** mm on the sheet for 1 mm of cloth. */
  readonly scale: number;
  readonly width: number;
  readonly height: number;
  /** The lower left corner of each cell, and the lines of its caption. */
  readonly cells: readonly { readonly at: Point; readonly caption: readonly string[] }[];
};

/** All cells in a row, in a column, or those before the last in a row over it or in a column beside it. */
export type CellOrder = 'row' | 'column' | 'row over' | 'column beside';

/** Between cells, between a caption and its cell, and the width that a caption may always take; mm of the sheet. */
const [GAP, NEAR, CAPTION] = [6, 1.6, 24];

/**
 * The order in which cells become largest in the room, and where each then lies.
 *
 * @param room in mm of the sheet
 */
export function arrange(cells: readonly Cell[], room: { width: number; height: number }): Arranged {
  const orders: readonly CellOrder[] =
    cells.length > 2 ? ['row over', 'column beside', 'column', 'row'] : ['column', 'row'];
  const all = orders.map((order) => ({ order, scale: largest(cells, order, room) }));
  const { order, scale } = all.reduce((best, one) => (one.scale > best.scale * 1.05 ? one : best));
  return arrangeAt(cells, order, scale, room.width);
}

/** Cells in an order at a scale. */
export function arrangeAt(cells: readonly Cell[], order: CellOrder, scale: number, room: number): Arranged {
  const { width, height, cells: placed } = blockOf(cells, order, scale, room);
  return {
    order,
    scale,
    width: width / scale,
    height: height / scale,
    cells: placed.map(({ x, low, caption }) => ({ at: { x: x / scale, y: (height - low) / scale }, caption })),
  };
}

/** The largest scale at which the cells fit the room; found by halving, since captions do not grow with it. */
function largest(cells: readonly Cell[], order: CellOrder, room: { width: number; height: number }): number {
  const size = Math.max(...cells.flatMap(({ width, height }) => [width, height]), 1e-9);
  let [fits, most] = [1e-3 / size, Math.max(room.width, room.height) / size];
  for (let i = 0; i < 24; i++) {
    const scale = (fits + most) / 2;
    const block = blockOf(cells, order, scale, room.width);
    if (block.width <= room.width && block.height <= room.height) fits = scale;
    else most = scale;
  }
  return fits;
}

/** Cells in mm of the sheet, y down: `x` is the left of each, `low` its lower edge. */
type Block = { width: number; height: number; cells: { x: number; low: number; caption: string[] }[] };

function blockOf(cells: readonly Cell[], order: CellOrder, scale: number, room: number): Block {
  const level = order === 'row' || order === 'row over';
  const single = ({ width, height, caption }: Cell, wide: boolean): Block => {
    const [across, tall] = [width * scale, height * scale];
    const lines = wrap(caption, TYPE, wide ? room : Math.max(across, CAPTION));
    const over = lines.length === 0 ? 0 : lines.length * LINE + NEAR;
    const widest = Math.max(across, ...lines.map((line) => letteringWidth(line, TYPE)));
    return { width: widest, height: over + tall, cells: [{ x: 0, low: over + tall, caption: lines }] };
  };
  if (order === 'row' || order === 'column')
    return together(
      cells.map((cell) => single(cell, !level)),
      level,
    );
  const last = cells.at(-1)!;
  const before = together(
    cells.slice(0, -1).map((cell) => single(cell, false)),
    level,
  );
  return together([before, single(last, level)], !level);
}

/** Blocks in a row, their lower edges level, or in a column. */
function together(blocks: readonly Block[], level: boolean): Block {
  const tallest = Math.max(...blocks.map(({ height }) => height));
  let [width, height] = [0, 0];
  const cells = blocks.flatMap((block, i) => {
    const gap = i === 0 ? 0 : GAP;
    const [x, y] = level ? [width + gap, tallest - block.height] : [0, height + gap];
    [width, height] = level ? [x + block.width, tallest] : [Math.max(width, block.width), y + block.height];
    return block.cells.map((cell) => ({ ...cell, x: cell.x + x, low: cell.low + y }));
  });
  return { width, height, cells };
}
