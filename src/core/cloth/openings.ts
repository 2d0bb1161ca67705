import { direction, distance, minus, plus, times, unit } from '../geometry/point.ts';
import { fail, ok, plainName, quote, SAME } from '../measure/index.ts';
import { layersAt } from './layers.ts';
import { leftOf, lineThrough, sides } from '../geometry/index.ts';
import { lineLeft } from './edge.ts';
import { linesMeet } from '../geometry/arc.ts';
import { areaOf, ON, stretches } from './ring.ts';
import { isOwnCloth, laidWith, wallByWall, wallsOf } from './walls.ts';
import type { ClothFault } from './fault.ts';
import type { Line, Outline, Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { Ply, Sewn, SewnRound, Stitch, Work } from './work.ts';
import type { WorkEdge } from './edge.ts';

/** An edge of a pair sewn round that was left open, or of a folded work sewn up: the mouth of a bag, the end of a strap. */
export type Opening = {
  /** What steps call it where a work has several: `top opening`. */
  readonly name: string;
  readonly line: Line;
  readonly from: Point;
  readonly to: Point;
  /** How long it is round, along both walls from seam to seam, in mm. */
  readonly round: number;
  /** The row that left it open, by number, and which edge of its ring it is. */
  readonly row: number;
  readonly edge: number;
  /** Of one that goes round a corner or along a curve: its straight edges, in order. */
  readonly parts?: readonly Opening[];
};

/**
 * The openings of a work, where they lie now. Those of a work that lies inside another, opening in opening, are told once.
 *
 * @example
 * openingsOf(sewRound(front, back, { allowance: 6, open: ['top'] }).value).length // => 1
 */
export function openingsOf(work: Work): Opening[] {
  const found: Opening[] = [];
  for (const one of allOpenings(work)) {
    const stitch = work.stitches.find(({ id }) => id === one.row)!;
    if (laidWith(work, stitch).length > 0 || isSewnShut(work, one)) continue;
    if (!found.some((inner) => isAt(one, inner))) found.push(one);
  }
  return meeting(work, found);
}

/** Open edges of one row that meet at a corner are one opening. */
function meeting(work: Work, found: readonly Opening[]): Opening[] {
  const follows = (one: Opening, next: Opening) =>
    one !== next && one.row === next.row && next.edge === (one.edge + 1) % roundIn(work, one.row).ring.length;
  const firsts = found.filter((one) => !found.some((other) => follows(other, one)));
  return firsts.map((first) => {
    const parts = [first];
    for (const last of parts) parts.push(...found.filter((one) => one !== first && follows(last, one)));
    if (parts.length === 1) return first;
    const sides = [...new Set(parts.map(({ name }) => name.replace(' opening', '')))];
    const round = parts.reduce((sum, one) => sum + one.round, 0);
    return { ...first, name: `${sides.join(' and ')} opening`, round, parts };
  });
}

/** The straight edges of openings, each by itself. */
export const openEdges = (openings: readonly Opening[]): readonly Opening[] =>
  openings.flatMap((one) => one.parts ?? one);

/** Whether a work was open, and was folded across since: where its openings lie now is not known. */
export const isCreased = ({ stitches }: Work): boolean => stitches.some(({ creased }) => creased);

/** A row so near beside an opening, in mm, and through both its walls, sews it shut. Common practice, no source. */
const BESIDE = 40;

function isSewnShut(work: Work, opening: Opening): boolean {
  const { lower, upper } = wallsOf(work, opening.row);
  const isOf = (plies: readonly Ply[], ids: readonly number[]) => plies.some(({ id }) => ids.includes(id));
  const along = work.stitches.flatMap(({ id, kind, runs, joins }) =>
    id === opening.row || kind === 'baste' || kind === 'gather' || joins
      ? []
      : runs.filter((run) => isOf(lower, run.plies) && isOf(upper, run.plies) && isAt(run, opening, BESIDE)),
  );
  const long = along.reduce((sum, { from, to }) => sum + distance(from, to), 0);
  return long > distance(opening.from, opening.to) / 2;
}

/** The openings of a work, each of works that lie in one another; those further in come first. */
export function allOpenings(work: Work): Opening[] {
  const open = work.stitches.filter(({ round }) => round?.allowances.includes(0));
  const found: Opening[] = [];
  for (const stitch of open.length > 1 ? innermostFirst(work, open) : open) {
    const { ring, allowances, folds } = stitch.round!;
    for (const [edge, { from, to }] of sides(ring).entries()) {
      if (allowances[edge] !== 0 || folds?.[edge] === true || distance(from, to) < SAME) continue;
      const line = lineThrough(from, to);
      const name = `${sideFacing(line)} opening`;
      found.push({ name, line, from, to, round: 2 * distance(from, to), row: stitch.id, edge });
    }
  }
  return found;
}

/** Rows by the levels of the stack that they span: that of a work in another spans fewer. */
function innermostFirst({ plies }: Work, rows: readonly Stitch[]): Stitch[] {
  const level = new Map(plies.map(({ id }, i) => [id, i]));
  const span = ({ runs }: Stitch) => {
    const levels = runs.flatMap((run) => run.plies.map((id) => level.get(id) ?? 0));
    return Math.max(...levels) - Math.min(...levels);
  };
  return rows.toSorted((a, b) => span(a) - span(b));
}

/** Which side of the table a line faces that has the cloth on its left. */
function sideFacing({ angle }: Line): 'top' | 'right' | 'bottom' | 'left' {
  const way = direction(angle);
  if (Math.abs(way.x) >= Math.abs(way.y)) return way.x > 0 ? 'bottom' : 'top';
  return way.y > 0 ? 'right' : 'left';
}

/**
 * The opening that a step names among edges, `opening` or `top opening`; undefined where it names none.
 *
 * Faults: those of finding it; `one-edge` where other edges are named as well.
 */
export function openingAsked(work: Work, asked: readonly string[]): Result<Opening, ClothFault> | undefined {
  const name = asked.find((one) => /(?:^|\s)opening$/u.test(plainName(one)));
  if (name === undefined) return undefined;
  if (asked.length === 1) return openingNamed(work, name);
  const message = 'What is done at an opening goes all round it, and has no other edge.';
  return fail({ code: 'one-edge', message, edge: name, field: 'at' });
}

/**
 * An opening by its name: `opening` where there is one alone, else `top opening`, or `top`.
 *
 * Faults: `unknown-edge` where there is none of that name; `ambiguous-edge` where several are called so; `one-edge` for one that
 * goes round a corner or along a curve.
 */
export function openingNamed(work: Work, name = 'opening'): Result<Opening, ClothFault> {
  const asked = plainName(name);
  const all = openingsOf(work);
  if (all.length === 0 && isCreased(work)) {
    const message = 'The work is folded across its opening, so that where the opening lies is not known.';
    return fail({ code: 'held', message, edge: name, fix: 'Do this before the work is folded.' });
  }
  const isCalled = (one: Opening) => one.name === asked || one.name === `${asked} opening`;
  const named = asked === 'opening' ? all : all.filter((one) => isCalled(one) || one.parts?.some(isCalled));
  const [one, ...others] = named;
  if (one?.parts && others.length === 0) {
    const message = `The ${one.name} is not one straight edge: what is done all round it cannot be worked out yet.`;
    return fail({ code: 'one-edge', message, edge: name, fix: 'Leave one straight edge open.' });
  }
  if (one && others.length === 0) return ok(one);
  if (!one) {
    const there = all.map((each) => quote(each.name)).join(', ');
    const message = `There is no ${quote(name)} here. ${all.length === 0 ? 'This work has none.' : `There is ${there}.`}`;
    return fail({ code: 'unknown-edge', message, edge: name });
  }
  const message = `There are ${named.length} openings. Write ${named.map((each) => quote(each.name)).join(' or ')}.`;
  return fail({ code: 'ambiguous-edge', message, edge: name });
}

/** An opening as an edge of its work. */
export const asEdge = ({ name, line, from, to }: Opening): WorkEdge => ({
  name,
  own: name,
  pieces: [],
  line,
  from,
  to,
  length: distance(from, to),
});

/** Why nothing can go round an opening on the outside of its walls: the allowances beside it stand out there. */
export function standsOut(work: Work, { name, row, edge }: Opening): ClothFault | undefined {
  const { allowances, turned } = roundIn(work, row);
  const n = allowances.length;
  if (turned || [edge - 1, edge + 1].every((i) => allowances[(i + n) % n] === 0)) return undefined;
  const message = `The seam allowances beside the ${name} stand out: nothing goes round it there as long as the work lies wrong side out.`;
  return { code: 'held', message, edge: name, fix: 'Turn the work right side out first.' };
}

/** Something done to one wall at its edge of an opening; `wrong` says to which side of the wall its wrong side lies. */
export type AtWall = (wall: Work, edge: WorkEdge, wrong: 'over' | 'under', which: 'lower' | 'upper') => Sewn;

/**
 * Does something at an opening: to the edge of one wall and then to that of the other, never through both. Afterwards the
 * opening lies so many mm further in.
 *
 * Faults: those of what is done; `misses` where one of the walls is missing; `edge-inside` where one goes on beyond the opening;
 * `shapes-differ` where two works lie there, not equally long round; `too-deep` where the opening would lie below its gathers.
 *
 * @example
 * atOpening(bag, opening, (wall, edge, wrong) => hem(wall, { edges: [edge], turn: 6, then: 20, to: wrong }), { takes: 26 })
 */
export function atOpening(
  work: Work,
  { name, row, edge: nth, line, from, to }: Opening,
  act: AtWall,
  { did, takes = 0 }: { readonly did: string; readonly takes?: number },
): Sewn {
  const stitch = work.stitches.find(({ id }) => id === row)!;
  const walls = wallsOf(work, row);
  const isOwn = isOwnCloth(work, row);
  const lying = allOpenings(work).filter((one) => isAt(one, { line, from, to }));
  const other = lying.find((one) => Math.abs(one.from.x - from.x) + Math.abs(one.from.y - from.y) > SAME);
  if (other) {
    const message = 'Two works lie at this opening, … and … round: what goes round both is not clear.';
    const lengths = [other.round, 2 * distance(from, to)];
    return fail({ code: 'shapes-differ', message, lengths, fix: 'Sew round each before one is put into the other.' });
  }
  const straight = Math.min(...lying.map((one) => straightBeside(roundIn(work, one.row).ring, one.edge)));
  if (takes > straight + SAME) {
    const message = `What is turned in at the ${name} is deeper than the gathers there: the work is wider below them.`;
    const fix = 'Gather it afterwards, or turn in less.';
    return fail({ code: 'too-deep', message, edge: name, amount: takes - straight, fix });
  }
  const just = plus(times(plus(from, to), 0.5), times(inwardFrom(line), 2 * SAME));
  const own = stitch.round!.ring[nth]!.name;
  const done = wallByWall(work, walls, (wall, which) => {
    const there = layersAt(wall, just).filter(isOwn);
    const body = bodyOf(there);
    if (!body) {
      return fail({ code: 'misses', message: `One wall of the ${name} does not lie along its middle.`, edge: name });
    }
    const beyond = wall.plies.find((ply) => isOwn(ply) && takes > 0 && endsBeyond(ply, line));
    if (beyond) {
      const message = `${beyond.piece} goes on beyond the ${name}, so that it would not be turned in evenly.`;
      const fix = 'Cut both walls to one length, or trim it level before they are sewn together.';
      return fail({ code: 'edge-inside', message, edge: name, piece: beyond.piece, fix });
    }
    const isRightOut = (body.face === 'right') === (which === 'upper');
    const inward = which === 'lower' ? 'over' : 'under';
    const pieces = [...new Set(there.map(({ piece }) => piece))];
    const edge: WorkEdge = { name, own, pieces, line, from, to, length: distance(from, to) };
    return act(wall, edge, isRightOut ? inward : inward === 'over' ? 'under' : 'over', which);
  });
  if (!done.ok) return done;
  const { work: after, walls: now, rows } = done.value;
  const over = now.upper[0]?.id ?? stitch.round!.over;
  const stitches = after.stitches.map((one): Stitch => {
    const its = lying.find((opening) => opening.row === one.id);
    if (!its || !one.round) return one;
    const ring = withEdgeInside(one.round.ring, its.edge, takes);
    return { ...one, round: { ...one.round, ring, ...(one.id === row && { over }) } };
  });
  return ok({ ...after, stitches, done: [...work.done, { did, stitches: rows }] });
}

/** What a row was sewn round, by its number. */
export const roundIn = (work: Work, row: number): SewnRound => work.stitches.find(({ id }) => id === row)!.round!;

/** Of layers that lie on one another, the wall itself, and not a hem or an allowance that was turned to it. */
export const bodyOf = (plies: readonly Ply[]): Ply | undefined =>
  plies.reduce<Ply | undefined>(
    (best, ply) => (best && areaOf(best.outline) >= areaOf(ply.outline) ? best : ply),
    undefined,
  );

const endsBeyond = ({ outline }: Ply, line: Line): boolean => outline.some(({ from }) => leftOf(line, from) < -SAME);

/** The way from a line into the cloth on its left, of length 1. */
export const inwardFrom = ({ angle }: Line): Point => {
  const way = direction(angle);
  return { x: -way.y, y: way.x };
};

/** A ring with one of its edges moved in, in mm; its neighbours end where they meet it. */
export function withEdgeInside(ring: Outline, nth: number, by: number): Outline {
  const n = ring.length;
  const [before, edge, after] = [nth - 1, nth, nth + 1].map((i) => sides(ring)[(i + n) % n]!);
  const { at, angle } = lineLeft(lineThrough(edge!.from, edge!.to), by);
  const cornerWith = (other: typeof edge, usual: Point) =>
    linesMeet(at, direction(angle), other!.from, minus(other!.to, other!.from)) ?? usual;
  const [from, to] = [cornerWith(before, edge!.from), cornerWith(after, edge!.to)];
  return ring.map((one, i) => (i === nth ? { ...one, from } : i === (nth + 1) % n ? { ...one, from: to } : one));
}

/**
 * What a row was sewn round, once everything on the right of a line was cut off: open along the cut. Undefined where nothing
 * of it is left.
 */
export function cutRound(round: SewnRound, line: Line, name: string): SewnRound | undefined {
  const kept = sides(round.ring).flatMap(({ from, to }, i) => {
    const [a, b] = [leftOf(line, from), leftOf(line, to)];
    const part = { edge: round.ring[i]!, width: round.allowances[i]!, fold: round.folds?.[i] ?? false };
    const crossing = plus(from, times(minus(to, from), a / (a - b)));
    const cut = { edge: { name, from: crossing, bulge: 0 }, width: 0, fold: false };
    if (a >= -ON) return b >= -ON ? [part] : a <= ON ? [{ ...cut, edge: { ...cut.edge, from } }] : [part, cut];
    return b > ON ? [{ ...part, edge: { ...part.edge, from: crossing } }] : [];
  });
  if (kept.length === round.ring.length && kept.every(({ edge }, i) => edge === round.ring[i])) return round;
  if (kept.length < 3) return undefined;
  const { gap, ...rest } = round;
  const isWhole = gap && [gap.from, gap.to].every((p) => leftOf(line, p) >= -ON);
  return {
    ...rest,
    ring: kept.map(({ edge }) => edge),
    allowances: kept.map(({ width }) => width),
    ...(round.folds && { folds: kept.map(({ fold }) => fold) }),
    ...(isWhole && { gap }),
  };
}

/** A work of which everything on the right of lines was cut off: what it was sewn round is open along the cuts. */
export function openedAt(work: Work, lines: readonly Line[], name: string): Work {
  const stitches = work.stitches.map((one): Stitch => {
    if (!one.round) return one;
    const round = lines.reduce<SewnRound | undefined>((now, line) => now && cutRound(now, line, name), one.round);
    return round === one.round ? one : { ...one, round };
  });
  return { ...work, stitches };
}

/**
 * Where a row along an opening runs that lies so far inside it: from seam to seam. Where the work is gathered to its opening, a
 * row below the gathers is as long as the work is round there.
 */
export function rowInside(work: Work, { row, edge }: Opening, by: number): readonly [Point, Point] {
  const { ring } = roundIn(work, row);
  const { from, to } = sides(withEdgeInside(ring, edge, by))[edge]!;
  const middle = distance(from, to) / 2;
  const way = unit(minus(to, from));
  const here = stretches(ring, from, to).find(([a, b]) => a < middle && b > middle);
  if (!here || by <= straightBeside(ring, edge) + SAME) return [from, to];
  return [plus(from, times(way, here[0])), plus(from, times(way, here[1]))];
}

/** How far inside an edge of a ring its neighbours go on straight, in mm. */
export function straightBeside(ring: Outline, nth: number): number {
  const n = ring.length;
  const [before, edge, after] = [nth - 1, nth, nth + 1].map((i) => sides(ring)[(i + n) % n]!);
  const line = lineThrough(edge!.from, edge!.to);
  return Math.min(leftOf(line, before!.from), leftOf(line, after!.to));
}

/** Whether a straight stretch runs along an opening, or along a part of it, no more than so many mm away. */
const isAt = (
  edge: Pick<WorkEdge, 'from' | 'to'>,
  { line, from, to }: Pick<Opening, 'line' | 'from' | 'to'>,
  off = SAME,
): boolean => {
  const [begun, ended] = [leftOf(line, edge.from), leftOf(line, edge.to)];
  if (Math.max(Math.abs(begun), Math.abs(ended)) > off) return false;
  const way = direction(line.angle);
  const along = (p: Point) => way.x * minus(p, line.at).x + way.y * minus(p, line.at).y;
  const [a, b] = [along(edge.from), along(edge.to)];
  // The end of a row that comes from further in crosses it, and does not run along it.
  const isAcross = Math.abs(begun - ended) > Math.abs(a - b);
  return !isAcross && Math.min(Math.max(a, b), along(to)) - Math.max(Math.min(a, b), along(from)) > ON;
};

const openAt = (work: Work, edge: WorkEdge): boolean => allOpenings(work).some((opening) => isAt(edge, opening));

/** Why a step at edges would sew an opening shut, if one of them is an opening: lying flat, both its walls are sewn. */
export function sewsShut(work: Work, edges: readonly WorkEdge[]): ClothFault | undefined {
  const edge = edges.find((one) => openAt(work, one));
  if (!edge) return undefined;
  const message = `The ${edge.name} is an opening: sewn as it lies, through both layers, it would be sewn shut.`;
  return { code: 'opening', message, edge: edge.name };
}

/** Why a seam of works edge to edge would sew openings shut: two of them are openings, and belong together in the round. */
export function sewnShutTogether(layers: readonly { work: Work; edge: WorkEdge | string }[]): ClothFault | undefined {
  const open = layers.flatMap(({ work, edge }) => (typeof edge !== 'string' && openAt(work, edge) ? [edge] : []));
  if (open.length < 2) return undefined;
  const message = 'Two openings are joined here: sewn as they lie, both would be sewn shut.';
  return { code: 'opening', message, edge: open[0]!.name };
}

/** The same for rows that follow a curve or an outline, so many mm inside it. */
export function sewsShutAlong(work: Work, ways: readonly (readonly Point[])[], by: number): ClothFault | undefined {
  const beside = (opening: Opening) =>
    ways.some((way) => way.slice(1).some((end, i) => isAt({ from: way[i]!, to: end }, opening, by + SAME)));
  if (ways.length === 0 || !allOpenings(work).some(beside)) return undefined;
  return { code: 'opening', message: 'The row runs along an opening: through both layers, it would sew it shut.' };
}
