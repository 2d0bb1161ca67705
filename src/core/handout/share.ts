import { meet } from './place.ts';
import type { Box } from '../geometry/readings.ts';
import type { Size } from '../project/pattern.ts';

/** Something with a size that may lie as it is or turned a quarter. */
export type Parcel<T> = { readonly what: T; readonly size: Size; readonly turnedSize: Size };

/** Where a parcel lies on its sheet, from the upper left corner of the room. */
export type Lot<T> = { readonly what: T; readonly turned: boolean; readonly box: Box };

/** Between two pieces on one sheet, in mm: scissors pass there. */
const APART = 5;

/**
 * Several small pieces to a sheet. Each goes where it wastes least, on the first sheet that has room; several orders
 * are tried, and the one that takes the fewest sheets is kept. Every parcel must fit a sheet by itself.
 */
export function shareSheets<T>(parcels: readonly Parcel<T>[], sheet: Size): Lot<T>[][] {
  const orders: ((a: Size, b: Size) => number)[] = [
    (a, b) => b.width * b.height - a.width * a.height,
    (a, b) => b.height - a.height,
    (a, b) => b.width - a.width,
    (a, b) => Math.max(b.width, b.height) - Math.max(a.width, a.height),
  ];
  let best: Lot<T>[][] | undefined;
  // Pieces that lie as they are worn are read more easily: they are turned only where that saves a sheet.
  for (const mayTurn of [false, true]) {
    for (const order of orders) {
      const inOrder = [...parcels].sort((a, b) => order(a.size, b.size));
      const sheets = packed(inOrder, sheet, mayTurn);
      if (!best || sheets.length < best.length) best = sheets;
    }
  }
  return best ?? [];
}

function packed<T>(parcels: readonly Parcel<T>[], sheet: Size, mayTurn: boolean): Lot<T>[][] {
  const sheets: { lots: Lot<T>[]; free: Box[] }[] = [];
  for (const parcel of parcels) {
    const there = sheets.some((sheet) => put(parcel, sheet, mayTurn));
    if (there) continue;
    // The blank beside the last piece of a row may reach over the sheet's rim.
    const fresh = { lots: [], free: [{ x: 0, y: 0, width: sheet.width + APART, height: sheet.height + APART }] };
    if (!put(parcel, fresh, mayTurn)) put(parcel, fresh, true);
    sheets.push(fresh);
  }
  return sheets.map(({ lots }) => lots);
}

/** Puts a parcel into the free place that it fills best. */
function put<T>(
  { what, size, turnedSize }: Parcel<T>,
  sheet: { lots: Lot<T>[]; free: Box[] },
  mayTurn: boolean,
): boolean {
  let best: { turned: boolean; box: Box; spare: number } | undefined;
  for (const turned of mayTurn ? [false, true] : [false]) {
    const { width, height } = turned ? turnedSize : size;
    for (const free of sheet.free) {
      const [across, down] = [free.width - width - APART, free.height - height - APART];
      if (Math.min(across, down) < -1e-9) continue;
      const spare = Math.min(across, down);
      const box = { x: free.x, y: free.y, width, height };
      if (!best || spare < best.spare - 1e-9) best = { turned, box, spare };
    }
  }
  if (!best) return false;
  sheet.lots.push({ what, turned: best.turned, box: best.box });
  const taken = { ...best.box, width: best.box.width + APART, height: best.box.height + APART };
  const free = sheet.free.flatMap((box) => (meet(box, taken) ? around(box, taken) : [box]));
  sheet.free = free.filter(
    (box, i) => !free.some((other, k) => k !== i && holds(other, box) && (k < i || !holds(box, other))),
  );
  return true;
}

/** The largest boxes of a free place that something leaves beside it, above it and below it. */
function around(free: Box, taken: Box): Box[] {
  const [right, low] = [free.x + free.width, free.y + free.height];
  return [
    { ...free, width: taken.x - free.x },
    { ...free, x: taken.x + taken.width, width: right - taken.x - taken.width },
    { ...free, height: taken.y - free.y },
    { ...free, y: taken.y + taken.height, height: low - taken.y - taken.height },
  ].filter(({ width, height }) => width > 1 && height > 1);
}

const holds = (outer: Box, inner: Box): boolean =>
  outer.x <= inner.x &&
  outer.y <= inner.y &&
  outer.x + outer.width >= inner.x + inner.width &&
  outer.y + outer.height >= inner.y + inner.height;
