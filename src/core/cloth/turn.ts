import { asOneStep } from './group.ts';
import { between, cross, distance, dot, plus, times } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { foldAlong, hasBeyond } from './fold.ts';
import { area, lineThrough, sides, union } from '../geometry/index.ts';
import { movedMark, movedPly, movedStitch } from './move.ts';
import { nextNumber } from './work.ts';
import { covers, offsets, ON, stretches } from './ring.ts';
import { liesOn, reversedEdge } from './edge.ts';
import { pipingOut } from './piping.ts';
import { putTogether, takenApart } from './layers-apart.ts';
import { laidWith, runsTogether, wallByWall, wallsOf } from './walls.ts';
import { isBend, roundCorners } from './round-corners.ts';
import { inverse, reflection, transformPoint } from '../geometry/transform.ts';
import type { ClothFault } from './fault.ts';
import type { Hinge } from './hinge.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Line, Point, Side } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { RoundCorner } from './round-corners.ts';
import type { Sewing } from './layers-apart.ts';
import type { OfRow } from './walls.ts';
import type { Ply, SewnRound, Sewn, Stitch, Work } from './work.ts';

/**
 * Turns a pair that was sewn round right side out. The two layers change places, so that the sides that touched are
 * outside; at each sewn edge the allowances are folded in along the stitches, between the layers; at inner corners and
 * on curves they are clipped to the stitches. What was caught in between comes out. The gap's allowances are turned in with the rest;
 * nothing holds the edges there until the gap is closed. A pair of w x h sewn at s comes to (w - 2 s) x (h - 2 s).
 *
 * Faults: `not-sewn-round`; `no-gap` when it was sewn shut; `held` when the layers are folded together; `sewn-down` when
 * other rows, hardware or boxed corners join them; `too-deep` for allowances much wider than what is between the stitches; those of folding.
 *
 * @param isOpen whether there is another way out, such as an open zip
 * @param row the number of the row that it was sewn round with; the last one if left out
 * @example
 * size(turn(sewRound(front, lining, { allowance: 6, gap: { edge: 'bottom', length: 60 } }).value).value)
 */
export function turn(work: Work, isOpen = false, row?: number): Sewn {
  const seam = work.stitches.findLast(
    (one) => one.round !== undefined && (row === undefined ? laidWith(work, one).length === 0 : row === one.id),
  );
  if (!seam?.round) return fail({ code: 'not-sewn-round', message: notSewnRound(work) });
  const { round } = seam;
  const at = work.plies.findIndex((ply) => ply.id === round.over);
  const caught = work.plies.filter((ply) => round.caught.includes(ply.id));
  const lower = work.plies.slice(0, at).filter((ply) => !round.caught.includes(ply.id));
  const upper = work.plies.slice(at);
  const isGapShut = !round.gap || round.gap.closed;
  const isShut = isGapShut && round.allowances.every((width, i) => width > 0 || round.folds?.[i] === true);
  if (isShut && !isOpen && ![lower, upper].some((layer) => overlaps(layer, work, seam))) {
    return fail({ code: 'no-gap', message: 'There is no gap to turn the work through.' });
  }
  const folded = foldedTogether(lower, upper, round);
  if (folded) return fail(folded);
  // A boxed corner is sewn across both layers, and turns with them.
  const boxed = boxRows(work);
  const below = new Set(lower.map(({ id }) => id));
  const rows = rowsLeft(work, [seam, ...boxed], round, below);
  if (!rows.ok) return rows;
  const pinned = heldTogether(work, boxed, caught, below);
  if (pinned) return fail(pinned);

  const out = comesOut(work, caught, rows.value, round);
  if (!out.ok) return out;
  const folds = foldsIn(round);
  const [over, under, between] = takenApart(out.value, [upper, lower]);
  const up = foldedIn({ ...over!, plies: upper, done: [] }, folds, 'over', nextNumber(work));
  if (!up.ok) return up;
  const down = foldedIn(
    { ...under!, plies: lower, done: [] },
    folds,
    'under',
    Math.max(nextNumber(work), nextNumber(up.value)),
  );
  if (!down.ok) return down;

  const plies = [...up.value.plies, ...out.value.plies, ...down.value.plies];
  const order = new Map(plies.map((ply, i) => [ply.id, i]));
  const level = (id: number) => order.get(id) ?? -1;
  const runs = seam.runs.map((run) => ({ ...run, plies: [...run.plies].sort((a, b) => level(a) - level(b)) }));
  const { stitches, marks } = putTogether([between!, up.value, down.value]);
  const rejoined = stitches.map((stitch): Stitch => {
    const of = ({ stitches: all }: Sewing) => all.filter(({ id }) => id === stitch.id);
    const parts = [...of(down.value), ...of(up.value)];
    return { ...stitch, runs: [...runsTogether(of(between!), order), ...runsTogether(parts, order)] };
  });
  const turned: SewnRound = { ...round, over: down.value.plies[0]?.id ?? round.over, turned: true };
  const all = [...rejoined, ...boxed, { ...seam, runs, round: turned }].sort((a, b) => a.id - b.id);
  return ok(asOneStep(work.done, { plies, stitches: all, marks, done: [] }, { did: 'turn' }));
}

