import { liftOf, type RectangleKind, type Layer } from './box.ts';
import { kindOf, type PieceOrder } from './orders.ts';

/**
 * Lays rectangles one by one, each in the lowest gap of the skyline that those before it make: the best fitting one
 * first, and of those that fit equally the one that comes first in an order. The order is what a search varies.
 *
 * The lowest gap, best fit: Burke, Kendall & Whitwell 2004, Oper. Res. 52(4):655-671. The rules for ties follow Leung,
 * Zhang & Sim 2011, EJOR 215(1):57-69, and Wei et al. 2017, Comput. Oper. Res. 80:113-127: a layout under a cap is
 * judged by the area it wastes.
 */
export function skyline(kinds: readonly RectangleKind[]): Layer {
  const n = kinds.length;
  const width = Float64Array.from(kinds, (kind) => kind.width);
  const height = Float64Array.from(kinds, (kind) => kind.height);
  const counts = Int32Array.from(kinds, (kind) => kind.count);
  const turns = Uint8Array.from(kinds, (kind) => (kind.turns && kind.width !== kind.height ? 1 : 0));
  const atFold = Uint8Array.from(kinds, (kind) => (kind.atFold ? 1 : 0));
  const plain = kinds.every((kind) => !kind.atFold && !kind.repeat);
  const total = counts.reduce((sum, count) => sum + count, 0);

  // Kinds by the least width they can take: the first with something left is the narrowest gap that can be filled.
  const narrowness = (k: number): number => (turns[k] ? Math.min(width[k]!, height[k]!) : width[k]!);
  const byNarrowness = Int32Array.from([...kinds.keys()].sort((a, b) => narrowness(a) - narrowness(b)));
  const narrow = Float64Array.from(byNarrowness, narrowness);

  const left = new Int32Array(n);
  const x = new Float64Array(total + 2);
  const y = new Float64Array(total + 2);
  const w = new Float64Array(total + 2);
  const [laidKind, laidX, laidY, laidTurned] = [
    new Int32Array(total),
    new Float64Array(total),
    new Float64Array(total),
    new Uint8Array(total),
  ];
  let laidCount = 0;
  let top = 0;

  function lay(order: PieceOrder, boxWidth: number, cap: number, limit: number): number {
    left.set(counts);
    let parts = 1;
    x[0] = 0;
    y[0] = 0;
    w[0] = boxWidth;
    laidCount = 0;
    top = 0;
    let wasted = 0;
    let laidArea = 0;
    let narrowest = 0;
    // Entries whose kind is used up are dropped from the front of the scan.
    let first = 0;
    while (laidCount < total) {
      let b = 0;
      for (let i = 1; i < parts; i++) if (y[i]! < y[b]!) b = i;
      const floor = y[b]!;
      const gap = w[b]!;
      if (floor >= cap) break;
      const leftWall = (b > 0 ? y[b - 1]! : cap) - floor;
      const rightWall = (b < parts - 1 ? y[b + 1]! : cap) - floor;
      const room = cap - floor;
      while (left[byNarrowness[narrowest]!] === 0) narrowest++;
      const least = narrow[narrowest]!;

      let best = -1;
      let bestScore = -1;
      let bestTurned = 0;
      if (gap >= least) {
        while (left[kindOf(order[first]!)] === 0) first++;
        scan: for (let i = first; i < order.length; i++) {
          const k = kindOf(order[i]!);
          if (left[k] === 0) continue;
          if (!plain && atFold[k] && x[b] !== 0) continue;
          for (let way = 0; way <= turns[k]!; way++) {
            const turned = turns[k]! & (way ^ order[i]!);
            const across = turned ? height[k]! : width[k]!;
            const up = turned ? width[k]! : height[k]!;
            if (across > gap || up > room) continue;
            if (!plain && kinds[k]!.repeat && lift(k, floor) + up > room) continue;
            const rest = gap - across;
            const flush = up === leftWall || up === rightWall;
            let score: number;
            if (rest === 0) score = flush ? (leftWall === rightWall ? 6 : 5) : up < leftWall && up < rightWall ? 3 : 4;
            else if (rest < least) score = 0;
            else score = flush ? 2 : 1;
            if (score > bestScore) {
              best = k;
              bestScore = score;
              bestTurned = turned;
              if (score >= 5) break scan;
            }
          }
        }
      }

      if (best < 0) {
        // Nothing fits: the gap is filled up with waste to its lower wall.
        const raise = Math.min(leftWall, rightWall);
        wasted += gap * raise;
        if (wasted > limit) return wasted;
        y[b] = floor + raise;
        parts = merge(b, parts);
        continue;
      }

      const across = bestTurned ? height[best]! : width[best]!;
      const up = bestTurned ? width[best]! : height[best]!;
      const raised = plain ? 0 : lift(best, floor);
      const rest = gap - across;
      // Beside the wall it is flush with, else beside the higher one.
      const toRight =
        rest > 0 && !atFold[best] && (up === rightWall ? up !== leftWall : up !== leftWall && rightWall > leftWall);
      const at = toRight ? x[b]! + rest : x[b]!;
      laidKind[laidCount] = best;
      laidX[laidCount] = at;
      laidY[laidCount] = floor + raised;
      laidTurned[laidCount] = bestTurned;
      laidCount++;
      left[best]!--;
      laidArea += across * up;
      wasted += across * raised;
      if (wasted > limit) return wasted;
      const newTop = floor + raised + up;
      if (newTop > top) top = newTop;
      if (rest === 0) {
        y[b] = newTop;
        parts = merge(b, parts);
      } else {
        const slot = toRight ? b + 1 : b;
        for (let i = parts; i > slot; i--) {
          x[i] = x[i - 1]!;
          y[i] = y[i - 1]!;
          w[i] = w[i - 1]!;
        }
        parts++;
        x[slot] = at;
        y[slot] = newTop;
        w[slot] = across;
        const other = toRight ? b : b + 1;
        x[other] = toRight ? x[b]! : at + across;
        y[other] = floor;
        w[other] = rest;
        parts = merge(slot, parts);
      }
    }
    if (laidCount === total) return 0;
    return cap === Infinity ? Infinity : boxWidth * cap - laidArea;
  }

  const lift = (k: number, floor: number): number => liftOf(kinds[k]!, floor);

  /** Joins the part at `b` with neighbours of the same height. Gives the new number of parts. */
  function merge(b: number, parts: number): number {
    if (b + 1 < parts && y[b] === y[b + 1]) {
      w[b]! += w[b + 1]!;
      parts = drop(b + 1, parts);
    }
    if (b > 0 && y[b] === y[b - 1]) {
      w[b - 1]! += w[b]!;
      parts = drop(b, parts);
    }
    return parts;
  }

  function drop(b: number, parts: number): number {
    for (let i = b + 1; i < parts; i++) {
      x[i - 1] = x[i]!;
      y[i - 1] = y[i]!;
      w[i - 1] = w[i]!;
    }
    return parts - 1;
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
