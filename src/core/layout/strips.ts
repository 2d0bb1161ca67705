import { FAR, kindOf, UP, type PieceOrder } from './orders.ts';
import type { RectangleKind, Layer } from './box.ts';

/**
 * Lays rectangles so that straight cuts from edge to edge part them. Into a part of the cloth goes the best fitting
 * rectangle, into its lower left corner; one cut beside it runs on from edge to edge, the other ends at it. The two
 * parts that remain are filled the same way, the smaller one first. The order says which way the first cut runs, and
 * whether it leaves room for another rectangle.
 *
 * `plain`: only strips across the cloth, each cut into pieces side by side; quicker to cut, and seldom as short.
 */
export function byStraightCuts(kinds: readonly RectangleKind[], plain = false): Layer {
  const width = Float64Array.from(kinds, (kind) => kind.width);
  const height = Float64Array.from(kinds, (kind) => kind.height);
  const counts = Int32Array.from(kinds, (kind) => kind.count);
  const turns = Uint8Array.from(kinds, (kind) => (kind.turns && kind.width !== kind.height ? 1 : 0));
  const total = counts.reduce((sum, count) => sum + count, 0);
  const left = new Int32Array(kinds.length);
  const shortest = Math.min(...kinds.map((kind) => Math.min(kind.width, kind.height)));
  const [laidKind, laidX, laidY, laidTurned] = [
    new Int32Array(total),
    new Float64Array(total),
    new Float64Array(total),
    new Uint8Array(total),
  ];
  let laidCount = 0;
  let wasted = 0;
  let most = Infinity;
  let top = 0;
  let order: PieceOrder = new Int32Array(0);
  let first = 0;

  function fill(x: number, y: number, w: number, h: number, strip = false): void {
    if (wasted > most) return;
    let best = -1;
    let bestTurned = 0;
    let bestScore = -1;
    if (laidCount < total && w >= shortest && h >= shortest) {
      while (left[kindOf(order[first]!)] === 0) first++;
      scan: for (let i = first; i < order.length; i++) {
        const entry = order[i]!;
        const k = kindOf(entry);
        if (left[k] === 0) continue;
        for (let way = 0; way <= turns[k]!; way++) {
          const turned = turns[k]! & (way ^ entry);
          const across = turned ? height[k]! : width[k]!;
          const up = turned ? width[k]! : height[k]!;
          if (across > w || up > h) continue;
          const score = (across === w ? 2 : w - across < shortest ? 0 : 1) + (up === h ? 2 : h - up < shortest ? 0 : 1);
          if (score > bestScore) {
            best = i;
            bestTurned = turned;
            bestScore = score;
            if (score === 4) break scan;
          }
        }
      }
    }
    if (best < 0) {
      if (h < Infinity) wasted += w * h;
      return;
    }
    const entry = order[best]!;
    const k = kindOf(entry);
    const across = bestTurned ? height[k]! : width[k]!;
    const up = bestTurned ? width[k]! : height[k]!;
    laidKind[laidCount] = k;
    laidX[laidCount] = x;
    laidY[laidCount] = y;
    laidTurned[laidCount] = bestTurned;
    laidCount++;
    left[k]!--;
    if (y + up > top) top = y + up;
    const [restW, restH] = [w - across, h - up];
    if (restW === 0 && restH === 0) return;
    if (plain && strip) {
      wasted += across * restH;
      if (restW > 0) fill(x + across, y, restW, h, true);
    } else if (plain) {
      if (restW > 0) fill(x + across, y, restW, up, true);
      if (restH > 0) fill(x, y + up, w, restH);
    } else if (restW === 0) fill(x, y + up, w, restH);
    else if (restH === 0) fill(x + across, y, restW, h);
    else if (h < Infinity && (entry & UP) !== 0) {
      // The first cut runs up the cloth.
      const more = entry & FAR ? another(best, restW, h, true) : 0;
      if (more > 0) {
        smallerFirst(x + across, y, more, up, x, y + up, across + more, restH);
        if (restW > more) fill(x + across + more, y, restW - more, h);
      } else smallerFirst(x, y + up, across, restH, x + across, y, restW, h);
    } else {
      const more = entry & FAR ? another(best, w, restH, false) : 0;
      if (more > 0) {
        smallerFirst(x, y + up, across, more, x + across, y, restW, up + more);
        if (restH > more) fill(x, y + up + more, w, restH - more);
      } else smallerFirst(x + across, y, restW, up, x, y + up, w, restH);
    }
  }

  function smallerFirst(
    x: number,
    y: number,
    w: number,
    h: number,
    x2: number,
    y2: number,
    w2: number,
    h2: number,
  ): void {
    if (w * h <= w2 * h2) {
      fill(x, y, w, h);
      fill(x2, y2, w2, h2);
    } else {
      fill(x2, y2, w2, h2);
      fill(x, y, w, h);
    }
  }

  /** The width or height of the next rectangle in order after `best` that goes into w x h; 0 if none does. */
  function another(best: number, w: number, h: number, across: boolean): number {
    for (let i = best + 1; i < order.length; i++) {
      const entry = order[i]!;
      const k = kindOf(entry);
      if (left[k] === 0) continue;
      const turned = turns[k]! & entry;
      const [itsWidth, itsHeight] = turned ? [height[k]!, width[k]!] : [width[k]!, height[k]!];
      if (itsWidth <= w && itsHeight <= h) return across ? itsWidth : itsHeight;
    }
    return 0;
  }

  function lay(byOrder: PieceOrder, boxWidth: number, cap: number, limit: number): number {
    left.set(counts);
    order = byOrder;
    [laidCount, wasted, top, first] = [0, 0, 0, 0];
    most = limit;
    fill(0, 0, boxWidth, cap);
    if (laidCount === total) return 0;
    return cap === Infinity ? Infinity : wasted;
  }

  return {
    lay,
    height: () => top,
    laid: () =>
      Array.from({ length: laidCount }, (_, i) => ({
        kind: laidKind[i]!,
        x: laidX[i]!,
        y: laidY[i]!,
        turned: laidTurned[i] === 1,
      })),
  };
}
