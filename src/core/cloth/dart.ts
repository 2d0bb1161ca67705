import { asOneStep } from './group.ts';
import { dot, minus, plus, times } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { followedBy, transformPoint } from '../geometry/transform.ts';
import { areaOf, awayFrom, covers, ON, split } from './ring.ts';
import { lineThrough } from '../geometry/index.ts';
import { nextNumber } from './work.ts';
import { stitchClass } from './stitch.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Ply, PlyEdge, PlyOutline, Run, Sewn, Stitch, Work } from './work.ts';

/** What the fold along the middle of a dart is called. */
export const DART = 'dart';

/** A dart as it lies on its piece: from the cut edge in, along legs that meet at its point. */
export type DartOnPiece = {
  /** On the cut edge, between the legs, as the piece was cut. */
  readonly middle: Point;
  /** Along the edge and square to it into the piece, each of length 1. */
  readonly along: Point;
  readonly inward: Point;
  /** Between the legs on the stitch line, in mm. */
  readonly width: number;
  /** From the stitch line to the point, in mm. */
  readonly length: number;
  /** From the cut edge to the stitch line, in mm. The legs run straight on through it. */
  readonly allowance: number;
};

/**
 * Sews the darts of a piece: each is folded right sides together along its middle, sewn from the edge to its point, and
 * pressed toward the middle of its edge, on the wrong side. The edge is shorter by the width of each; area is kept.
 *
 * A piece with a dart no longer lies flat. In the picture each side of a dart is drawn toward it, all at the edge and less
 * toward the point, below which the piece keeps its size; the sides beside that edge slant there, and are longer than cut
 * by less than a hundredth.
 *
 * Faults: `no-plies` without a dart; `held` where the piece is folded already or something else lies on it; `sewn-down`
 * where rows or hardware are on it; `misses` where the piece was cut off beside a dart or before its point.
 *
 * @example
 * dart(front, 'front', [{ middle: { x: 75, y: 100 }, along: { x: -1, y: 0 }, inward: { x: 0, y: -1 }, width: 20, length: 75, allowance: 10 }])
 */
export function dart(work: Work, piece: string, darts: readonly DartOnPiece[]): Sewn {
  const own = work.plies.find((ply) => ply.piece === piece && ply.fusedTo === undefined);
  if (!own || darts.length === 0) return fail({ code: 'no-plies', message: 'There is no dart to sew here.' });
  const alone = work.plies.every((ply) => ply === own || ply.fusedTo === own.id);
  if (!alone || own.outline.some(({ fold }) => fold !== undefined)) {
    const message = 'Something else lies on this piece, or it is folded already.';
    return fail({ code: 'held', message, piece, fix: 'Sew its darts first.' });
  }
  if (work.stitches.length > 0 || work.marks.some(({ kind }) => kind === 'hardware')) {
    const message = 'Rows of stitches or hardware are on this piece already.';
    return fail({ code: 'sewn-down', message, piece, fix: 'Sew its darts first.' });
  }
  const now: Cone = { darts: darts.map((one) => placed(one, own)) };
  const isCut = now.darts.every((one) =>
    [-1, 1].every((side) => awayFrom(own.outline, plus(one.middle, times(one.along, side * halfWidth(one, 0)))) < SAME),
  );
  if (!isCut) {
    const message = 'The edge with the dart is no longer where it was cut.';
    return fail({ code: 'misses', message, piece, fix: 'Sew its darts first.' });
  }
  const lacks = now.darts.some(({ middle, inward, allowance, length }) => {
    const point = plus(middle, times(inward, allowance + length));
    return !covers(own.outline, point) && awayFrom(own.outline, point) > SAME;
  });
  if (lacks) {
    const message = `${piece} was cut off before the point of its dart.`;
    return fail({ code: 'misses', message, piece, fix: 'Sew its darts first.' });
  }
  let number = nextNumber(work);
  const body = work.plies.map((ply): Ply => ({ ...ply, outline: drawnIn(ply.outline, now) }));
  const under: Ply[] = [];
  const stitches: Stitch[] = [];
  for (const one of now.darts) {
    const crease = number++;
    const toLow = goesLow(one, own.outline);
    const bends = now.darts.flatMap((other) => (other === one ? [] : creases(other)));
    const halves = ([-1, 1] as const).map((side) => {
      // Either half goes on in the body, each at its own leg.
      const leg = number++;
      const parts = work.plies.flatMap((ply): Ply[] =>
        halfOf(ply.outline, one, side, { leg, crease }).map((part) => {
          const outline = cornered(part, bends);
          const flips = (side === -1) === toLow;
          const there = mapped(outline, (p) => flapAt(p, one, now, side, toLow), flips);
          return {
            ...ply,
            id: number++,
            outline: there,
            face: flips === (ply.face === 'right') ? 'wrong' : 'right',
            transform: followedBy(ply.transform, flapTransform(one, now, flips, toLow)),
          };
        }),
      );
      // What is fused goes on in the part of its own cloth.
      const cloth = parts.find(({ fusedTo }) => fusedTo === undefined);
      return parts.map((ply) => (ply.fusedTo === undefined || !cloth ? ply : { ...ply, fusedTo: cloth.id }));
    });
    const [straight, folded] = toLow ? [halves[1]!, halves[0]!] : [halves[0]!, halves[1]!];
    const flap = [...straight, ...folded.toReversed()];
    under.push(...flap);
    // What is fused to it may end at the stitch line, and what other darts draw in ends at their points.
    const at = (d: number) => plus(one.middle, times(one.inward, d));
    const stitchLine = lineThrough(at(one.allowance), plus(at(one.allowance), one.along));
    const row = cornered(
      [at(0), at(one.allowance + one.length)].map((from) => ({ name: '', bulge: 0, from })),
      [...bends, stitchLine],
    ).map(({ from }) => within(from, one).d);
    const stops = [...new Set(row)].sort((a, b) => a - b);
    const ways = stops.slice(1).map((to, k): [number, number] => [stops[k]!, to]);
    const runs = ways.flatMap(([from, to]): Run[] => {
      if (to - from <= ON) return [];
      const lies = ({ outline }: Ply) =>
        outline.some((edge) => dot(minus(edge.from, one.middle), one.inward) < (from + to) / 2);
      const here = (own.face === 'right' ? [...flap, ...body] : [...body, ...flap.toReversed()]).filter(lies);
      return [{ from: at(from), to: at(to), plies: here.map(({ id }) => id) }];
    });
    stitches.push({ id: 0, kind: 'seam', class: stitchClass.seam, runs });
  }
  const plies = own.face === 'right' ? [...under, ...body] : [...body, ...under.toReversed()];
  const sewn = stitches.map((stitch) => ({ ...stitch, id: number++ }));
  const shifted = sewn.map((stitch, i) => movedRow(stitch, now.darts[i]!, now));
  return ok(
    asOneStep(
      work.done,
      { ...work, plies, stitches: shifted },
      { did: 'dart', stitches: shifted.map(({ id }) => id), together: 'right sides together' },
    ),
  );
}