/**
 * Presses the allowances of a pair that is not turned to the outside of its walls, so that nothing stands out beside its
 * seams.
 *
 * Faults: those of folding.
 */
export function pressedOutward(work: Work, row: number): Sewn {
  const { round } = work.stitches.find(({ id }) => id === row)!;
  const folds = foldsIn(round!);
  const pressed = wallByWall(work, wallsOf(work, row), (wall, which) =>
    foldedIn(wall, folds, which === 'lower' ? 'under' : 'over', nextNumber(wall)),
  );
  if (!pressed.ok) return pressed;
  const { work: after, walls } = pressed.value;
  const over = walls.upper[0]?.id ?? round!.over;
  const stitches = after.stitches.map((one) =>
    one.id === row && one.round ? { ...one, round: { ...one.round, over } } : one,
  );
  return ok({ ...after, stitches });
}

/**
 * Whether a layer is made of parts that overlap with nothing but basting between them, as the backs of a cushion do: a
 * way out, as long as no part covers the whole by itself.
 */
function overlaps(layer: readonly Ply[], { stitches }: Work, round: Stitch): boolean {
  const part = new Map(layer.map(({ id }) => [id, id]));
  const join = (ids: readonly number[]) => {
    const here = ids.filter((id) => part.has(id));
    const [first, ...others] = here.map((id) => part.get(id)!);
    for (const [id, one] of part) if (others.includes(one)) part.set(id, first!);
  };
  const folds = new Map<number, number[]>();
  for (const { id, outline, fusedTo } of layer) {
    if (fusedTo !== undefined) join([id, fusedTo]);
    for (const { fold } of outline) if (fold !== undefined) folds.set(fold, [...(folds.get(fold) ?? []), id]);
  }
  for (const ids of folds.values()) join(ids);
  for (const { id, kind, runs } of stitches) {
    if (id !== round.id && kind !== 'baste' && kind !== 'gather') for (const { plies } of runs) join(plies);
  }
  const covered = (plies: readonly Ply[]) =>
    union(plies.map(({ outline }) => outline)).reduce((sum, ring) => sum + area(ring), 0);
  const whole = covered(layer);
  const parts = Map.groupBy(layer, ({ id }) => part.get(id)!);
  return parts.size > 1 && [...parts.values()].every((plies) => covered(plies) < WHOLE * whole);
}

/** What covers at least this share of a layer’s area is no part of it but the whole, cut a hair smaller. Common practice, no source. */
const WHOLE = 0.95;

function notSewnRound({ plies, stitches }: Work): string {
  const message = 'Only a pair that is sewn round can be turned.';
  const isFolded = plies.some(({ outline }) => outline.some(({ fold }) => fold !== undefined));
  if (!isFolded || stitches.length === 0) return message;
  return `${message} A folded piece is sewn at its sides by “sew up”.`;
}

