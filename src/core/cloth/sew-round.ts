import { area, bounds, leftOf, length, lineThrough, removeAllowance, sides, union } from '../geometry/index.ts';
import { distance, minus, plus, times, unit } from '../geometry/point.ts';
import { fail, ok } from '../measure/index.ts';
import { boxOf } from './size.ts';
import { lay } from './lay.ts';
import { linesMeet } from '../geometry/arc.ts';
import { nextNumber } from './work.ts';
import { laidGroups } from './sides.ts';
import { nameOf } from './edge.ts';
import { awayFrom, ON, stretches } from './ring.ts';
import { outlineOf } from './silhouette.ts';
import { pipingLoose, pipingOff } from './piping.ts';
import { runsAlong, stitchClass } from './stitch.ts';
import { stackUp, withPlies } from './combine.ts';
import { facesTogether, heldBeyond } from './seam.ts';
import { SAME } from '../measure/index.ts';
import type { EdgeReference, WorkEdge } from './edge.ts';
import type { ClothFault } from './fault.ts';
import type { Edge, Outline, Point, Side } from '../geometry/index.ts';
import type { StepRecord, Ply, PlyEdge, PlyOutline, SewnRound, Sewn, Stitch, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

/** How a pair is sewn round. */
export type SewRound = {
  /** From the raw edges to the stitches, in mm, for all edges or by edge name. */
  readonly allowance: number | Record<string, number>;
  /** Edges that are not sewn at all, such as the top of a bag; by name or as they were found in the lower work. */
  readonly open?: readonly EdgeReference[];
  /**
   * The opening that is left to turn the work through: in the middle of an edge, or so far from the seam at its left or
   * lower end.
   */
  readonly gap?: { readonly edge: EdgeReference; readonly length: number; readonly begins?: number };
  /** Works caught between the pair, such as a loop, lying where they are on the lower one. */
  readonly caught?: readonly Work[];
};

/**
 * Lays the second work on the first, upper sides together, and sews round their edges.
 *
 * Faults: those of the outline; `unknown-edge`; `too-deep` when the allowance takes the whole; `no-gap` for one of no
 * length and `misses` for one longer than its edge; `sewn-down` for what is caught along more than one line; `shapes-differ`.
 *
 * @example
 * turn(sewRound(front, lining, { allowance: 6, gap: { edge: 'bottom', length: 60 } }).value)
 */
export function sewRound(lower: Work, upper: Work, how: SewRound): Sewn {
  const { work: between, of } = stackUp([lower, ...(how.caught ?? [])]);
  // Interfacing that was cut a hair larger than its cloth is no edge to sew along.
  const outline = outlineOf(lower.plies.filter(({ fusedTo, piping }) => fusedTo === undefined && !piping));
  if (!outline.ok) return outline;
  const asked = [...(how.open ?? []), ...(how.gap ? [how.gap.edge] : [])];
  const line = stitchRing(calledSo(outline.value, asked), how);
  if (!line.ok) return line;
  const gap = how.gap && gapIn(line.value, how.gap);
  if (gap && !gap.ok) return gap;

  for (const ids of of.slice(1)) {
    const down = sewnDown(
      between.plies.filter(({ id }) => ids.has(id)),
      line.value,
    );
    if (down) return fail(down);
  }
  // What is caught lies within the lower layer by now, and the upper one covers both.
  const pair = lay(between, upper, { face: 'down' });
  if (!pair.ok) return pair;
  const facing = pair.value.plies.slice(between.plies.length);
  const apart = differ(
    outline.value,
    facing.filter(({ fusedTo, piping }) => fusedTo === undefined && !piping),
  );
  if (apart) return fail(apart);
  const off = pipingOff(pair.value, line.value);
  if (off) return fail(off);
  const loose = [...new Set([...looseBetween(pair.value, line.value), ...pipingLoose(pair.value.plies)])];
  const caught = [...new Set([...loose, ...between.plies.slice(lower.plies.length).map((ply) => ply.id)])];
  const over = facing.find(({ id }) => !loose.includes(id))!.id;
  const round: SewnRound = { ...line.value, over, caught, ...(gap && { gap: gap.value }) };
  const stitch = stitchRound(pair.value, round);
  const sewn = withPlies({ ...pair.value, stitches: [...pair.value.stitches, stitch] }, heldRound(round, stitch.id));
  const [run] = stitch.runs;
  const together = run && facesTogether([lower, { ...upper, plies: facing }], [run.from, run.to]);
  const done: StepRecord = { did: 'sew round', stitches: [stitch.id], ...(together && { together }) };
  return ok({ ...sewn, done: [...pair.value.done.slice(0, -1), done] });
}

/** The two layers must have one outline, or the stitches would miss one of them. */
function differ(outline: PlyOutline, facing: readonly Ply[]): ClothFault | undefined {
  const both = union(
    [outline],
    facing.map((ply) => ply.outline),
  ).reduce((sum, ring) => sum + area(ring), 0);
  const other = union(facing.map((ply) => ply.outline)).reduce((sum, ring) => sum + area(ring), 0);
  const apart = Math.max(both - area(outline), both - other) / length(outline);
  if (apart <= SAME) return undefined;
  const [a, b] = [bounds(outline), boxOf(facing)];
  const across = Math.abs(a.width - b.height) <= SAME && Math.abs(a.height - b.width) <= SAME;
  const lies = across
    ? ` One lies turned by a quarter: “quarter turn: ${facing[0]!.piece}” before this step turns it.`
    : '';
  const message = `The two works sewn round do not have one shape.${lies}`;
  return { code: 'shapes-differ', message, amount: apart };
}

/** The outline with the names of edges that were found where they lie; what is straight on under one name is one edge. */
export function calledSo(outline: PlyOutline, asked: readonly EdgeReference[]): PlyOutline {
  const found = asked.filter((one) => typeof one !== 'string');
  if (found.length === 0) return outline;
  const isOn = ({ line }: WorkEdge, p: Point) => Math.abs(leftOf(line, p)) <= SAME;
  const named = sides(outline).map((side, i): PlyEdge => {
    const edge = outline[i]!;
    const on = found.find((one) => isOn(one, side.from) && isOn(one, side.to));
    if (on) return { ...edge, name: on.name };
    return found.some(({ name }) => name === edge.name) ? { ...edge, name: `${edge.name} beside` } : edge;
  });
  return named.filter((edge, i) => {
    const before = named.at(i - 1)!;
    const on = found.find(({ name }) => name === edge.name);
    return !on || before.name !== edge.name || !isOn(on, before.from);
  });
}

/**
 * What was laid on one of the layers and is caught in the seam along one line only, such as a flap or a strap that was
 * basted on first: it lies loose between the two. Rows of stitches hold it to its layer, but not basting beside the seam.
 */
export function looseBetween(pair: Work, { ring, allowances }: StitchRing): number[] {
  const seams = sides(ring).flatMap((side, i) =>
    allowances[i]! > 0 ? { ...side, line: lineThrough(side.from, side.to), width: allowances[i]! } : [],
  );
  return laidGroups(pair).flatMap(({ laid: { work, nth } }) => {
    const plies = pair.plies.filter(
      (ply) => !ply.piping && ply.laid?.some((one) => one.work === work && one.nth === nth),
    );
    const ids = new Set(plies.map(({ id }) => id));
    const through = seams.filter(({ from, to }) => {
      const size = distance(from, to);
      return plies.some((ply) => stretches(ply.outline, from, to).some(([a, b]) => b > ON && a < size - ON));
    });
    const [first, ...others] = through;
    if (!first || others.some(({ from, to }) => [from, to].some((p) => Math.abs(leftOf(first.line, p)) > SAME)))
      return [];
    const isHeld = pair.stitches.some(({ kind, runs }) =>
      runs.some((run) => {
        if (run.plies.every((id) => ids.has(id)) || !run.plies.some((id) => ids.has(id))) return false;
        const outside = [run.from, run.to].every((p) => leftOf(first.line, p) < ON);
        return (kind !== 'baste' && kind !== 'gather') || !outside;
      }),
    );
    return isHeld ? [] : [...ids];
  });
}

/** Why what is caught between would be sewn down: only one straight stretch of the seam may go through it. */
function sewnDown(plies: readonly Ply[], { ring, allowances }: StitchRing): ClothFault | undefined {
  const [first, ...others] = sides(ring).filter(({ from, to }, i) => {
    const size = distance(from, to);
    const goesThrough = ({ outline }: Ply) => stretches(outline, from, to).some(([a, b]) => b > ON && a < size - ON);
    return allowances[i]! > 0 && plies.some(goesThrough);
  });
  const line = first && lineThrough(first.from, first.to);
  const other = line && others.find(({ from, to }) => [from, to].some((p) => Math.abs(leftOf(line, p)) > SAME));
  if (!first || !other) return undefined;
  const [piece] = plies.map((ply) => ply.piece);
  const message = `${piece} reaches into the seam at the ${first.name} and at the ${other.name}: it would be sewn down there and could not come out.`;
  return { code: 'sewn-down', message, ...(piece !== undefined && { piece }), edge: other.name };
}

export type StitchRing = { ring: Outline; allowances: number[] };

/** The stitch line: the outline moved in by its allowances. Each of its edges knows the width of its allowance. */
export function stitchRing(outline: Outline, { allowance, open: left = [] }: SewRound): Result<StitchRing, ClothFault> {
  const open = left.map(nameOf);
  const names = [...new Set(outline.map((edge) => edge.name))];
  const asked = [...open, ...(typeof allowance === 'number' ? [] : Object.keys(allowance))];
  const unknown = asked.find((name) => !names.includes(name));
  if (unknown !== undefined) {
    const message = `There is no edge ${unknown} to sew round. There are ${names.join(', ')}.`;
    return fail({ code: 'unknown-edge', message, edge: unknown });
  }
  const by = Object.fromEntries(
    names.map((name) => {
      const width = typeof allowance === 'number' ? allowance : (allowance[name] ?? 0);
      return [name, open.includes(name) ? 0 : width];
    }),
  );
  const ring = removeAllowance(outline, by);
  if (!ring.ok) {
    const code = ring.fault.code === 'not-finite' ? 'not-finite' : 'too-deep';
    return fail({ code, message: 'The allowance leaves nothing inside the stitches.' });
  }
  const whole = toTheEdge(ring.value, outline, by);
  const near = whole.find((_, i) => isNearer(sides(whole)[i]!, outline, by[whole[i]!.name] ?? 0));
  if (near) {
    const message = `The allowance is too wide for the ${near.name}, which bends more tightly: no stitch line runs so far inside it.`;
    return fail({ code: 'too-deep', message, edge: near.name });
  }
  const sewn = withoutBends(whole);
  return ok({ ring: sewn, allowances: sewn.map((edge) => by[edge.name] ?? 0) });
}

/** Whether a stretch of a stitch line ends nearer to the edges of its name than its allowance is wide. */
function isNearer({ name, from, to }: Side, outline: Outline, width: number): boolean {
  const edges = sides(outline).filter((side) => side.name === name);
  return edges.some((edge) => [from, to].some((p) => awayFrom([edge, { ...edge, from: edge.to }], p) < width - SAME));
}

/** The ring with its straight sewn lines run on to the edges that stay open, past what is left of the edge in their allowances. */
function toTheEdge(ring: Outline, cut: Outline, by: Readonly<Record<string, number>>): Outline {
  const n = ring.length;
  const all = sides(ring);
  // A curve has several chords of one name, also where a wide allowance leaves one of them.
  const isStraight = ({ name, bulge }: Edge) => bulge === 0 && cut.filter((one) => one.name === name).length === 1;
  const isStep = ring.map((edge, i) => {
    const [before, after] = [ring[(i + n - 1) % n]!, ring[(i + 1) % n]!];
    const widths = [before, after].filter(isStraight).map(({ name }) => by[name] ?? -1);
    return by[edge.name] === undefined && widths.length === 2 && widths.includes(0) && Math.max(...widths) > 0;
  });
  if (!isStep.includes(true)) return ring;
  return ring.flatMap((edge, i) => {
    if (isStep[i]) return [];
    if (!isStep[(i + n - 1) % n]) return [edge];
    const [before, here] = [all[(i + n - 2) % n]!, all[i]!];
    const at = linesMeet(before.from, minus(before.to, before.from), here.from, minus(here.to, here.from));
    return [{ ...edge, from: at ?? edge.from }];
  });
}

/** A stitch of 2.5 mm, as most machines begin with (common practice, no source), is straight. */
const STITCH = 2.5;

/** The ring with bends that are shorter than a stitch as the corners that a machine makes of them. */
function withoutBends(ring: Outline): Outline {
  const edges = sides(ring);
  const n = edges.length;
  const isShort = edges.map(({ from, to }) => distance(from, to) < STITCH);
  const corners = new Map<number, { last: number; at: Point }>();
  for (let i = 0; i < n; i++) {
    if (!isShort[i] || isShort[(i + n - 1) % n]) continue;
    let last = i;
    while (isShort[(last + 1) % n] && last - i < n) last++;
    const bend = Array.from({ length: last - i + 1 }, (_, k) => edges[(i + k) % n]!);
    const at = cornerOf(edges[(i + n - 1) % n]!, bend, edges[(last + 1) % n]!);
    if (at) corners.set(i, { last, at });
  }
  if (corners.size === 0) return ring;
  const isGone = new Set(
    [...corners].flatMap(([i, { last }]) => Array.from({ length: last - i + 1 }, (_, k) => (i + k) % n)),
  );
  const begins = new Map([...corners.values()].map(({ last, at }) => [(last + 1) % n, at]));
  return ring.flatMap((edge, i) => (isGone.has(i) ? [] : [{ ...edge, from: begins.get(i) ?? edge.from }]));
}

/** Where the edges on both sides of a bend meet, if the whole bend is shorter than a stitch. */
function cornerOf(before: Side, bend: readonly Side[], after: Side): Point | undefined {
  const long = bend.reduce((sum, { from, to }) => sum + distance(from, to), 0);
  if (bend.length < 2 || long > STITCH) return undefined;
  const at = linesMeet(before.to, minus(before.to, before.from), after.from, minus(after.to, after.from));
  return at && distance(at, before.to) < STITCH && distance(at, after.from) < STITCH ? at : undefined;
}

type Gap = NonNullable<SewnRound['gap']>;

export function gapIn(
  { ring, allowances }: StitchRing,
  { edge: asked, length, begins }: NonNullable<SewRound['gap']>,
): Result<Gap, ClothFault> {
  const edge = nameOf(asked);
  const longest = sides(ring)
    .filter((side) => side.name === edge)
    .sort((a, b) => distance(b.from, b.to) - distance(a.from, a.to))[0];
  if (!longest) return fail({ code: 'unknown-edge', message: `There is no edge ${edge} to leave a gap in.`, edge });
  if (ring.every(({ name }, i) => name !== edge || allowances[i] === 0)) {
    const message = `The ${edge} is not sewn, so that no gap can be left in it.`;
    return fail({ code: 'no-gap', message, edge, fix: 'Leave the gap in an edge that is sewn, or leave “gap” out.' });
  }
  const whole = distance(longest.from, longest.to);
  const { from, to } = longest;
  const level = Math.abs(to.x - from.x) >= Math.abs(to.y - from.y);
  const isLow = level ? from.x <= to.x : from.y <= to.y;
  const start = begins === undefined ? (whole - length) / 2 : isLow ? begins : whole - length - begins;
  if (!(length > SAME)) {
    return fail({ code: 'no-gap', message: `A gap so short is no gap: nothing could be turned through it.`, edge });
  }
  if (!(start >= -ON) || start + length > whole + ON) {
    const tooLong = length > whole + ON ? 'The gap is longer than' : 'The gap reaches beyond the end of';
    const message = `${tooLong} the edge ${edge} inside its allowances.`;
    return fail({ code: 'misses', message, edge, field: 'gap', amount: (begins ?? 0) + length - whole });
  }
  const way = unit(minus(longest.to, longest.from));
  const place = (t: number) => plus(longest.from, times(way, t));
  return ok({ from: place(start), to: place(start + length), edge, closed: false });
}

/** The row round, without the gap and without the edges that stay open. */
export function stitchRound(work: Work, round: SewnRound): Stitch {
  const runs = sides(round.ring).flatMap((side, i) =>
    round.allowances[i] === 0
      ? []
      : sewnParts(side, round.gap).flatMap(([from, to]) => runsAlong(work.plies, from, to)),
  );
  return { id: nextNumber(work), kind: 'seam', class: stitchClass.seam, runs, round };
}

function sewnParts(side: Side, gap: Gap | undefined): [Point, Point][] {
  if (!gap || gap.edge !== side.name || !liesOn(side, gap.from)) return [[side.from, side.to]];
  return [
    [side.from, gap.from],
    [gap.to, side.to],
  ];
}

const liesOn = ({ from, to }: Side, at: Point): boolean =>
  Math.abs(distance(from, at) + distance(at, to) - distance(from, to)) < ON;

/** Raw edges outside the stitches are held, but for those at the gap. */
export function heldRound({ ring, allowances, gap }: SewnRound, stitch: number): (ply: Ply) => Ply {
  const rows = sides(ring).flatMap((side, i) => {
    const width = allowances[i]!;
    if (width === 0) return [];
    const line = lineThrough(side.from, side.to);
    // At its own ends a row also holds the corner of the allowance that lies beyond them.
    const out = times(unit(minus(side.to, side.from)), 4 * width);
    return sewnParts(side, gap).map(([from, to]) => {
      const [start, end] = [from === side.from ? minus(from, out) : from, to === side.to ? plus(to, out) : to];
      return { line, way: [start, end] as const, width };
    });
  });
  return (ply) => rows.reduce((held, { line, way, width }) => heldBeyond(held, line, way, stitch, width), ply);
}
