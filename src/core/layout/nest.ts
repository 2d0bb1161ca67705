import { area } from '../geometry/index.ts';
import { EDGE, wayOut } from './no-fit-polygon.ts';
import { choicesOf, pairsOf, type LayoutShape } from './shapes.ts';
import { riseOf, type PlacedPiece, type BoxTask } from './boxes.ts';
import type { Random } from './random.ts';

/** How deep outlines may overlap, in mm, and still count as apart: what is left by rounding. */
const TOUCHING = 2e-4;

/** So many places are tried for a piece that overlaps: near where it lies, anywhere, and against other pieces. */
const NEAR_BY = 8;
const ANYWHERE = 10;
const AGAINST = 14;
/** Of those the best are followed up. */
const FOLLOWED = 2;

/** Steps are tried across, along and aslant, either way. */
const ways: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [0.7, 0.7],
  [0.7, -0.7],
];

/** Where all pieces lie. */
export type Places = { x: Float64Array; y: Float64Array; as: Int32Array };

/** Pieces of any outline on one cloth, which may overlap for a while. */
export type Nest = ReturnType<typeof nestOf>;

/** The pieces of a task, not yet laid. */
export function nestOf(task: BoxTask) {
  const { shapes, choices } = choicesOf(task);
  const n = choices.length;
  const pair = pairsOf(shapes);
  const areas = choices.map((own) => area(shapes[own[0]!]!.prepared.outline));
  const W = Float64Array.from(shapes, (shape) => shape.width);
  const H = Float64Array.from(shapes, (shape) => shape.height);
  // Boxes this far apart never meet: the rings reach over them by half the gap and a chord.
  const reach = task.gap + 0.1;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const as = Int32Array.from(choices, (own) => own[0]!);
  const laid: number[] = [];
  /** An overlap weighs more the larger both pieces are: there is less room to go to. */
  const least = Float64Array.from(
    { length: n * n },
    (_, key) => (areas[Math.floor(key / n)]! * areas[key % n]!) ** 0.25,
  );
  const weight = least.slice();

  const { repeat } = task;
  /** The nearest height at which a piece that must match lies right on the repeat; never below the edge. */
  const onRepeat = ({ prepared }: LayoutShape, at: number): number => {
    if (repeat === undefined || !prepared.piece.match) return at;
    const rise = riseOf(prepared, task.leads, repeat);
    return Math.max(0, Math.round((at - rise) / repeat)) * repeat + rise;
  };

  // The way out of the overlap asked for last.
  const out = new Float64Array(2);
  /** How deep piece `j` and a shape at a place overlap; leaves in `out` the way out of it. */
  const depthOf = (s: number, px: number, py: number, j: number): number => {
    const deep = wayOut(pair(as[j]!, s), px - x[j]!, py - y[j]!, out);
    return deep > TOUCHING ? deep : 0;
  };

  // The ways out of all overlaps of the piece that was asked about last, and a copy to follow them.
  const outs = new Float64Array(2 * n + 2);
  let outCount = 0;
  const ownOuts = new Float64Array(2 * n + 2);

  /** How much a piece overlaps the others where it would lie, each overlap by its weight. Ends early from `most` on. */
  function overlap(i: number, s: number, px: number, py: number, most: number): number {
    const right = px + W[s]! + reach;
    const top = py + H[s]! + reach;
    const left = px - reach;
    const low = py - reach;
    outCount = 0;
    let sum = 0;
    for (let j = 0; j < n; j++) {
      const other = as[j]!;
      if (x[j]! >= right || y[j]! >= top || x[j]! + W[other]! <= left || y[j]! + H[other]! <= low || j === i) continue;
      const deep = depthOf(s, px, py, j);
      if (deep > 0) {
        sum += weight[i * n + j]! * deep;
        if (sum >= most) return sum;
        outs[2 * outCount] = out[0]!;
        outs[2 * outCount + 1] = out[1]!;
        outCount++;
      }
    }
    return sum;
  }

  // The place followed up: kept apart from x and y until it is known to be the best.
  const spot = { s: 0, x: 0, y: 0, sum: 0 };

  /** Sets the followed place to a better one if it is, and tells. */
  function better(i: number, px: number, py: number, end: number): boolean {
    const shape = shapes[spot.s]!;
    const nx = shape.prepared.atFold ? 0 : clamp(px, 0, task.width - shape.width);
    const ny = onRepeat(shape, clamp(py, 0, Math.max(0, end - shape.height)));
    if ((nx === spot.x && ny === spot.y) || ny > end - shape.height + 1e-9) return false;
    const sum = overlap(i, spot.s, nx, ny, spot.sum);
    if (sum >= spot.sum) return false;
    spot.x = nx;
    spot.y = ny;
    spot.sum = sum;
    return true;
  }

  /** Follows the place downhill: out of single overlaps, and by steps that shrink. */
  function follow(i: number, end: number, finest: number, source: Random): void {
    const shape = shapes[spot.s]!;
    let step = Math.min(shape.width, shape.height) * 0.1;
    while (spot.sum > 0 && step > finest) {
      // The ways out of this place; a limit that is not reached leaves all of them.
      const before = overlap(i, spot.s, spot.x, spot.y, Infinity);
      ownOuts.set(outs.subarray(0, 2 * outCount));
      const many = 2 * outCount;
      let moved = false;
      for (let k = 0; k < many && !moved; k += 2)
        moved = better(i, spot.x + ownOuts[k]!, spot.y + ownOuts[k + 1]!, end);
      // A way out that gains little is left to the steps, which come to an end.
      if (moved && spot.sum < 0.9 * before) continue;
      moved = false;
      for (let d = 0; d < ways.length; d++) {
        const sign = source.below(2) === 0 ? 1 : -1;
        const [ux, uy] = ways[d]!;
        if (
          better(i, spot.x + sign * step * ux, spot.y + sign * step * uy, end) ||
          better(i, spot.x - sign * step * ux, spot.y - sign * step * uy, end)
        )
          moved = true;
      }
      if (!moved) step *= 0.4;
    }
  }

  const tops = Array.from({ length: FOLLOWED }, () => ({ s: 0, x: 0, y: 0, sum: Infinity }));

  /** Moves a piece to the best place that tries and shrinking steps find. */
  function move(i: number, end: number, source: Random): void {
    for (const top of tops) top.sum = Infinity;
    const consider = (s: number, px: number, py: number): void => {
      const shape = shapes[s]!;
      const high = end - shape.height;
      if (high < 0) return;
      const nx = shape.prepared.atFold ? 0 : clamp(px, 0, task.width - shape.width);
      const ny = onRepeat(shape, clamp(py, 0, high));
      if (ny > high + 1e-9) return;
      const worst = tops[FOLLOWED - 1]!;
      const sum = overlap(i, s, nx, ny, worst.sum);
      if (sum >= worst.sum) return;
      worst.s = s;
      worst.x = nx;
      worst.y = ny;
      worst.sum = sum;
      tops.sort((p, q) => p.sum - q.sum);
    };
    const own = choices[i]!;
    consider(as[i]!, x[i]!, y[i]!);
    for (let k = 0; k < NEAR_BY; k++) {
      const s = own[source.below(own.length)]!;
      consider(s, x[i]! + (source.share() - 0.5) * W[s]! * 0.5, y[i]! + (source.share() - 0.5) * H[s]! * 0.5);
    }
    for (let k = 0; k < ANYWHERE; k++) {
      const s = own[source.below(own.length)]!;
      consider(s, source.share() * (task.width - W[s]!), source.share() * (end - H[s]!));
    }
    for (let k = 0; k < AGAINST && n > 1; k++) {
      const s = own[source.below(own.length)]!;
      const j = source.below(n);
      if (j === i) continue;
      const { edges } = pair(as[j]!, s);
      const e = EDGE * source.below(edges.length / EDGE);
      consider(s, x[j]! + edges[e]!, y[j]! + edges[e + 1]!);
    }
    const coarse = 0.01 * Math.min(W[own[0]!]!, H[own[0]!]!);
    let best = tops[0]!;
    for (const top of tops) {
      if (top.sum === Infinity) continue;
      Object.assign(spot, top);
      follow(i, end, coarse, source);
      Object.assign(top, spot);
      if (top.sum < best.sum) best = top;
      if (best.sum === 0) break;
    }
    Object.assign(spot, best);
    if (spot.sum > 0) follow(i, end, 0.01, source);
    as[i] = spot.s;
    x[i] = spot.x;
    y[i] = spot.y;
  }

  // Of the overlaps looked at last: which pairs, and how deep each.
  const pairs: number[] = [];
  const deeps: number[] = [];

  /** Looks for all overlaps; gives the sum of how deep they are. */
  function look(): number {
    pairs.length = 0;
    deeps.length = 0;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const [left, low] = [x[i]! - reach, y[i]! - reach];
      const [right, top] = [x[i]! + W[as[i]!]! + reach, y[i]! + H[as[i]!]! + reach];
      for (let j = i + 1; j < n; j++) {
        const o = as[j]!;
        if (x[j]! >= right || y[j]! >= top || x[j]! + W[o]! <= left || y[j]! + H[o]! <= low) continue;
        const deep = depthOf(o, x[j]!, y[j]!, i);
        if (deep === 0) continue;
        pairs.push(i * n + j);
        deeps.push(deep);
        sum += deep;
      }
    }
    return sum;
  }

  /** The places for a shape where it touches two others, or one and the edge of the room, from the lowest up. */
  function cornersFor(s: number, end: number): { x: number; y: number }[] {
    const shape = shapes[s]!;
    const [right, high] = [task.width - shape.width, end - shape.height];
    const corners: number[] = [0, 0, right, 0];
    for (const j of laid) {
      const { edges } = pair(as[j]!, s);
      for (let e = 0; e < edges.length; e += EDGE) {
        const [ax, ay] = [edges[e]! + x[j]!, edges[e + 1]! + y[j]!];
        const [bx, by] = [ax + edges[e + 3]!, ay + edges[e + 4]!];
        corners.push(ax, ay);
        // Where the edge of the room cuts the ring.
        for (const wall of [0, right])
          if (ax < wall !== bx < wall) corners.push(wall, ay + ((by - ay) * (wall - ax)) / (bx - ax));
        if (ay < 0 !== by < 0) corners.push(ax + ((bx - ax) * (0 - ay)) / (by - ay), 0);
      }
    }
    const spots: { x: number; y: number }[] = [];
    for (let c = 0; c < corners.length; c += 2) {
      const [px, py] = [shape.prepared.atFold ? 0 : corners[c]!, onRepeat(shape, corners[c + 1]!)];
      if (px >= -1e-9 && px <= right + 1e-9 && py >= -1e-9 && py <= high + 1e-9) spots.push({ x: px, y: py });
    }
    return spots.sort((p, q) => p.y - q.y || p.x - q.x);
  }

  /** Whether a shape at a place overlaps none of those laid. */
  function free(s: number, px: number, py: number): boolean {
    const [right, top] = [px + W[s]! + reach, py + H[s]! + reach];
    // Those laid last are the likeliest to be in the way.
    for (let k = laid.length - 1; k >= 0; k--) {
      const j = laid[k]!;
      const other = as[j]!;
      if (x[j]! >= right || y[j]! >= top || x[j]! + W[other]! <= px - reach || y[j]! + H[other]! <= py - reach)
        continue;
      if (depthOf(s, px, py, j) > 0) return false;
    }
    return true;
  }

  return {
    n,
    areas,
    /** Takes all pieces up. */
    clear: (): void => {
      laid.length = 0;
    },
    /** Lays one more piece below `end`, at the lowest, then leftmost place that a corner of the forbidden moves gives. */
    lay(i: number, end: number): void {
      let found: { s: number; x: number; y: number; high: number } | undefined;
      for (const s of choices[i]!) {
        for (const { x: px, y: py } of cornersFor(s, end)) {
          if (found && py + H[s]! >= found.high) break;
          if (!free(s, px, py)) continue;
          found = { s, x: px, y: py, high: py + H[s]! };
          break;
        }
      }
      if (!found) return;
      as[i] = found.s;
      x[i] = found.x;
      y[i] = found.y;
      laid.push(i);
    },

    /** One round: moves every piece that overlaps, below `end`; overlaps weigh the more the longer they stay. */
    round(end: number, source: Random): void {
      const most = deeps.reduce((a, b) => Math.max(a, b), 0);
      for (let k = 0; k < n * n; k++) weight[k] = Math.max(least[k]!, weight[k]! * 0.95);
      const among = new Set<number>();
      for (const [k, key] of pairs.entries()) {
        const [i, j] = [Math.floor(key / n), key % n];
        const grown = weight[key]! * ((1.2 + 0.8 * (deeps[k]! / most)) / 0.95);
        weight[i * n + j] = grown;
        weight[j * n + i] = grown;
        among.add(i).add(j);
      }
      const order = [...among];
      for (let k = order.length - 1; k > 0; k--) {
        const other = source.below(k + 1);
        [order[k], order[other]] = [order[other]!, order[k]!];
      }
      for (const i of order) if (overlap(i, as[i]!, x[i]!, y[i]!, Infinity) > 0) move(i, end, source);
    },
    look,
    /** All overlaps weigh the same again. */
    forget: (): void => {
      weight.set(least);
    },

    count: () => laid.length,
    orders: (): number[][] => {
      const by = (size: (i: number) => number): number[] =>
        [...choices.keys()].sort((a, b) => size(b) - size(a) || a - b);
      const shape = (i: number): LayoutShape => shapes[choices[i]![0]!]!;
      return [
        by((i) => areas[i]!),
        by((i) => shape(i).height),
        by((i) => shape(i).width),
        by((i) => shape(i).width * shape(i).height),
      ];
    },
    /** How far along the cloth those laid reach. */
    reach: (): number => {
      let high = 0;
      for (const i of laid) high = Math.max(high, y[i]! + H[as[i]!]!);
      return high;
    },
    /** No layout is shorter than the area asks for, or than a piece is at the least. */
    shortest: Math.max(
      areas.reduce((sum, one) => sum + one, 0) / task.width,
      ...choices.map((own) => Math.min(...own.map((s) => H[s]!))),
    ),
    spots: (): PlacedPiece[] =>
      laid.map((i) => {
        const { prepared, angle, mirrored } = shapes[as[i]!]!;
        return { prepared, x: x[i]!, y: y[i]!, angle, mirrored };
      }),
    kept: (): Places => ({ x: x.slice(), y: y.slice(), as: as.slice() }),
    /** Back to places kept before; all pieces are laid there. */
    restore: (places: Places): void => {
      x.set(places.x);
      y.set(places.y);
      as.set(places.as);
      laid.length = 0;
      for (let i = 0; i < n; i++) laid.push(i);
    },
    /** Lets two pieces of different shape change places, larger ones more often. */
    exchange: (source: Random): void => {
      if (n < 2) return;
      const pick = (): number => {
        const [a, b] = [source.below(n), source.below(n)];
        return areas[a]! > areas[b]! ? a : b;
      };
      const [a, b] = [pick(), pick()];
      if (choices[a] === choices[b]) return;
      const [ax, ay, bx, by] = [x[a]!, y[a]!, x[b]!, y[b]!];
      put(a, bx, by);
      put(b, ax, ay);
    },
    /** Brings all below `end`: what sticks out is set down somewhere else. */
    squeeze: (end: number, source: Random): void => {
      for (let i = 0; i < n; i++) {
        // Lying this way it may be too long now.
        if (H[as[i]!]! > end) as[i] = choices[i]!.find((s) => H[s]! <= end) ?? as[i]!;
        const shape = shapes[as[i]!]!;
        const high = Math.max(0, end - shape.height);
        if (y[i]! > high) {
          y[i] = onRepeat(shape, source.below(2) === 0 ? high : source.share() * high);
          while (y[i]! > high && repeat !== undefined) y[i]! -= repeat;
          if (!shape.prepared.atFold && source.below(2) === 0) x[i] = source.share() * (task.width - shape.width);
        }
        if (!shape.prepared.atFold) x[i] = Math.min(x[i]!, task.width - shape.width);
      }
    },
  };

  function put(i: number, px: number, py: number): void {
    const shape = shapes[as[i]!]!;
    if (!shape.prepared.atFold) x[i] = clamp(px, 0, task.width - shape.width);
    y[i] = onRepeat(shape, py);
  }
}

const clamp = (value: number, low: number, high: number): number => (value < low ? low : value > high ? high : value);