/** Why the two layers cannot change places: a fold has one side among the lower plies and one among the upper. */
function foldedTogether(lower: readonly Ply[], upper: readonly Ply[], round: SewnRound): ClothFault | undefined {
  // Where a work was sewn up at its own edges, its walls are one cloth along the fold between them. What goes round an
  // opening, a binding or elastic, goes from wall to wall along the seams.
  const lines = sides(round.ring).map(({ from, to }) => lineThrough(from, to));
  const isBetween = (side: Side) => lines.some((line) => liesOn(line, side));
  const foldsOf = (plies: readonly Ply[]) =>
    plies.flatMap((ply) =>
      sides(ply.outline).flatMap((side, i) => {
        const { fold } = ply.outline[i]!;
        return fold === undefined
          ? []
          : [{ ply, fold, at: between(side.from, side.to, 0.5), isBetween: isBetween(side) }];
      }),
    );
  const above = foldsOf(upper);
  // A hem that was folded once more has its fold in both walls, at other places of the cloth.
  const joined = foldsOf(lower)
    .filter((one) => !one.isBetween)
    .flatMap((one) => above.filter((other) => other.fold === one.fold && isOnePlace(one, other)));
  const ply = joined[0]?.ply;
  if (!ply) return undefined;
  const message = `The two layers are folded together, ${ply.piece} among them.`;
  return { code: 'held', message, piece: ply.piece, fix: 'Turn the work before it is folded.' };
}

/** Whether two edges of folds are the same place of the cloth. */
const isOnePlace = (a: { ply: Ply; at: Point }, b: { ply: Ply; at: Point }): boolean =>
  distance(transformPoint(inverse(a.ply.transform), a.at), transformPoint(inverse(b.ply.transform), a.at)) < SAME;

/** Why the layers cannot change places: hardware goes through both, or a boxed corner through what lies between them. */
function heldTogether(
  { marks }: Work,
  boxed: readonly Stitch[],
  caught: readonly Ply[],
  lower: ReadonlySet<number>,
): ClothFault | undefined {
  const mark = marks.find(
    ({ kind, plies }) => kind === 'hardware' && plies.some((id) => lower.has(id)) && plies.some((id) => !lower.has(id)),
  );
  if (mark) return { code: 'sewn-down', message: `${mark.name} goes through both layers and holds them together.` };
  const between = caught.find(({ id }) => boxed.some(({ runs }) => runs.some(({ plies }) => plies.includes(id))));
  if (!between) return undefined;
  const message = `A boxed corner is sewn through ${between.piece}, which lies between the layers and could not come out.`;
  return { code: 'sewn-down', message, piece: between.piece };
}

/** The rows of each layer by itself. Basting that joins the two comes out; another row would keep them together. */
function rowsLeft(
  work: Work,
  apart: readonly Stitch[],
  { ring }: SewnRound,
  lower: ReadonlySet<number>,
): Result<Stitch[], ClothFault> {
  const joins = (stitch: Stitch) =>
    stitch.runs.some((run) => run.plies.some((id) => lower.has(id)) && run.plies.some((id) => !lower.has(id)));
  const rest = work.stitches.filter((stitch) => !apart.includes(stitch));
  // What finishes the edges of both allowances, or sewed them before they were enclosed, goes in with them.
  const isOvercast = ({ kind, runs }: Stitch) =>
    (kind === 'zigzag' || kind === 'overlock' || kind === 'seam') &&
    runs.every(({ from, to }) => !covers(ring, between(from, to, 0.5)));
  const held = rest.find(
    (stitch) => joins(stitch) && stitch.kind !== 'baste' && stitch.kind !== 'gather' && !isOvercast(stitch),
  );
  if (held) return fail({ code: 'sewn-down', message: `A row of ${held.kind} stitches joins the two layers.` });
  // A row over both allowances goes in with them: for now each layer takes its own part of it.
  const parted = (stitch: Stitch): Stitch[] =>
    [true, false].map((isLower) => ({
      ...stitch,
      runs: stitch.runs.flatMap((run) => {
        const plies = run.plies.filter((id) => lower.has(id) === isLower);
        return plies.length === 0 ? [] : [{ ...run, plies }];
      }),
    }));
  const numbered = (stitch: Stitch): Stitch => ({
    ...stitch,
    runs: stitch.runs.map((run, nth): OfRow => ({ ...run, nth })),
  });
  return ok(
    rest.map(numbered).flatMap((stitch) => (!joins(stitch) ? stitch : isOvercast(stitch) ? parted(stitch) : [])),
  );
}