/** All darts of a piece, each where it lies now. */
type Cone = { readonly darts: readonly DartOnPiece[] };

function placed(one: DartOnPiece, { transform }: Ply): DartOnPiece {
  const at = (p: Point) => transformPoint(transform, p);
  const way = (p: Point) => minus(at(plus(one.middle, p)), at(one.middle));
  return { ...one, middle: at(one.middle), along: way(one.along), inward: way(one.inward) };
}

/** How far along the edge from a dart's middle a point lies, and how far in. */
const within = (p: Point, { middle, along, inward }: DartOnPiece): { s: number; d: number } => {
  const off = minus(p, middle);
  return { s: dot(off, along), d: dot(off, inward) };
};

/** Half of what is between the legs, so far in from the cut edge. */
const halfWidth = ({ width, length, allowance }: DartOnPiece, d: number): number =>
  (width / 2) * Math.max(0, 1 - (d - allowance) / length);

/** How far a point is drawn toward a dart: as much as lies on its side between the leg and the middle. */
function pull(p: Point, one: DartOnPiece): Point {
  const { s, d } = within(p, one);
  const by = Math.min(halfWidth(one, d), Math.abs(s));
  return times(one.along, s > 0 ? -by : by);
}

const drawnTo = (p: Point, darts: readonly DartOnPiece[]): Point =>
  darts.reduce((now, one) => plus(now, pull(p, one)), p);

/** A point of what lies between the legs, where it comes to lie: folded under toward the low or the high end of the edge. */
function flapAt(p: Point, one: DartOnPiece, { darts }: Cone, side: -1 | 1, toLow: boolean): Point {
  const { s, d } = within(p, one);
  const half = halfWidth(one, d);
  const flips = (side === -1) === toLow;
  const low = toLow ? -1 : 1;
  const there = flips ? low * half - s : s + low * half;
  const others = darts.filter((other) => other !== one);
  const middle = plus(one.middle, times(one.inward, d));
  return plus(drawnTo(middle, others), times(one.along, there));
}

/** The same for all of a half at once: what it is narrowed by follows from how far in a point lies. */
function flapTransform(one: DartOnPiece, { darts }: Cone, flips: boolean, toLow: boolean): Transform {
  const { middle, along: e, inward: n } = one;
  // So much of the whole shift at the cut edge, and so much less with each mm.
  const shift = (dart: DartOnPiece) => [halfWidth(dart, 0), dart.width / 2 / dart.length] as const;
  const parts = darts.map((dart) => {
    const [whole, less] = shift(dart);
    const sign = dart === one ? (toLow ? -1 : 1) : within(middle, dart).s > 0 ? -1 : 1;
    return [sign * whole, sign * less] as const;
  });
  const by = parts.reduce((sum, [whole]) => sum + whole, 0);
  const k = parts.reduce((sum, [, less]) => sum + less, 0);
  const over = flips ? -2 : 0;
  const [a, c] = [1 + over * e.x * e.x - k * e.x * n.x, over * e.x * e.y - k * e.x * n.y];
  const [b, d] = [over * e.x * e.y - k * e.y * n.x, 1 + over * e.y * e.y - k * e.y * n.y];
  return {
    ...{ a, b, c, d },
    e: middle.x + by * e.x - a * middle.x - c * middle.y,
    f: middle.y + by * e.y - b * middle.x - d * middle.y,
  };
}

