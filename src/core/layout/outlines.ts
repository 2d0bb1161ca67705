import { addAllowance, area, bounds, offset, reflect, rotate, sample, translate } from '../geometry/index.ts';
import { depth, forbiddenMoves, type Forbidden } from './apart.ts';
import { random } from './random.ts';
import type { Outline, Point } from '../geometry/index.ts';
import type { Laying, Spot, Task } from './boxes.ts';
import type { Ready } from './ready.ts';

/**
 * Lays outlines of any shape. A first layout takes one after the other, each to the lowest place where it fits. Then
 * the cloth is made a little shorter again and again: pieces that now overlap are moved one by one to where they
 * overlap least, and overlaps that stay come to weigh more, until all lie apart.
 *
 * Overlap minimisation with growing weights: Egeblad, Nielsen & Odgaard 2007, EJOR 183(3):1249-1266; moving by samples
 * and shrinking steps: Gardeyn, Vanden Berghe & Wauters 2025, arXiv:2509.13329.
 */
export function* layOutlines(task: Task, known: Laying | undefined): Generator<Laying | undefined, void, void> {
  const nest = nestFor(task);
  const source = random(task.seed);
  let tries = known?.tries ?? 0;
  let most = known?.spots.length ?? 0;
  let least = known?.length ?? Infinity;
  let length = Infinity;

  for (const order of nest.orders()) {
    tries++;
    const placed = nest.place(order, task.height);
    const count = nest.count();
    if (placed.all && placed.length < length) {
      length = placed.length;
      nest.keep();
    }
    if (count > most || (count === most && placed.length < least)) {
      [most, least] = [count, placed.length];
      yield { spots: nest.spots(), length: placed.length, tries };
    } else yield undefined;
    if (task.first || task.stop()) return;
  }

  let shrink = 0.02;
  while (length < Infinity && tries < task.tries && !task.stop() && shrink > 0.0002) {
    nest.restore();
    const target = Math.max(nest.shortest, length * (1 - shrink));
    nest.squeeze(target, source);
    let apart = false;
    for (const done of nest.separate(target, source)) {
      tries++;
      apart = done;
      yield undefined;
      if (apart || task.stop() || tries >= task.tries) break;
    }
    if (!apart) {
      shrink *= 0.6;
      continue;
    }
    length = nest.reach();
    nest.keep();
    if (length < least) {
      least = length;
      yield { spots: nest.spots(), length, tries };
    }
    if (length <= nest.shortest + TOUCHING) return;
  }
}

/** Chords leave arcs by at most this, in mm; pieces are made larger by it all round, which also makes up for rounding. */
const CLEARANCE = 0.02;

/** How deep outlines may overlap, in mm, once made larger by the clearance, and still count as apart. */
const TOUCHING = 0.02;

/** One way a piece can lie. */
type Shape = { ready: Ready; angle: number; mirrored: boolean; ring: Point[]; width: number; height: number };

