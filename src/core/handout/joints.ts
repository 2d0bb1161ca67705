import { letteringWidth } from '../drawing/lettering.ts';
import { closed, polyline } from '../drawing/path.ts';
import { around } from './room.ts';
import { cropped, line } from './place.ts';
import { OVERLAP, tileName } from './tiles.ts';
import type { Command, Path } from '../drawing/path.ts';
import type { Shape } from '../drawing/scene.ts';
import type { Box } from '../geometry/readings.ts';
import type { Point } from '../geometry/point.ts';
import type { Drawn } from './nested.ts';
import type { Tile, Tiling } from './tiles.ts';
import type { Type } from './type.ts';

/**
 * Where two sheets are joined, in the piece's own mm. The second is cut along the line, at its left or upper side, and
 * laid on the same line of the first, so that the diamonds on it close.
 */
export type Joint = {
  readonly first: Tile;
  readonly second: Tile;
  /** The line runs up and down: the sheets lie side by side. */
  readonly upright: boolean;
  readonly from: Point;
  readonly to: Point;
  /** The middles of the two diamonds. */
  readonly marks: readonly Point[];
  /** The names of both sheets. */
  readonly label: string;
};

/** Half the height and width of a diamond, in mm. */
export const MARK = 3;

/** The joints of a piece's sheets. The diamonds keep clear of the piece's own lines where they can. */
export function jointsOf(piece: Drawn, { tiles }: Tiling, type: Type): Joint[] {
  const own = linesOf(piece);
  return tiles.flatMap((first): Joint[] => {
    const at = (rows: number, columns: number) =>
      tiles.find((other) => other.row === first.row + rows && other.column === first.column + columns);
    return [
      [at(0, 1), true],
      [at(1, 0), false],
    ].flatMap(([other, upright]) => (other ? [joint(first, other as Tile, upright as boolean, own, type)] : []));
  });
}

function joint(first: Tile, second: Tile, upright: boolean, own: readonly Path[], type: Type): Joint {
  const { x, y, width, height } = second.box;
  const from = upright ? { x, y } : { x, y: y + height };
  const to = upright ? { x, y: y + height } : { x: x + width, y: y + height };
  const label = `${tileName(first)}–${tileName(second)}`;
  const half = letteringWidth(label, type.small) / 2 + 1;
  const reach = upright
    ? { across: MARK + 2 + 2 * half, along: Math.max(MARK, type.small) }
    : { across: MARK + 1.5 + 1.2 * type.small, along: Math.max(MARK, half) };
  const size = upright ? height : width;
  const place = (share: number): Point =>
    upright ? { x, y: y + share * size } : { x: x + share * size, y: y + height };
  const clear = (share: number): boolean => {
    const middle = place(share);
    const [w, h] = upright ? [reach.across, reach.along] : [reach.along, reach.across];
    const box = { x: middle.x - w, y: middle.y - h, width: 2 * w, height: 2 * h };
    return own.every((path) => cropped(path, box).length === 0);
  };
  // Clear of the rims, and of the corner where four sheets meet.
  const least = (OVERLAP + reach.along + 2) / size;
  const marks = [0.25, 0.75].map((wanted) => {
    const shares = Array.from({ length: 101 }, (_, i) => i / 100).filter(
      (share) => share >= least && share <= 1 - least && Math.abs(share - wanted) < 0.21,
    );
    shares.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
    return place(shares.find(clear) ?? wanted);
  });
  return { first, second, upright, from, to, marks, label };
}

/** The lines that diamonds and names keep clear of. */
export function linesOf(piece: Drawn): Path[] {
  const own = (point: Point) => point;
  const folds = piece.folds.map(({ from, to }) => polyline(from, to));
  const nest = (piece.nest ?? []).map(({ cutOutline }) => closed(cutOutline, own));
  return [closed(piece.cutOutline, own), closed(piece.outline, own), ...nest, ...folds];
}

/**
 * The joints of one sheet as shapes, and the boxes they take.
 *
 * @param onto from the piece's mm to the sheet's
 */
export function drawJoints(
  all: readonly Joint[],
  one: Tile,
  onto: (point: Point) => Point,
  type: Type,
  prefix: string,
): { shapes: Shape[]; taken: Box[] } {
  const shapes: Shape[] = [];
  const taken: Box[] = [];
  for (const { first, second, upright, from, to, marks, label } of all) {
    if (one !== first && one !== second) continue;
    // The first sheet shows the whole diamond; of the second, what lies beyond the line is cut away.
    const whole = one === first;
    const name = `${prefix} join ${label}`;
    const path: Command[] = polyline(onto(from), onto(to));
    const texts = marks.map((mark, i) => {
      const { x, y } = onto(mark);
      const [left, right] = [
        { x: x - MARK, y },
        { x: x + MARK, y },
      ];
      const [top, low] = [
        { x, y: y - MARK },
        { x, y: y + MARK },
      ];
      if (whole) path.push(...polyline(left, top, right, low), ['Z']);
      else path.push(...(upright ? polyline(top, right, low) : polyline(left, low, right)));
      taken.push({ x: x - MARK, y: y - MARK, width: 2 * MARK, height: 2 * MARK });
      const away = MARK + 1;
      if (upright) {
        const anchor = whole ? 'end' : 'start';
        return line(`${name} ${i + 1}`, label, x + (whole ? -away : away), y + 0.36 * type.small, type.small, {
          anchor,
        });
      }
      const baseline = whole ? y - away : y + away + 0.76 * type.small;
      return line(`${name} ${i + 1}`, label, x, baseline, type.small, { anchor: 'middle' });
    });
    shapes.push({ kind: 'path', name, role: 'dimension', path }, ...texts);
    taken.push(around([onto(from), onto(to)].map((point) => ({ ...point, width: 0, height: 0 }))));
    for (const { x, y } of texts) {
      const half = letteringWidth(label, type.small);
      taken.push({ x: x - half, y: y - type.small, width: 2 * half, height: 1.3 * type.small });
    }
  }
  return { shapes, taken };
}