/** The rows across boxed corners. */
function boxRows({ done, stitches }: Work): Stitch[] {
  const ids = new Set(done.flatMap((one) => (one.did === 'box corner' ? (one.stitches ?? []) : [])));
  return stitches.filter(({ id }) => ids.has(id));
}

/** Allowances that are folded back and forth more often than this do not lie in a body so narrow. */
const ROUNDS = 4;

/**
 * The folds along the stitch line, those of a curve at once. Along a curve, and beside an inner corner, the allowance of
 * an edge goes in by itself, cut from its neighbours where the stitches turn: in one piece it would not lie flat.
 */
function foldsIn(round: SewnRound): Hinge[][] {
  const corners = roundCorners(round);
  const folds: Hinge[][] = [];
  let before: Hinge | undefined;
  for (const [i, start] of corners.entries()) {
    const edge = start.after;
    const end = corners[(i + 1) % corners.length]!;
    if (start.widths[1] === 0 || distance(edge.from, edge.to) < ON) {
      before = undefined;
      continue;
    }
    const line = lineThrough(edge.from, edge.to);
    const isOuter = offsets(round.ring, line).every((off) => off > -ON);
    // The line of an edge beside an inner corner also runs through other parts of the work, which stay.
    const bounds = (corner: RoundCorner, other: RoundCorner) =>
      isOuter && !corner.isCurve ? [] : [bound(corner, edge, isBend(other))];
    const within = [...bounds(start, end), ...bounds(end, start).map(reversedEdge)];
    const hinge: Hinge = { line, name: edge.name, within };
    if (before && isClipped(start)) folds.at(-1)!.push(hinge);
    else folds.push([hinge]);
    before = hinge;
  }
  // Round a shape without outer corners, the first edge goes with the last.
  if (before && folds.length > 1 && isClipped(corners[0]!)) folds[0]!.unshift(...folds.pop()!);
  return folds;
}

/** Whether the allowances of two edges are parted where the edges meet. */
const isClipped = ({ turn, isCurve }: RoundCorner): boolean => turn < 0 || isCurve;

/**
 * What bounds the allowance of an edge at a corner: on a curve and at an inner corner the bisector, along which it is
 * clipped; at an outer corner a line square to the edge, as far out as the two allowances reach. Both run out of the
 * cloth.
 */
function bound(corner: RoundCorner, edge: Side, isChord: boolean): Line {
  const { at, a, b, widths, after } = corner;
  const sine = cross(a, b);
  const squareTo = (way: Point) => (Math.atan2(-way.x, way.y) * 180) / Math.PI;
  if (isClipped(corner)) return { at, angle: squareTo(plus(a, b)) };
  const isStart = edge === after;
  const [width, next] = isStart ? [widths[1], widths[0]] : widths;
  const way = isStart ? b : a;
  const reach = sine < 1e-6 ? 0 : (next - width * dot(a, b)) / sine;
  // Beside a curve the allowance bends away from the chord of its stitches, and its corner lies further out.
  const out = isChord ? 2 * Math.max(reach, 0) + Math.max(...widths) : Math.max(reach, 0) + ON;
  return { at: plus(at, times(way, isStart ? -out : out)), angle: squareTo(way) };
}

