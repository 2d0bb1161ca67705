import { asOneStep } from './group.ts';
import { cross, direction, distance, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { edgesOn } from './sides.ts';
import { fail, ok, plainName, quote, SAME } from '../measure/index.ts';
import { followedBy, isReflected, reflection, transformPoint } from '../geometry/transform.ts';
import { lineThrough } from '../geometry/index.ts';
import { nextNumber } from './work.ts';
import { offsets, ON } from './ring.ts';
import { runsAlong, stitchClass } from './stitch.ts';
import { stackUp } from './combine.ts';
import type { ClothFault } from './fault.ts';
import type { Ply, PlyEdge, Run, Sewn, Stitch, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { Transform } from '../geometry/transform.ts';
import type { WorkEdge } from './edge.ts';

export type BindRound = {
  /** Sides by name, each after the one it meets at a corner; all of them, or as they follow one another. */
  readonly at: readonly string[];
  /** Finished width, in mm. The strip is four times as wide, or a little less. */
  readonly width: number;
  /** Allowance of the seam that joins the strip's ends where it goes all round, in mm. */
  readonly seam: number;
  /** How far inside the binding's inner fold the last row runs, in mm; 1.5 is common practice, no source. */
  readonly inside?: number;
};

/** A straight stretch of the binding: where it begins on the raw edge and on the strip, and the corner it runs to. */
type Stretch = {
  readonly side: string;
  readonly at: Point;
  readonly along: Point;
  readonly out: Point;
  readonly from: number;
  readonly length: number;
  /** The tangent of half the turn at the corner behind it; undefined where it ends without one. */
  readonly corner: number | undefined;
};

/**
 * Binds sides that follow one another with one strip, mitred at the corners: sewn to the upper side at the finished
 * width, folded up and down again at each corner, opened, folded round the raw edge and sewn down. At a corner the strip
 * goes out to the tip and back, so that it is as long as the raw edges. All round, its ends are joined in the middle of
 * the first side, and pressed open.
 *
 * Faults: those of finding the sides; `not-finite`; `one-edge` where sides do not follow one another round outer corners, or one is sharper than a right angle;
 * `edge-inside` where cloth lies beyond them; `too-deep` for a strip that is too narrow or too wide, and for a side that
 * is too short for its corners; `strip-length` for a strip of another length; `held` for one that is folded or joined.
 *
 * @example
 * bindRound(mat, strip, { at: ['all'], width: 10, seam: 6 }) // a strip as long as the mat is round and 12 mm more
 */
export function bindRound(work: Work, strip: Work, { at, width, seam, inside = 1.5 }: BindRound): Sewn {
  const found = edgesOn(work, at);
  if (!found.ok) return found;
  const way = inOrder(found.value);
  if (!way.ok) {
    const fix = 'Curves and blunt corners cannot be bound here yet: bind a work with square corners.';
    return at.some((side) => plainName(side) === 'all') ? fail({ ...way.fault, fix }) : way;
  }
  const { edges, isRound } = way.value;
  if (!Number.isFinite(width + inside + seam) || width <= 0) {
    return fail({ code: 'not-finite', message: 'The finished width of the binding is not a length.' });
  }
  const flat = stripLaid(strip);
  if (!flat.ok) return flat;
  const turn = flat.value.wide - 3 * width;
  if (turn <= ON || turn > width + SAME) {
    const message = `A binding ${turn <= ON ? 'has nothing to turn in' : 'reaches too far'}: its strip should be four times its width.`;
    return fail({ code: 'too-deep', message, amount: flat.value.wide - 4 * width });
  }
  const beyond = edges.find(({ line }) =>
    work.plies.some(({ outline }) => offsets(outline, line).some((o) => o < -SAME)),
  );
  if (beyond) {
    const message = `Something lies beyond the ${beyond.name}: a binding folds round an edge that nothing sticks out of.`;
    return fail({ code: 'edge-inside', message, edge: beyond.name });
  }
  const joins = isRound ? seam : 0;
  const length = edges.reduce((sum, one) => sum + one.length, 0);
  const stretches = stretchesOf(edges, isRound, joins);
  const short = stretches.find((one, i) => {
    const before = stretches[i - 1]?.corner ?? 0;
    const ends = isRound && (i === 0 || i === stretches.length - 1) ? joins : 0;
    return one.length < width * ((one.corner ?? 0) + before) + ends + SAME;
  });
  if (short || (isRound && !(seam > ON))) {
    const message = short
      ? `The edge ${quote(short.side)} is too short for a binding that is mitred at its ends.`
      : 'The ends of the strip are joined by a seam, and its allowance is nothing.';
    return fail({ code: 'too-deep', message, ...(short && { edge: short.side }) });
  }
  if (Math.abs(flat.value.long - length - 2 * joins) > SAME) {
    const message = `The strip is … long, and the edges that it goes along are … together${isRound ? ': with a seam of … at both of its ends it is cut …' : ''}.`;
    const lengths = [flat.value.long, length, ...(isRound ? [joins, length + 2 * joins] : [])];
    const fix = 'Cut it as long as that, or trim it in a step before.';
    return fail({ code: 'strip-length', message, lengths, fix, amount: flat.value.long - length - 2 * joins });
  }
  const both = stackUp([work, strip]).work;
  return ok(
    new Binding(
      work,
      both,
      { ...flat.value, ply: both.plies.at(-1)! },
      { stretches, isRound, width, turn, joins, inside },
    ).sewn(),
  );
}

/** The sides in the order in which they follow one another, counter-clockwise, and whether they go all round. */
function inOrder(found: readonly WorkEdge[]): Result<{ edges: WorkEdge[]; isRound: boolean }, ClothFault> {
  const meets = (a: WorkEdge, b: WorkEdge) => distance(a.to, b.from) <= SAME;
  const first = found.find((one) => !found.some((other) => other !== one && meets(other, one)));
  const edges = [first ?? found[0]!];
  while (edges.length < found.length) {
    const next = found.find((one) => !edges.includes(one) && meets(edges.at(-1)!, one));
    if (!next) break;
    edges.push(next);
  }
  const isRound = first === undefined && meets(edges.at(-1)!, edges[0]!);
  const corners = edges.flatMap((one, i) => {
    const next = edges[i + 1] ?? (isRound ? edges[0] : undefined);
    return next ? [[direction(one.line.angle), direction(next.line.angle)] as const] : [];
  });
  const turns = corners.every(([a, b]) => cross(a, b) > 1e-6);
  if (edges.length === found.length && turns && edges.length > 1) {
    if (corners.every(([a, b]) => dot(a, b) > -1e-6)) return ok({ edges, isRound });
    const message = 'The corner is sharper than a right angle: a strip folded square there would stick out.';
    return fail({ code: 'one-edge', message });
  }
  const message = 'These edges do not follow one another round outer corners: one strip cannot go along all of them.';
  return fail({ code: 'one-edge', message });
}

type Laid = {
  readonly ply: Ply;
  readonly long: number;
  readonly wide: number;
  readonly place: (s: number, t: number) => Point;
};

/** The strip as it lies: how far along it and how far from its sewn edge each point is, its upper side seen. */
export function stripLaid({ plies, stitches, marks }: Work): Result<Laid, ClothFault> {
  const [ply] = plies;
  const xs = plies.flatMap(({ outline }) => outline.map(({ from }) => from.x));
  const ys = plies.flatMap(({ outline }) => outline.map(({ from }) => from.y));
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const isPlain = plies.length === 1 && ply!.outline.length === 4 && stitches.length === 0 && marks.length === 0;
  const isBox =
    isPlain &&
    ply!.outline.every(
      ({ from: { x, y } }) =>
        Math.min(Math.abs(x - left), Math.abs(x - right)) <= ON &&
        Math.min(Math.abs(y - low), Math.abs(y - high)) <= ON,
    );
  if (!isBox || ply!.fullness !== 1) {
    const message = 'A strip that is bound round corners lies flat, in one layer with straight ends.';
    return fail({ code: 'held', message, fix: 'Bind with a strip that is neither folded nor gathered.' });
  }
  const lies = right - left >= high - low;
  return ok({
    ply: ply!,
    long: lies ? right - left : high - low,
    wide: lies ? high - low : right - left,
    place: (s, t) => (lies ? { x: left + s, y: high - t } : { x: left + t, y: low + s }),
  });
}

function stretchesOf(edges: readonly WorkEdge[], isRound: boolean, joins: number): Stretch[] {
  let reached = joins;
  const all = edges.map((edge, i): Stretch => {
    const next = edges[i + 1] ?? (isRound ? edges[0] : undefined);
    const along = direction(edge.line.angle);
    const turn = next && Math.acos(Math.max(-1, Math.min(1, dot(along, direction(next.line.angle)))));
    const corner = turn === undefined ? undefined : Math.tan(turn / 2);
    const one = {
      side: edge.own,
      at: edge.from,
      along,
      out: { x: along.y, y: -along.x },
      from: reached,
      length: edge.length,
      corner,
    };
    reached += edge.length;
    return one;
  });
  if (!isRound) return all;
  // Begun and ended in the middle of the first side.
  const [first, ...others] = all;
  const half = first!.length / 2;
  const begun = { ...first!, at: plus(first!.at, times(first!.along, half)), length: half };
  const later = others.map((one) => ({ ...one, from: one.from - half }));
  return [begun, ...later, { ...first!, from: reached - half, length: half, corner: undefined }];
}

type How = {
  readonly stretches: readonly Stretch[];
  readonly isRound: boolean;
  readonly width: number;
  readonly turn: number;
  readonly joins: number;
  readonly inside: number;
};

/** A part of the strip between two of its folds: what it is part of, and where its corners lie on the strip. */
type Facet = { readonly band: number; readonly ply: Ply };

/** The strip folded round the edges, a ply for each part between its folds. */
class Binding {
  readonly #work: Work;
  readonly #both: Work;
  readonly #laid: Laid;
  readonly #how: How;
  #next: number;
  readonly #folds = new Map<string, number>();
  readonly #seam: number;
  readonly #row: number;
  readonly #join: number;

  constructor(work: Work, both: Work, laid: Laid, how: How) {
    [this.#work, this.#both, this.#laid, this.#how] = [work, both, laid, how];
    this.#next = nextNumber(both);
    [this.#seam, this.#row, this.#join] = [this.#number(), this.#number(), this.#number()];
  }

  sewn(): Work {
    const { stretches, isRound } = this.#how;
    // Bands from the sewn edge of the strip outward: allowance, front, back, turned in. At each corner a stretch lies over
    // its own fold, and that over the next stretch, on the front and on the back.
    const bands = [0, 1, 2, 3].map((band) =>
      stretches.flatMap((_, i) => [
        this.#main(band, i),
        ...(stretches[i]!.corner === undefined ? [] : [this.#tuck(band, i)]),
      ]),
    );
    const ends = [0, 1, 2, 3].map((band) => (isRound ? [this.#end(band, true), this.#end(band, false)] : []));
    const plies = (list: readonly Facet[]) => list.map(({ ply }) => ply);
    const [allowance, front, back, turned] = bands.map(plies);
    const [a, f, b, t] = ends.map(plies);
    const held = this.#work.plies.map((ply) => this.#heldAt(ply));
    const under = [...back!, ...b!, ...t!, ...turned!.toReversed()];
    const over = [...allowance!, ...a!, ...f!, ...front!.toReversed()];
    const all = [...under, ...held, ...over];
    const sewnOn = new Set([...held, ...allowance!].map(({ id }) => id));
    const seam = this.#rowAt(
      all.filter(({ id }) => sewnOn.has(id)),
      this.#how.width,
      { id: this.#seam, kind: 'seam' },
    );
    const row = this.#rowAt(all, this.#how.width - this.#how.inside, { id: this.#row, kind: 'edgestitch' });
    const joined = isRound ? [this.#joinOf(bands)] : [];
    const sewn = [...joined, seam, row];
    const done = { did: 'bind', stitches: sewn.map(({ id }) => id) };
    const both = this.#both;
    return asOneStep(both.done, { ...both, plies: all, stitches: [...both.stitches, ...sewn] }, done);
  }

  #number = (): number => this.#next++;

  #fold(key: string): number {
    let fold = this.#folds.get(key);
    if (fold === undefined) this.#folds.set(key, (fold = this.#number()));
    return fold;
  }

  /** Where a band begins and ends across the strip, and how far inside the raw edge each of the two lies. */
  #across(band: number): { from: number; to: number; off: (t: number) => number } {
    const { width, turn } = this.#how;
    const from = band * width;
    const off = (t: number) => (band % 2 === 0 ? t - from : width - (t - from));
    return { from, to: band < 3 ? from + width : from + turn, off };
  }

  /** From the strip to where a stretch lies in a band. */
  #placed(band: number, { at, along, out, from }: Stretch): Transform {
    const { off } = this.#across(band);
    const to = (s: number, t: number): Point => plus(plus(at, times(along, s - from)), times(out, -off(t)));
    return affine(this.#laid.place, to);
  }

  #main(band: number, i: number): Facet {
    const stretch = this.#how.stretches[i]!;
    const { from, to, off } = this.#across(band);
    const end = stretch.from + stretch.length;
    const slope = stretch.corner ?? 0;
    const lines = this.#lines(band, `${i}`);
    const before = this.#how.stretches[i - 1];
    const start = before ? this.#creased(`${band} square ${i - 1}`) : this.#end0(band, true);
    const finish = stretch.corner === undefined ? this.#end0(band, false) : this.#creased(`${band} mitre ${i}`);
    return this.#facet(band, this.#placed(band, stretch), [
      [stretch.from, from, lines.low],
      [end - slope * off(from), from, finish],
      [end - slope * off(to), to, lines.high],
      [stretch.from, to, start],
    ]);
  }

  /** The cloth that is folded under at a corner: turned over along the mitre. */
  #tuck(band: number, i: number): Facet {
    const stretch = this.#how.stretches[i]!;
    const { from, to, off } = this.#across(band);
    const end = stretch.from + stretch.length;
    const slope = stretch.corner!;
    const lines = this.#lines(band, `tuck ${i}`);
    const corner = plus(stretch.at, times(stretch.along, stretch.length));
    const tip = plus(plus(corner, times(stretch.along, -slope)), times(stretch.out, -1));
    const over = reflection(lineThrough(corner, tip));
    return this.#facet(band, followedBy(this.#placed(band, stretch), over), [
      [end - slope * off(from), from, lines.low],
      [end, from, this.#creased(`${band} square ${i}`)],
      [end, to, lines.high],
      [end - slope * off(to), to, this.#creased(`${band} mitre ${i}`)],
    ]);
  }

  /** The allowance of the seam that joins both ends of the strip, turned back along it. */
  #end(band: number, isFirst: boolean): Facet {
    const { stretches, joins } = this.#how;
    const stretch = isFirst ? stretches[0]! : stretches.at(-1)!;
    const { from, to } = this.#across(band);
    const at = isFirst ? stretch.from : stretch.from + stretch.length;
    const far = isFirst ? at - joins : at + joins;
    const lines = this.#lines(band, isFirst ? 'first end' : 'last end');
    const join = plus(stretch.at, times(stretch.along, at - stretch.from));
    const over = reflection(lineThrough(join, plus(join, stretch.out)));
    const raw = { name: this.#nameAt(far, from + ON * 10, far, to - ON * 10), held: this.#join };
    const own = this.#end0(band, isFirst);
    return this.#facet(band, followedBy(this.#placed(band, stretch), over), [
      [Math.min(at, far), from, lines.low],
      [Math.max(at, far), from, isFirst ? own : raw],
      [Math.max(at, far), to, lines.high],
      [Math.min(at, far), to, isFirst ? raw : own],
    ]);
  }

  /** What bounds a stretch at an end of the strip: the fold of its seam, or its raw edge. */
  #end0(band: number, isFirst: boolean): Omit<PlyEdge, 'from'> {
    if (this.#how.isRound) return this.#creased(`${band} end ${isFirst}`);
    const { from, to } = this.#across(band);
    const s = isFirst ? 0 : this.#laid.long;
    return { name: this.#nameAt(s, from, s, to), bulge: 0 };
  }

  /** The two long edges of a part: the raw ones of the strip, or folds between bands. */
  #lines(band: number, part: string): { low: Omit<PlyEdge, 'from'>; high: Omit<PlyEdge, 'from'> } {
    const raw = (t: number, held: number) => ({ name: this.#nameAt(0, t, this.#laid.long, t), bulge: 0, held });
    const crease = (k: number) => {
      const side = k === 2 ? this.#sideOf(part) : 'fold';
      return { name: side, bulge: 0, fold: this.#fold(`line ${k} ${part}`) };
    };
    return {
      low: band === 0 ? raw(0, this.#seam) : crease(band),
      high: band === 3 ? raw(this.#laid.wide, this.#row) : crease(band + 1),
    };
  }

  /** The outer fold has the name of the side that it binds. */
  #sideOf(part: string): string {
    const i = part === 'first end' ? 0 : part === 'last end' ? -1 : Number(part.replace('tuck ', ''));
    return this.#how.stretches.at(i)!.side;
  }

  #creased = (key: string): Omit<PlyEdge, 'from'> => ({ name: 'fold', bulge: 0, fold: this.#fold(key) });

  /** What the strip calls its edge between two of its points. */
  #nameAt(s1: number, t1: number, s2: number, t2: number): string {
    const [a, b] = [this.#laid.place(s1, t1), this.#laid.place(s2, t2)];
    const middle = times(plus(a, b), 0.5);
    const { outline } = this.#laid.ply;
    const off = (i: number) => {
      const line = lineThrough(outline[i]!.from, outline[(i + 1) % outline.length]!.from);
      return Math.abs(cross(direction(line.angle), minus(middle, line.at)));
    };
    return outline[outline.map((_, i) => i).reduce((best, i) => (off(i) < off(best) ? i : best))]!.name;
  }

  #facet(
    band: number,
    transform: Transform,
    corners: readonly (readonly [number, number, Omit<PlyEdge, 'from' | 'bulge'> & { bulge?: number }])[],
  ): Facet {
    const { ply, place } = this.#laid;
    const around = corners.map(([s, t, edge]) => ({ ...edge, bulge: 0, from: transformPoint(transform, place(s, t)) }));
    const ring = around.filter(({ from }, i) => distance(from, around[(i + 1) % around.length]!.from) > ON);
    const isClockwise = ring.reduce((sum, { from }, i) => sum + cross(from, ring[(i + 1) % ring.length]!.from), 0) < 0;
    const n = ring.length;
    const outline: PlyEdge[] = isClockwise
      ? ring.map((_, i) => ({ ...ring[n - 1 - i]!, from: ring[(n - i) % n]!.from }))
      : ring;
    const other = ply.face === 'right' ? 'wrong' : 'right';
    return {
      band,
      ply: {
        ...ply,
        id: this.#number(),
        outline,
        face: isReflected(transform) ? other : ply.face,
        transform: followedBy(ply.transform, transform),
      },
    };
  }

  /** The raw edges of the work that the binding goes round are held by its seam. */
  #heldAt(ply: Ply): Ply {
    const { stretches } = this.#how;
    const isBound = (a: Point, b: Point) =>
      stretches.some(({ at, out }) => [a, b].every((p) => Math.abs(dot(out, minus(p, at))) <= SAME));
    const outline = ply.outline.map((edge, i) => {
      const to = ply.outline[(i + 1) % ply.outline.length]!.from;
      const isRaw = edge.fold === undefined && edge.held === undefined;
      return isRaw && isBound(edge.from, to) ? { ...edge, held: this.#seam } : edge;
    });
    return { ...ply, outline };
  }

  /** A row so far inside the bound edges, from corner to corner. */
  #rowAt(plies: readonly Ply[], inside: number, { id, kind }: Pick<Stitch, 'id' | 'kind'>): Stitch {
    const { stretches } = this.#how;
    const runs = stretches.flatMap(({ at, along, out, length, corner }, i): Run[] => {
      const before = (stretches[i - 1]?.corner ?? 0) * inside;
      const point = (a: number) => plus(plus(at, times(along, a)), times(out, -inside));
      return runsAlong(plies, point(before), point(length - (corner ?? 0) * inside));
    });
    return { id, kind, class: stitchClass[kind], runs };
  }

  /** The seam that joins both ends of the strip: through both, in each band where it lies now. */
  #joinOf(bands: readonly (readonly Facet[])[]): Stitch {
    const first = this.#how.stretches[0]!;
    const runs = bands.map((facets, band): Run => {
      const { from, to, off } = this.#across(band);
      const point = (t: number) => plus(first.at, times(first.out, -off(t)));
      return { from: point(from), to: point(to), plies: [facets[0]!.ply.id, facets.at(-1)!.ply.id] };
    });
    return { id: this.#join, kind: 'seam', class: stitchClass.seam, runs };
  }
}

/** The transform that brings points of the strip to where they lie. */
function affine(place: (s: number, t: number) => Point, to: (s: number, t: number) => Point): Transform {
  const [o, p, q] = [place(0, 0), place(1, 0), place(0, 1)];
  const [x, u, v] = [to(0, 0), to(1, 0), to(0, 1)];
  const [es, et] = [unit(minus(p, o)), unit(minus(q, o))];
  const [us, ut] = [minus(u, x), minus(v, x)];
  // Both frames are square and of one measure.
  const [a, b] = [us.x * es.x + ut.x * et.x, us.y * es.x + ut.y * et.x];
  const [c, d] = [us.x * es.y + ut.x * et.y, us.y * es.y + ut.y * et.y];
  return { a, b, c, d, e: x.x - a * o.x - c * o.y, f: x.y - b * o.x - d * o.y };
}