/** Whether the flap of a dart is pressed toward the low end of its edge: to the middle of the piece. */
function goesLow(one: DartOnPiece, outline: PlyOutline): boolean {
  const reach = outline.map(({ from }) => within(from, one).s);
  return Math.max(...reach) + Math.min(...reach) <= SAME;
}

/** The lines along which the picture bends. */
function creases(one: DartOnPiece): Line[] {
  const at = (s: number, d: number) => plus(one.middle, plus(times(one.along, s), times(one.inward, d)));
  const { width, length, allowance } = one;
  const point = at(0, allowance + length);
  return [
    lineThrough(point, at(1, allowance + length)),
    lineThrough(at(0, 0), at(0, 1)),
    ...[-width / 2, width / 2].map((s) => lineThrough(at(s, allowance), point)),
  ];
}

/** A ring with a corner wherever it crosses one of the lines. */
function cornered(ring: PlyOutline, lines: readonly Line[]): PlyEdge[] {
  return ring.flatMap((edge, i) => {
    const to = ring[(i + 1) % ring.length]!.from;
    const way = minus(to, edge.from);
    const stops = lines.flatMap(({ at, angle }) => {
      const n = { x: -Math.sin((angle * Math.PI) / 180), y: Math.cos((angle * Math.PI) / 180) };
      const slope = dot(way, n);
      const t = slope === 0 ? -1 : dot(minus(at, edge.from), n) / slope;
      return t > 1e-9 && t < 1 - 1e-9 ? [t] : [];
    });
    return [0, ...stops.sort((a, b) => a - b)].map((t) => ({ ...edge, from: plus(edge.from, times(way, t)) }));
  });
}

/** A ring where a map takes its corners; turned over, it is walked the other way. */
function mapped(ring: readonly PlyEdge[], to: (p: Point) => Point, flips: boolean): PlyEdge[] {
  const n = ring.length;
  const there = flips
    ? ring.map((_, i) => ({ ...ring[n - 1 - i]!, from: to(ring[(n - i) % n]!.from) }))
    : ring.map((edge) => ({ ...edge, from: to(edge.from) }));
  return withoutIdle(there);
}

/** Without edges of no length, and without corners on a straight edge. */
function withoutIdle(ring: readonly PlyEdge[]): PlyEdge[] {
  const long = ring.filter((edge, i) => {
    const to = ring[(i + 1) % ring.length]!.from;
    return Math.hypot(to.x - edge.from.x, to.y - edge.from.y) > ON;
  });
  return long.filter((edge, i) => {
    const before = long.at(i - 1)!;
    const to = long[(i + 1) % long.length]!.from;
    const [a, b] = [minus(edge.from, before.from), minus(to, edge.from)];
    const isOne = edge.name === before.name && edge.fold === before.fold && edge.held === before.held;
    return !isOne || edge.finish !== before.finish || Math.abs(a.x * b.y - a.y * b.x) > 1e-6 * Math.hypot(a.x, a.y);
  });
}

const drawnIn = (ring: PlyOutline, { darts }: Cone): PlyOutline =>
  mapped(cornered(ring, darts.flatMap(creases)), (p) => drawnTo(p, darts), false);

/** The cloth between the middle of a dart and one of its legs. */
function halfOf(
  ring: PlyOutline,
  one: DartOnPiece,
  side: -1 | 1,
  folds: { leg: number; crease: number },
): PlyOutline[] {
  const at = (s: number, d: number) => plus(one.middle, plus(times(one.along, s), times(one.inward, d)));
  const { width, length, allowance } = one;
  const point = at(0, allowance + length);
  const out = (side * width) / 2;
  // Each line has the half on its left.
  const mirrored = one.along.x * one.inward.y - one.along.y * one.inward.x < 0;
  const ahead = (side === 1) === mirrored;
  const line = (a: Point, b: Point) => (ahead ? lineThrough(a, b) : lineThrough(b, a));
  const lines: [Line, Omit<PlyEdge, 'from'>][] = [
    [line(at(0, 0), point), { name: DART, bulge: 0, fold: folds.crease }],
    [line(point, at(out, allowance)), { name: 'seam', bulge: 0, fold: folds.leg }],
  ];
  const parts = lines.reduce<PlyOutline[]>(
    (rings, [cut, fresh]) => rings.flatMap((outline) => split(outline, cut, fresh).left),
    [ring],
  );
  return parts.filter((part) => areaOf(part) > ON);
}

/** The row along the legs, once they lie on one another. */
function movedRow(stitch: Stitch, one: DartOnPiece, { darts }: Cone): Stitch {
  const others = darts.filter((other) => other !== one);
  const to = (p: Point) => drawnTo(p, others);
  return { ...stitch, runs: stitch.runs.map((run) => ({ ...run, from: to(run.from), to: to(run.to) })) };
}
