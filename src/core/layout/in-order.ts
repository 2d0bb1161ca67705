import { liftOf, type RectangleKind, type LaidRectangle, type Layer } from './box.ts';
import { kindOf, TURNED, type PieceOrder } from './orders.ts';

/**
 * Lays rectangles strictly in the given order, each where it comes to lie lowest on the skyline, and of such places
 * the leftmost. It may leave a gap that something would have fitted in, which the best fit never does; on few
 * rectangles that is where the last per cent lies.
 */
export function inOrder(kinds: readonly RectangleKind[]): Layer {
  const total = kinds.reduce((sum, kind) => sum + kind.count, 0);
  const counts = Int32Array.from(kinds, (kind) => kind.count);
  const left = new Int32Array(kinds.length);
  const x = new Float64Array(2 * total + 3);
  const y = new Float64Array(2 * total + 3);
  const laid: LaidRectangle[] = [];
  let top = 0;

  function lay(order: PieceOrder, boxWidth: number, cap: number, limit: number): number {
    left.set(counts);
    laid.length = 0;
    top = 0;
    // Part i reaches from x[i] to x[i + 1].
    let parts = 1;
    x[0] = 0;
    x[1] = boxWidth;
    y[0] = 0;
    let laidArea = 0;
    let wasted = 0;
    for (let round = 0; laid.length < total; round++) {
      const before = laid.length;
      for (let i = 0; i < order.length; i++) {
        const k = kindOf(order[i]!);
        if (left[k] === 0) continue;
        const kind = kinds[k]!;
        const turned = kind.turns && (order[i]! & TURNED) !== 0;
        const across = turned ? kind.height : kind.width;
        const up = turned ? kind.width : kind.height;
        let part = -1;
        let floor = Infinity;
        const starts = kind.atFold ? 1 : parts;
        for (let p = 0; p < starts && x[p]! + across <= boxWidth; p++) {
          let rest = y[p]!;
          for (let q = p + 1; q < parts && x[q]! < x[p]! + across; q++) if (y[q]! > rest) rest = y[q]!;
          if (kind.repeat) rest += liftOf(kind, rest);
          if (rest < floor) {
            floor = rest;
            part = p;
          }
        }
        if (part < 0 || floor + up > cap) continue;
        const at = x[part]!;
        const end = at + across;
        // The parts below it go; the last may go on to its right.
        let last = part;
        while (last + 1 < parts && x[last + 1]! < end) last++;
        for (let q = part; q <= last; q++) wasted += (Math.min(x[q + 1]!, end) - x[q]!) * (floor - y[q]!);
        const goesOn = x[last + 1]! > end;
        const lastY = y[last]!;
        const grow = part + 1 + (goesOn ? 1 : 0) - (last + 1);
        if (grow > 0) for (let q = parts; q > last; q--) [x[q + grow], y[q + grow]] = [x[q]!, y[q]!];
        else if (grow < 0) for (let q = last + 1; q <= parts; q++) [x[q + grow], y[q + grow]] = [x[q]!, y[q]!];
        parts += grow;
        y[part] = floor + up;
        if (goesOn) {
          x[part + 1] = end;
          y[part + 1] = lastY;
        }
        laid.push({ kind: k, x: at, y: floor, turned });
        left[k]!--;
        laidArea += across * up;
        if (floor + up > top) top = floor + up;
        if (wasted > limit) return wasted;
      }
      // A longer list of alike rectangles goes round again; when nothing more fits, the rest is left over.
      if (laid.length === before) break;
    }
    if (laid.length === total) return 0;
    return cap === Infinity ? Infinity : boxWidth * cap - laidArea;
  }

  return { lay, height: () => top, laid: () => laid.slice() };
}