function nestFor(task: Task) {
  const grow = task.gap / 2 + CLEARANCE;
  // The room grows as the pieces do, so that they may touch its edges.
  const width = task.width + 2 * grow;
  const shapes: Shape[] = [];
  /** For each piece to lay, the shapes it may take. */
  const choices: number[][] = [];
  const areas: number[] = [];
  for (const { ready, count } of task.pieces) {
    const mirrored = Math.min(count, ready.layers === 2 ? 0 : (ready.piece.mirrored ?? 0));
    for (const flip of [false, true]) {
      const many = flip ? mirrored : count - mirrored;
      if (many === 0) continue;
      const angles = ready.atFold ? ready.angles.slice(0, 1) : ready.angles;
      const seen = new Set<string>();
      const own = angles.flatMap((angle) => {
        const shape = shapeOf(ready, angle, flip, grow);
        const key = shape.ring
          .map(({ x, y }) => `${x.toFixed(3)},${y.toFixed(3)}`)
          .sort()
          .join(' ');
        if (shape.width > width + 1e-6 || seen.has(key)) return [];
        seen.add(key);
        return [shapes.push(shape) - 1];
      });
      for (let i = 0; i < many && own.length > 0; i++) {
        choices.push(own);
        areas.push(area(ready.outline));
      }
    }
  }
  const n = choices.length;
  const pairs = new Array<Forbidden | undefined>(shapes.length * shapes.length);
  const pair = (a: number, b: number): Forbidden =>
    (pairs[a * shapes.length + b] ??= forbiddenMoves(shapes[a]!.ring, shapes[b]!.ring));

  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const as = Int32Array.from(choices, (own) => own[0]!);
  const laid: number[] = [];
  const weight = new Float64Array(n * n).fill(1);
  let kept: { x: Float64Array; y: Float64Array; as: Int32Array } | undefined;

  const repeat = task.repeat;
  const leaders = new Map<string, number>();
  for (const { ready } of task.pieces) {
    const match = ready.piece.match;
    if (match && !leaders.has(match.group)) leaders.set(match.group, match.at);
  }
  /** The nearest height at which a piece that must match lies right on the repeat; never below the edge. */
  const onRepeat = (shape: Shape, at: number): number => {
    const match = shape.ready.piece.match;
    if (repeat === undefined || !match) return at;
    const phase = leaders.get(match.group)! - match.at;
    const least = Math.ceil((0 - phase) / repeat - 1e-9);
    return Math.max(least, Math.round((at - phase) / repeat)) * repeat + phase;
  };
  const depthOf = (s: number, px: number, py: number, j: number): number =>
    depth(pair(as[j]!, s), px - x[j]!, py - y[j]!);

  /** Lays in an order, each at the lowest, then leftmost place that a corner of the forbidden moves gives. */
  function place(order: readonly number[], end: number): { all: boolean; length: number } {
    laid.length = 0;
    let top = 0;
    for (const i of order) {
      let found: { s: number; x: number; y: number; high: number } | undefined;
      for (const s of choices[i]!) {
        const shape = shapes[s]!;
        const [right, high] = [width - shape.width, end + 2 * grow - shape.height];
        const spots: Point[] = [
          { x: 0, y: 0 },
          { x: right, y: 0 },
        ];
        for (const j of laid) {
          const { edges } = pair(as[j]!, s);
          for (let e = 0; e < edges.length; e += 4) {
            const [ax, ay, bx, by] = [
              edges[e]! + x[j]!,
              edges[e + 1]! + y[j]!,
              edges[e + 2]! + x[j]!,
              edges[e + 3]! + y[j]!,
            ];
            spots.push({ x: ax, y: ay });
            // Where the edge of the room cuts the ring.
            for (const wall of [0, right])
              if (ax < wall !== bx < wall) spots.push({ x: wall, y: ay + ((by - ay) * (wall - ax)) / (bx - ax) });
            if (ay < 0 !== by < 0) spots.push({ x: ax + ((bx - ax) * (0 - ay)) / (by - ay), y: 0 });
          }
        }
        const options = spots
          .map((spot) => ({ x: shape.ready.atFold ? 0 : spot.x, y: onRepeat(shape, spot.y) }))
          .filter((spot) => spot.x >= -1e-9 && spot.x <= right + 1e-9 && spot.y >= -1e-9 && spot.y <= high + 1e-9)
          .sort((p, q) => p.y - q.y || p.x - q.x);
        for (const spot of options) {
          if (found && spot.y + shape.height >= found.high) break;
          if (laid.some((j) => depthOf(s, spot.x, spot.y, j) > TOUCHING)) continue;
          found = { s, x: spot.x, y: spot.y, high: spot.y + shape.height };
          break;
        }
      }
      if (!found) continue;
      as[i] = found.s;
      x[i] = found.x;
      y[i] = found.y;
      laid.push(i);
      top = Math.max(top, found.high);
    }
    return { all: laid.length === n, length: top - 2 * grow };
  }

  /** How much a piece overlaps the others where it would lie, each overlap by its weight. Ends early above `most`. */
  function overlap(i: number, s: number, px: number, py: number, most: number): number {
    let sum = 0;
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const deep = depthOf(s, px, py, j);
      if (deep > 0) {
        sum += weight[i * n + j]! * deep;
        if (sum >= most) return sum;
      }
    }
    return sum;
  }

  /** Moves a piece to the best place that samples and shrinking steps find. */
  function move(i: number, end: number, source: ReturnType<typeof random>): void {
    let bestSum = overlap(i, as[i]!, x[i]!, y[i]!, Infinity);
    let best = { s: as[i]!, x: x[i]!, y: y[i]! };
    const tops: { s: number; x: number; y: number; sum: number }[] = [{ ...best, sum: bestSum }];
    const samples = 24;
    for (let k = 0; k < samples; k++) {
      const s = choices[i]![source.below(choices[i]!.length)]!;
      const shape = shapes[s]!;
      const [right, high] = [width - shape.width, end + 2 * grow - shape.height];
      // A third near where it lies, the rest anywhere.
      const near = k % 3 === 0;
      const px = shape.ready.atFold
        ? 0
        : near
          ? clamp(x[i]! + (source.share() - 0.5) * shape.width * 0.5, 0, right)
          : source.share() * right;
      const py = onRepeat(
        shape,
        near ? clamp(y[i]! + (source.share() - 0.5) * shape.height * 0.5, 0, high) : source.share() * high,
      );
      if (high < 0 || py > high) continue;
      const worst = tops.length < 3 ? Infinity : tops[tops.length - 1]!.sum;
      const sum = overlap(i, s, px, py, worst);
      if (sum >= worst) continue;
      tops.push({ s, x: px, y: py, sum });
      tops.sort((p, q) => p.sum - q.sum);
      tops.length = Math.min(3, tops.length);
    }
    for (const top of tops) {
      const shape = shapes[top.s]!;
      const right = width - shape.width;
      const high = Math.max(0, end + 2 * grow - shape.height);
      let step = Math.min(shape.width, shape.height) * 0.1;
      const still = shape.ready.atFold;
      while (top.sum > 0 && step > TOUCHING / 4) {
        let moved = false;
        for (let d = 0; d < 4; d++) {
          // Along, across, and aslant, either way.
          const sign = source.below(2) === 0 ? 1 : -1;
          const [ux, uy] = [
            [1, 0],
            [0, 1],
            [0.7, 0.7],
            [0.7, -0.7],
          ][d]! as [number, number];
          for (const way of [sign, -sign]) {
            const px = still ? 0 : clamp(top.x + way * step * ux, 0, right);
            const py = onRepeat(shape, clamp(top.y + way * step * uy, 0, high));
            if ((px === top.x && py === top.y) || py > high) continue;
            const sum = overlap(i, top.s, px, py, top.sum);
            if (sum < top.sum) {
              [top.x, top.y, top.sum] = [px, py, sum];
              moved = true;
              break;
            }
          }
        }
        if (!moved) step *= 0.5;
      }
      if (top.sum < bestSum) {
        bestSum = top.sum;
        best = top;
      }
    }
    [as[i], x[i], y[i]] = [best.s, best.x, best.y];
  }

  /** All overlaps: their sum, and for each piece whether it is part of one. */
  function overlaps(): { sum: number; most: number; among: number[]; deep: Map<number, number> } {
    const among = new Set<number>();
    const deep = new Map<number, number>();
    let sum = 0;
    let most = 0;
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) {
        const d = depthOf(as[j]!, x[j]!, y[j]!, i);
        if (d <= TOUCHING) continue;
        sum += d;
        most = Math.max(most, d);
        deep.set(i * n + j, d);
        among.add(i).add(j);
      }
    return { sum, most, among: [...among], deep };
  }

  /** Moves pieces apart below `end`. Yields after each round whether all lie apart; ends when it gets nowhere. */
  function* separate(end: number, source: ReturnType<typeof random>): Generator<boolean, void, void> {
    weight.fill(1);
    let least = Infinity;
    for (let idle = 0; idle < 150; idle++) {
      const { sum, most, among, deep } = overlaps();
      yield sum === 0;
      if (sum === 0) return;
      if (sum < least * 0.98) {
        least = sum;
        idle = 0;
      }
      for (let k = 0; k < n * n; k++) weight[k] = Math.max(1, weight[k]! * 0.95);
      for (const [key, d] of deep) {
        const [i, j] = [Math.floor(key / n), key % n];
        const grown = weight[i * n + j]! * (1.2 + 0.8 * (d / most)) * 1.05;
        weight[i * n + j] = grown;
        weight[j * n + i] = grown;
      }
      for (let k = among.length - 1; k > 0; k--) {
        const other = source.below(k + 1);
        [among[k], among[other]] = [among[other]!, among[k]!];
      }
      for (const i of among) if (overlap(i, as[i]!, x[i]!, y[i]!, Infinity) > 0) move(i, end, source);
    }
  }

  return {
    /** No layout is shorter than the area asks for, or than a piece is at the least. */
    shortest: Math.max(
      areas.reduce((sum, one) => sum + one, 0) / task.width,
      ...choices.map((own) => Math.min(...own.map((s) => shapes[s]!.height)) - 2 * grow),
    ),
    place,
    separate,
    count: () => laid.length,
    orders: (): number[][] => {
      const by = (size: (i: number) => number): number[] =>
        [...choices.keys()].sort((a, b) => size(b) - size(a) || a - b);
      const shape = (i: number): Shape => shapes[choices[i]![0]!]!;
      return [
        by((i) => areas[i]!),
        by((i) => shape(i).height),
        by((i) => shape(i).width),
        by((i) => shape(i).width * shape(i).height),
      ];
    },
    reach: (): number => Math.max(...Array.from({ length: n }, (_, i) => y[i]! + shapes[as[i]!]!.height)) - 2 * grow,
    spots: (): Spot[] =>
      laid.map((i) => {
        const shape = shapes[as[i]!]!;
        // The room grew as the shape did: the piece itself lies where the shape does.
        return { ready: shape.ready, x: x[i]!, y: y[i]!, angle: shape.angle, mirrored: shape.mirrored };
      }),
    keep: (): void => {
      kept = { x: x.slice(), y: y.slice(), as: as.slice() };
    },
    /** Back to the layout kept last. */
    restore: (): void => {
      if (!kept) return;
      x.set(kept.x);
      y.set(kept.y);
      as.set(kept.as);
      laid.length = 0;
      for (let i = 0; i < n; i++) laid.push(i);
    },
    /** Brings all below `end`: what sticks out is set down somewhere else. */
    squeeze: (end: number, source: ReturnType<typeof random>): void => {
      for (let i = 0; i < n; i++) {
        const room = end + 2 * grow;
        // Lying this way it may be too long now.
        if (shapes[as[i]!]!.height > room) as[i] = choices[i]!.find((s) => shapes[s]!.height <= room) ?? as[i]!;
        const shape = shapes[as[i]!]!;
        const high = Math.max(0, room - shape.height);
        if (y[i]! > high) {
          y[i] = onRepeat(shape, source.below(2) === 0 ? high : source.share() * high);
          while (y[i]! > high && repeat !== undefined) y[i]! -= repeat;
          if (!shape.ready.atFold && source.below(2) === 0) x[i] = source.share() * (width - shape.width);
          x[i] = Math.min(x[i]!, width - shape.width);
        }
      }
    },
  };
}

const clamp = (value: number, low: number, high: number): number => (value < low ? low : value > high ? high : value);

function shapeOf(ready: Ready, angle: number, mirrored: boolean, grow: number): Shape {
  let outline: Outline = rotate(ready.outline, angle - ready.angles[0]!);
  if (mirrored) outline = reflect(outline, { at: { x: 0, y: 0 }, angle: 90 });
  const box = bounds(outline);
  const moved = translate(outline, { x: grow - box.x, y: grow - box.y });
  const larger = addAllowance(moved, grow, { shape: 'mitred' });
  const ring = sample(larger.ok ? larger.value : (offset([moved], grow)[0] ?? moved), CLEARANCE / 2);
  return { ready, angle, mirrored, ring, width: box.width + 2 * grow, height: box.height + 2 * grow };
}
