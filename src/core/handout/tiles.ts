import { difference, intersection } from '../geometry/boolean.ts';
import { rectangle } from '../geometry/outline.ts';
import { area, bounds } from '../geometry/readings.ts';
import type { Outline } from '../geometry/outline.ts';
import type { Box } from '../geometry/readings.ts';
import type { Size } from '../project/pattern.ts';

/** How much of a piece neighbouring sheets share, in mm. */
export const OVERLAP = 10;

/** Half the cut line's width, and a little: what of a piece must lie on paper beyond its outline. */
export const RIM = 0.5;

/** One sheet of a piece that is larger than the sheet: what it shows of the piece, in the piece's own mm. */
export type Tile = {
  /** Counted from 0; rows from the top, columns from the left. */
  readonly row: number;
  readonly column: number;
  readonly box: Box;
};

export type Tiling = { readonly rows: number; readonly columns: number; readonly tiles: readonly Tile[] };

/**
 * What a sheet is called: rows are lettered from the top, columns numbered from the left.
 *
 * @example tileName({ row: 1, column: 2 }) // => 'B3'
 */
export function tileName({ row, column }: Pick<Tile, 'row' | 'column'>): string {
  let letters = '';
  for (let rest = row; rest >= 0; rest = Math.floor(rest / 26) - 1) {
    letters = String.fromCharCode(65 + (rest % 26)) + letters;
  }
  return `${letters}${column + 1}`;
}

/** How many sheets in a row a length takes. */
export const sheetsFor = (length: number, sheet: number): number =>
  Math.max(1, Math.ceil((length + 2 * RIM - OVERLAP) / (sheet - OVERLAP) - 1e-9));

/**
 * Lays sheets over a piece so that all of it is covered and no sheet shows only what others show. The grid is shifted
 * to where the fewest sheets are needed; where that makes no difference, the piece lies in the middle.
 */
export function tile(outline: Outline, sheet: Size): Tiling {
  const box = bounds(outline);
  const least = { columns: sheetsFor(box.width, sheet.width), rows: sheetsFor(box.height, sheet.height) };
  const plain = Math.abs(area(outline) - box.width * box.height) < 1e-6 * (1 + box.width * box.height);
  if (plain) return laid(outline, box, sheet, least, 0.5, 0.5, plain);
  let best: Tiling | undefined;
  // One row or column more, shifted, can leave out more sheets at the corners of a slanting piece.
  const shifts = [0.5, 0, 1, 0.25, 0.75];
  const grids = [least, { ...least, columns: least.columns + 1 }, { ...least, rows: least.rows + 1 }];
  for (const grid of least.columns * least.rows > 40 ? [least] : grids) {
    for (const x of shifts) {
      for (const y of shifts) {
        const tiling = laid(outline, box, sheet, grid, x, y, plain);
        if (!best || tiling.tiles.length < best.tiles.length) best = tiling;
      }
    }
  }
  return best!;
}

function laid(
  outline: Outline,
  box: Box,
  sheet: Size,
  { rows, columns }: { rows: number; columns: number },
  shiftX: number,
  shiftY: number,
  plain: boolean,
): Tiling {
  const reach = (count: number, size: number) => count * (size - OVERLAP) + OVERLAP;
  const left = box.x - shiftX * (reach(columns, sheet.width) - box.width - 2 * RIM) - RIM;
  const top = box.y + box.height + shiftY * (reach(rows, sheet.height) - box.height - 2 * RIM) + RIM;
  const all: Tile[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const x = left + column * (sheet.width - OVERLAP);
      const y = top - row * (sheet.height - OVERLAP) - sheet.height;
      all.push({ row, column, box: { x, y, width: sheet.width, height: sheet.height } });
    }
  }
  if (plain || all.length === 1) return { rows, columns, tiles: all };
  const kept = needed(outline, all);
  // A row or column that lost all its sheets is not counted; letters and numbers stay without a gap.
  const [usedRows, usedColumns] = [kept.map(({ row }) => row), kept.map(({ column }) => column)].map((used) =>
    [...new Set(used)].sort((a, b) => a - b),
  );
  return {
    rows: usedRows!.length,
    columns: usedColumns!.length,
    tiles: kept.map((one) => ({
      ...one,
      row: usedRows!.indexOf(one.row),
      column: usedColumns!.indexOf(one.column),
    })),
  };
}

/** The sheets that show something of the piece which no other does. */
function needed(outline: Outline, all: readonly Tile[]): Tile[] {
  const frame = ({ box }: Tile) => rectangle(box.width, box.height, { x: box.x, y: box.y });
  const shown = all
    .map((one) => ({ one, part: intersection([outline], [frame(one)]) }))
    .filter(({ part }) => part.some((ring) => area(ring) > 1e-3));
  let kept = shown;
  // The sheets with the least on them are left out first.
  const weight = ({ part }: (typeof shown)[number]) => part.reduce((sum, ring) => sum + area(ring), 0);
  for (const candidate of [...shown].sort((a, b) => weight(a) - weight(b))) {
    const others = kept.filter((other) => other !== candidate);
    const near = others.filter(
      ({ one }) => Math.abs(one.row - candidate.one.row) <= 1 && Math.abs(one.column - candidate.one.column) <= 1,
    );
    if (near.length === 0) continue;
    const left = difference(
      candidate.part,
      near.map(({ one }) => frame(one)),
    );
    if (!left.some((ring) => area(ring) > 1e-3)) kept = others;
  }
  return kept.map(({ one }) => one);
}