/**
 * What was caught, where it comes out over the stitches that go through it, with its rows and hardware. A ply that the
 * stitches miss, such as interfacing that ends at them or an allowance inside a turned flap, goes with its own work:
 * that of the nearest caught ply below it, or else above it, that they do not miss.
 */
function comesOut(
  { marks }: Work,
  caught: readonly Ply[],
  rows: readonly Stitch[],
  round: SewnRound,
): Result<Pick<Work, 'plies' | 'stitches' | 'marks'>, ClothFault> {
  const piped = caught.map((ply) => (ply.piping ? pipingOut(ply, round.ring) : ply));
  const lost = caught.find((_, i) => !piped[i]);
  if (lost) {
    const message = `How ${lost.piece} comes out of the seam cannot be worked out: it does not lie along the stitches.`;
    return fail({ code: 'misses', message, piece: lost.piece });
  }
  const sewnOn = caught.map((ply) => sewnOver(ply, round));
  const overs = new Map<number, Transform>();
  for (const [i, ply] of caught.entries()) {
    if (ply.piping) continue;
    const line = sewnOn.slice(0, i + 1).findLast((one) => one !== undefined) ?? sewnOn.find((one) => one !== undefined);
    if (!line) return fail({ code: 'misses', message: `The stitches miss ${ply.piece}.`, piece: ply.piece });
    overs.set(ply.id, reflection(line));
  }
  const overOf = (plies: readonly number[]) => (plies.every((id) => overs.has(id)) ? overs.get(plies[0]!) : undefined);
  return ok({
    plies: caught.map((ply, i) => (ply.piping ? piped[i]! : movedPly(ply, overs.get(ply.id)!))).reverse(),
    stitches: rows.map((stitch) => {
      const over = overOf(stitch.runs.flatMap((run) => run.plies));
      if (!over) return stitch;
      const there = movedStitch(stitch, over);
      return { ...there, runs: there.runs.map((run) => ({ ...run, plies: [...run.plies].reverse() })) };
    }),
    marks: marks.map((mark) => {
      const over = overOf(mark.plies);
      return over ? { ...movedMark(mark, over), plies: [...mark.plies].reverse() } : mark;
    }),
  });
}

/** The stitches that a caught ply comes out over: those that go through it. */
function sewnOver(ply: Ply, { ring, allowances }: SewnRound): Line | undefined {
  for (const [i, edge] of sides(ring).entries()) {
    const size = distance(edge.from, edge.to);
    const through = stretches(ply.outline, edge.from, edge.to).some(([a, b]) => b > 0 && a < size);
    if (allowances[i]! > 0 && through) return lineThrough(edge.from, edge.to);
  }
  return undefined;
}

/**
 * Folds the allowances of one layer in, one edge after another, each next to the layer itself. Allowances wider than the
 * body reach over its far edge and are folded once more. New plies are numbered from `numberFrom`.
 */
function foldedIn(layer: Work, folds: readonly Hinge[][], lands: 'over' | 'under', numberFrom: number): Sewn {
  let now = layer;
  for (let round = 0, left = true; left; round++) {
    left = false;
    for (const hinges of folds) {
      // An edge whose allowance was trimmed to nothing, or lies inside by now, has nothing to fold.
      if (!hinges.some(({ line }) => hasBeyond(now.plies, line))) continue;
      const folded = foldAlong(now, hinges, { lands, numberFrom: Math.max(numberFrom, nextNumber(now)) });
      if (folded.ok && round === ROUNDS) {
        const [piece] = layer.plies.map((ply) => ply.piece);
        const message = `The allowances of ${piece} are too wide for what is left between the stitches: they do not lie inside it.`;
        return fail({ code: 'too-deep', message, ...(piece !== undefined && { piece }) });
      }
      if (folded.ok) [now, left] = [folded.value, true];
      else if (folded.fault.code !== 'misses') return folded;
    }
  }
  return ok(now);
}
