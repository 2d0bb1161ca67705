import { cutRunAt } from './fold.ts';
import { sewn } from './stitch.ts';
import { pathsInside } from './paths-inside.ts';
import { asOneStep } from './group.ts';
import { between, direction, distance, plus, times } from '../geometry/point.ts';
import { fail, listed, ok, quote, SAME } from '../measure/index.ts';
import { findEdge, lineInside, liesOn } from './edge.ts';
import { followedBy, transformPoint } from '../geometry/transform.ts';
import { leftOf, lineThrough, sides } from '../geometry/index.ts';
import { allOpenings, atOpening, roundIn, rowInside, withEdgeInside } from './openings.ts';
import { boxesStand } from './box.ts';
import { movedMark, movedRun } from './move.ts';
import { nextNumber, withoutRound } from './work.ts';
import { beginsAt, offsets, ON, split } from './ring.ts';
import { withPlies } from './combine.ts';
import type { EdgeReference, WorkEdge } from './edge.ts';
import type { ClothFault } from './fault.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Edge, Line, Point, Side } from '../geometry/index.ts';
import type { Opening } from './openings.ts';
import type { Ply, Run, Sewn, SewnRound, Stitch, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

export type Gather = {
  readonly edge: EdgeReference;
  /** The length that the edge is drawn up to, in mm. */
  readonly to: number;
  /** How far inside the edge the rows of stitches run, in mm; two rows, 6 mm apart (Sew magazine). */
  readonly rows?: readonly number[];
  /** How deep the cloth beside the edge is drawn up in the picture, in mm: deeper than the rows and the seam there. */
  readonly depth?: number;
  /** All that lies there is drawn up, whether it ends at the edge or not, and what is sewn there with it: by elastic. */
  readonly all?: boolean;
  /** Where a row runs so far inside the edge once it is drawn up; with the cloth if left out. */
  readonly rowInside?: (by: number) => readonly Point[];
};

/** More cloth than this is not eased but gathered; a tenth is common practice, no source. */
const EASE = 1.1;
/** Sheers are gathered to a third (decorating notes on fullness); more than a fifth is a slip of the pen. */
const FULLEST = 5;

/** What the line is called below which the cloth keeps its size. */
export const GATHERS = 'gathers';

/** The second row of gathers lies 12 mm in; half as much again is drawn up with it. */
const DEPTH = 18;

/**
 * Draws an edge up to a length. The edge becomes shorter and the cloth beside it fuller by the same share, so that area
 * times fullness stays; in the flat picture that is a strip along the edge, below which the rest keeps its size. What
 * was laid or sewn on further in stays as it is.
 *
 * Only the plies of the edge are drawn up: of a pocket that lies on a panel, the pocket alone.
 *
 * Faults: those of finding the edge; `not-finite`; `not-shorter`; `too-full`; `blocked` when something of the same work
 * lies there that does not end at the edge; `sewn-along` where a seam holds the edge's
 * length, or a row holds it to what is not drawn up.
 *
 * @example
 * gather(frill, { edge: 'top', to: 200 }).value.plies.at(-1).fullness // => 2 for a frill of 400 mm
 */
export const gather = (work: Work, how: Gather): Sewn => drawUp(work, { rows: [6, 12], ...how }, 'gather', FULLEST);

/**
 * Eases an edge to a slightly shorter one, without folds. Faults: as for gathers; more than a tenth is `too-full`.
 *
 * @example
 * ease(sleeve, { edge: 'cap', to: 300 })
 */
export const ease = (work: Work, how: Gather): Sewn => drawUp(work, { rows: [], ...how }, 'ease', EASE);

/**
 * Draws an opening up all round to a length, wall by wall: a skirt to its waistband, a sleeve to its cuff. The rows go round,
 * through one wall at a time.
 *
 * Faults: those of gathering an edge, and of what is done at an opening.
 *
 * @example
 * openingsOf(gatherOpening(skirt, openingsOf(skirt)[0], { to: 700 }).value)[0].round // => 700
 */
export function gatherOpening(work: Work, opening: Opening, how: Omit<Gather, 'edge'>): Sewn {
  const { name, line, row, round } = opening;
  const { to } = how;
  if (to > round) {
    const message = `The ${name} is only … round: to … it is not drawn up.`;
    return fail({ code: 'not-shorter', message, lengths: [round, to], edge: name, amount: to - round });
  }
  const { ring } = roundIn(work, row);
  const reach = Math.max(...ring.map(({ from }) => leftOf(line, from)));
  const depth = Math.min(how.depth ?? DEPTH, reach / 2);
  const narrow = narrowing(line.angle, middleOf(opening), to / round);
  const along = (by: number) => rowInside(work, opening, by).map((p) => transformPoint(narrow, p));
  const done = boxesStand(
    work,
    atOpening(work, opening, (wall, at) => gather(wall, { ...how, depth, edge: at, to: to / 2, rowInside: along }), {
      did: 'gather',
    }),
  );
  if (!done.ok) return done;
  const stitches = done.value.stitches.map((one) => {
    const its = allOpenings(work).find((other) => other.row === one.id && liesOn(line, other));
    return its && one.round ? { ...one, round: drawnRound(one.round, its.edge, depth, to / round) } : one;
  });
  const record = { did: 'gather', stitches: done.value.done.at(-1)!.stitches ?? [] };
  const drawnUp = { edge: name, from: round, to };
  return ok({ ...done.value, stitches, done: [...work.done, { ...record, drawnUp }] });
}

/**
 * What a row was sewn round, with one of its edges drawn up and its neighbours beside it, down to a depth. Below, the picture
 * goes out to its full width along the foot of the gathers, where nothing is open.
 */
function drawnRound(round: SewnRound, nth: number, depth: number, share: number): SewnRound {
  const { ring, allowances, folds } = round;
  const n = ring.length;
  const [before, edge, after] = [nth - 1, nth, nth + 1].map((i) => sides(ring)[(i + n) % n]!);
  const narrow = narrowing(lineThrough(edge!.from, edge!.to).angle, middleOf(edge!), share);
  const foot = sides(withEdgeInside(ring, nth, depth))[nth]!;
  const widthOf = (i: number) => allowances[(i + n) % n]!;
  const isFold = (i: number) => folds?.[(i + n) % n] ?? false;
  type Part = { readonly edge: Edge; readonly width: number; readonly fold: boolean };
  const at = (of: Edge | Side, from: Point, width: number, fold: boolean): Part => ({
    edge: { name: of.name, from, bulge: 0 },
    width,
    fold,
  });
  const drawn = (p: Point) => transformPoint(narrow, p);
  const beside: Part[] = [
    at({ ...edge!, name: GATHERS }, foot.from, 0, true),
    at(before!, drawn(foot.from), widthOf(nth - 1) * share, isFold(nth - 1)),
    at(edge!, drawn(edge!.from), 0, false),
    at(after!, drawn(edge!.to), widthOf(nth + 1) * share, isFold(nth + 1)),
    at({ ...edge!, name: GATHERS }, drawn(foot.to), 0, true),
  ];
  // What was gathered there before is drawn up whole, and nothing of it is left below the foot.
  const rest = sides(ring).flatMap((side, i): Part[] => {
    if (i === nth) return beside;
    const from = i === (nth + 1) % n ? foot.to : side.from;
    const to = i === (nth - 1 + n) % n ? foot.from : side.to;
    return distance(from, to) < SAME ? [] : [at(side, from, widthOf(i), isFold(i))];
  });
  return {
    ...round,
    ring: rest.map((part) => part.edge),
    allowances: rest.map(({ width }) => width),
    folds: rest.map(({ fold }) => fold),
  };
}

function drawUp(work: Work, how: Gather, did: 'gather' | 'ease', most: number): Sewn {
  const { edge: asked, to, rows = [], depth = DEPTH } = how;
  const edge = findEdge(work, asked);
  if (!edge.ok) return edge;
  const { length, line, name } = edge.value;
  if (to <= 0) {
    return fail({
      code: 'not-finite',
      message: 'An edge cannot be drawn up to nothing.',
      field: 'to',
      fix: 'Make “to” longer.',
    });
  }
  if (!Number.isFinite(to + depth) || depth <= 0 || !rows.every(Number.isFinite)) {
    return fail({ code: 'not-finite', message: 'The length to draw the edge up to is not a length.', edge: name });
  }
  if (to > length) {
    const message = `The edge ${name} is only … long: to … it is not drawn up.`;
    return fail({ code: 'not-shorter', message, lengths: [length, to], edge: name, amount: to - length });
  }
  const fullness = length / to;
  if (fullness > most + 1e-9) {
    const message = `The edge ${name} has too much cloth to ${did} to that length.`;
    return fail({ code: 'too-full', message, edge: name, amount: length - most * to });
  }
  // Half of a narrow frill is left as wide as it was.
  const own = work.plies.filter((ply) => isOf(edge.value, ply));
  const across = Math.max(...own.flatMap((ply) => offsets(ply.outline, line)));
  const foot = lineInside(edge.value, Math.min(depth, across / 2));
  const middle = middleOf(edge.value);
  const drawn = drawnAt(work, edge.value, foot, narrowing(line.angle, middle, to / length), to / length, how.all);
  if (!drawn.ok) return drawn;
  let now = drawn.value;
  const short = { ...edge.value, from: alongTo(edge.value, middle, to, -1), to: alongTo(edge.value, middle, to, 1) };
  for (const inside of rows) {
    const ways = how.rowInside ? ok([how.rowInside(inside)]) : pathsInside(now, [short], inside);
    if (!ways.ok) return ways;
    for (const way of ways.value) now = sewn(now, 'gather', way);
  }
  const stitches = now.stitches.slice(work.stitches.length).map(({ id }) => id);
  // The rows hold the cloth where it goes on below what is drawn up.
  const [held] = stitches;
  const known = new Set(work.plies.flatMap((ply) => ply.outline.flatMap((one) => one.held ?? [])));
  now = withPlies(now, (ply) => ({
    ...ply,
    outline: ply.outline.map((one) =>
      one.name === GATHERS && held !== undefined && !known.has(one.held!) ? { ...one, held } : one,
    ),
  }));
  return ok(asOneStep(work.done, now, { did, stitches, drawnUp: { edge: name, from: length, to } }));
}

const alongTo = ({ line }: WorkEdge, middle: Point, length: number, sign: 1 | -1): Point =>
  plus(middle, times(direction(line.angle), (sign * length) / 2));

/** Everything drawn together along a way, about a point. */
function narrowing(degrees: number, about: Point, share: number): Transform {
  const { x: u, y: v } = direction(degrees);
  const k = share - 1;
  const [a, b, d] = [1 + k * u * u, k * u * v, 1 + k * v * v];
  return { a, b, c: b, d, e: about.x - a * about.x - b * about.y, f: about.y - b * about.x - d * about.y };
}

/** The work with the strip between an edge and its foot drawn together; of each ply that ends at the edge a part. */
function drawnAt(
  work: Work,
  edge: WorkEdge,
  foot: Line,
  transform: Transform,
  share: number,
  all = false,
): Result<Work, ClothFault> {
  let number = nextNumber(work);
  const held = number + 2 * work.plies.length;
  const parts = new Map<number, number>();
  const drawn = new Set<number>();
  const reaches = new Set(
    work.plies.filter((ply) => isOf(edge, ply) && (all || reachesEdge(ply, edge))).map(({ id }) => id),
  );
  // Interfacing that ends below the edge is drawn up with the cloth it is fused to.
  const goes = ({ id, fusedTo }: Ply) => reaches.has(id) || (fusedTo !== undefined && reaches.has(fusedTo));
  const going = new Set(work.plies.filter(goes).map(({ id }) => id));
  // What was drawn up before goes whole, and so does a row on the line where it begins.
  const whole = new Set(
    work.plies.filter((ply) => going.has(ply.id) && beginsAt(ply.outline, foot)).map(({ id }) => id),
  );
  const goesUp = (p: Point, ids: readonly number[]): boolean =>
    isDrawnUp(foot, p) ? ids.some((id) => going.has(id)) : ids.some((id) => whole.has(id));
  const hold = all ? undefined : heldThere(work, edge, going, { foot, goesUp });
  if (hold) return fail(hold);
  const plies: Ply[] = [];
  for (const ply of work.plies) {
    const { left, right } = split(ply.outline, foot, { name: GATHERS, bulge: 0, held });
    if (right.length === 0 || (!goes(ply) && !isOf(edge, ply))) {
      plies.push(ply);
      continue;
    }
    if (!goes(ply)) {
      const message = `${ply.piece} lies where the cloth is drawn up, and does not end at that edge.`;
      return fail({ code: 'blocked', message, piece: ply.piece });
    }
    const stays = left.map((outline, i): Ply => ({ ...ply, outline, id: i === 0 ? ply.id : number++ }));
    const goesIn = right.map((outline, i): Ply => {
      const id = stays.length === 0 && i === 0 ? ply.id : number++;
      parts.set(ply.id, id);
      drawn.add(id);
      const ring = outline.map((one) => ({ ...one, from: transformPoint(transform, one.from) }));
      const laid = ply.laid && {
        laid: ply.laid.map((one) => ({ ...one, transform: followedBy(one.transform, transform) })),
      };
      return {
        ...ply,
        outline: ring,
        id,
        transform: followedBy(ply.transform, transform),
        fullness: ply.fullness / share,
        ...laid,
      };
    });
    plies.push(...stays, ...goesIn);
  }
  const fused = plies.map((ply) => {
    const to = ply.fusedTo === undefined ? undefined : parts.get(ply.fusedTo);
    return to !== undefined && drawn.has(ply.id) ? { ...ply, fusedTo: to } : ply;
  });
  const now = (ids: readonly number[]) => ids.map((id) => parts.get(id) ?? id);
  const stitches: Stitch[] = [];
  for (const stitch of work.stitches) {
    const runs: Run[] = [];
    for (const run of stitch.runs.flatMap((one) => cutRunAt(one, foot))) {
      const inside = goesUp(middleOf(run), run.plies);
      runs.push(inside ? { ...movedRun(run, transform), plies: now(run.plies) } : run);
    }
    stitches.push(withoutRound({ ...stitch, runs }));
  }
  const marks = work.marks.map((mark) =>
    goesUp(mark.at, mark.plies) ? { ...movedMark(mark, transform), plies: now(mark.plies) } : mark,
  );
  return ok({ ...work, plies: fused, stitches, marks });
}

const middleOf = ({ from, to }: { readonly from: Point; readonly to: Point }): Point => between(from, to, 0.5);

/** Whether a point lies where the edge is drawn up. */
const isDrawnUp = (foot: Line, p: Point): boolean => leftOf(foot, p) < -ON;

/** Whether a ply belongs to what an edge was named of. */
const isOf = ({ plies }: WorkEdge, { id }: Ply): boolean => plies === undefined || plies.includes(id);

/** What holds the cloth that would be drawn up: a seam along the edge, or a row or hardware that holds it to what stays. */
function heldThere(
  work: Work,
  { name, line, pieces }: WorkEdge,
  going: ReadonlySet<number>,
  { foot, goesUp }: { foot: Line; goesUp: (at: Point, plies: readonly number[]) => boolean },
): ClothFault | undefined {
  const way = direction(line.angle);
  const pieceOf = new Map(work.plies.map(({ id, piece, fusedTo }) => [id, fusedTo === undefined ? piece : undefined]));
  for (const { kind, runs } of work.stitches) {
    if (kind === 'gather') continue;
    for (const run of runs.flatMap((one) => cutRunAt(one, foot))) {
      if (!goesUp(middleOf(run), run.plies)) continue;
      const stays = run.plies.find((id) => !going.has(id));
      if (stays !== undefined) return sewnTo(pieceOf.get(stays));
      const along = Math.abs(way.x * (run.to.x - run.from.x) + way.y * (run.to.y - run.from.y));
      const isAlong = along > Math.SQRT1_2 * distance(run.from, run.to);
      const sewn = new Set(run.plies.flatMap((id) => pieceOf.get(id) ?? []));
      if (kind === 'baste' || !isAlong || sewn.size < 2) continue;
      const message = `The edge ${name} is sewn already, ${listed([...sewn].map(quote))} together: a seam is not drawn up.`;
      return { code: 'sewn-along', message, edge: name };
    }
  }
  const mark = work.marks.find(({ at, plies }) => goesUp(at, plies) && plies.some((id) => !going.has(id)));
  return mark && sewnTo(pieceOf.get(mark.plies.find((id) => !going.has(id))!));

  function sewnTo(piece: string | undefined): ClothFault {
    const message = `${quote(pieces.join(' and '))} is sewn to ${quote(piece ?? 'what lies there')} beside its edge ${name}, and that is not drawn up with it.`;
    return { code: 'sewn-along', message, edge: name };
  }
}

/** Whether a ply ends at an edge. */
function reachesEdge({ outline }: Ply, { line }: WorkEdge): boolean {
  return outline.some(({ from }) => Math.abs(leftOf(line, from)) <= SAME);
}
